/**
 * Formulas as they are printed are formulas as they are computed: one text, `({P_i} − {P})·{T}`, is shown with
 * symbols, shown with numbers, and worked out. Terms, `·`, `/`, `+`, `−`, brackets.
 */
export interface Expression {
  /** Keys it asks for, each once. */
  readonly keys: readonly string[]
  readonly value: (of: (key: string) => number) => number
  /** The text with every key replaced. */
  readonly told: (as: (key: string) => string) => string
}

type Node = (of: (key: string) => number) => number

const TOKEN = /\{(\w+)\}|(\d+(?:\.\d+)?)|([·/+−()])/y

/** @throws Error for a text that is not a formula: a slip of ours, never the user's. */
export const expression = (text: string): Expression => {
  const squeezed = text.replaceAll(' ', '')
  const tokens: { readonly key?: string; readonly number?: number; readonly sign?: string }[] = []
  TOKEN.lastIndex = 0
  while (TOKEN.lastIndex < squeezed.length) {
    const at = TOKEN.lastIndex
    const found = TOKEN.exec(squeezed)
    if (found === null) throw new Error(`No formula: "${text}", at ${at}`)
    const [, key, number, sign] = found
    tokens.push(
      key !== undefined
        ? { key }
        : number !== undefined
          ? { number: Number(number) }
          : { sign: sign as string },
    )
  }
  let place = 0
  const sign = (...wanted: readonly string[]): string | null => {
    const here = tokens[place]?.sign
    if (here === undefined || !wanted.includes(here)) return null
    place++
    return here
  }
  const chain = (
    operand: () => Node,
    plus: string,
    minus: string,
    join: (sign: string) => (a: number, b: number) => number,
  ): Node => {
    let left = operand()
    for (let s = sign(plus, minus); s !== null; s = sign(plus, minus)) {
      const [before, after, apply] = [left, operand(), join(s)]
      left = (of) => apply(before(of), after(of))
    }
    return left
  }
  const factor = (): Node => {
    if (sign('(') !== null) {
      const inside = sum()
      if (sign(')') === null) throw new Error(`A bracket is open in "${text}"`)
      return inside
    }
    const token = tokens[place++]
    if (token?.key !== undefined) {
      const { key } = token
      return (of) => of(key)
    }
    if (token?.number === undefined) throw new Error(`No formula: "${text}"`)
    const { number } = token
    return () => number
  }
  const product = (): Node => chain(factor, '·', '/', (s) => (s === '·' ? (a, b) => a * b : (a, b) => a / b))
  const sum = (): Node => chain(product, '+', '−', (s) => (s === '+' ? (a, b) => a + b : (a, b) => a - b))
  const value = sum()
  if (place !== tokens.length) throw new Error(`Something is left over in "${text}"`)
  return {
    keys: [...new Set(tokens.flatMap(({ key }) => (key === undefined ? [] : [key])))],
    value,
    told: (as) => text.replace(/\{(\w+)\}/g, (_, key: string) => as(key)),
  }
}
