/** An element of an SVG of this house. */
export interface SvgNode {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly children: readonly (SvgNode | string)[]
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }

const plain = (text: string): string =>
  text.replace(/&(?:#(\d+)|#x([0-9a-f]+)|(\w+));/gi, (whole, decimal, hex, name) =>
    decimal !== undefined
      ? String.fromCodePoint(Number(decimal))
      : hex !== undefined
        ? String.fromCodePoint(Number.parseInt(hex, 16))
        : (ENTITIES[name as string] ?? whole),
  )

const TOKEN = /<(\/)?([A-Za-z][\w:.-]*)((?:\s+[\w:.-]+\s*=\s*"[^"]*")*)\s*(\/)?>|([^<]+)/y
const ATTRIBUTE = /([\w:.-]+)\s*=\s*"([^"]*)"/g

const attributesOf = (text: string): ReadonlyMap<string, string> => {
  const found = new Map<string, string>()
  for (const [, key, value] of text.matchAll(ATTRIBUTE)) found.set(key as string, plain(value as string))
  return found
}

interface Open {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly children: (SvgNode | string)[]
}

/**
 * Reads an SVG that this house wrote: elements, attributes in double quotes, text; no comments, no CDATA, no
 * declarations. Throws `SyntaxError` for anything else, so that no picture is taken over in part.
 */
export const readSvg = (svg: string): SvgNode => {
  const open: Open[] = [{ name: '', attributes: new Map(), children: [] }]
  TOKEN.lastIndex = 0
  let end = 0
  for (let token = TOKEN.exec(svg); token !== null; token = TOKEN.exec(svg)) {
    end = TOKEN.lastIndex
    const [, closing, name, attributes, empty, text] = token
    const top = open[open.length - 1] as Open
    if (text !== undefined) {
      if (text.trim() !== '') top.children.push(plain(text))
    } else if (closing !== undefined) {
      if (top.name !== name || open.length === 1) throw new SyntaxError(`</${name}> closes <${top.name}>`)
      open.pop()
    } else {
      const node: Open = { name: name as string, attributes: attributesOf(attributes ?? ''), children: [] }
      top.children.push(node)
      if (empty === undefined) open.push(node)
    }
  }
  const [root, ...more] = (open[0] as Open).children
  if (end !== svg.length)
    throw new SyntaxError(`No SVG of ours at character ${end}: ${svg.slice(end, end + 40)}`)
  if (open.length !== 1 || more.length > 0 || root === undefined || typeof root === 'string')
    throw new SyntaxError('An SVG has one root element, and closes all it opens.')
  return root
}
