/** A path in absolute coordinates, arcs and smooth curves made plain cubic ones. */
export type Segment =
  | readonly ['M' | 'L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z']

const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi

const LENGTHS: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
}

/** Longest turn drawn as one cubic curve [rad]. */
const LONGEST_TURN = Math.PI / 4

/** An elliptic arc by its centre, SVG 1.1 appendix F.6 [bib:svg11]. */
const arcSegments = (
  x1: number,
  y1: number,
  [rx0, ry0, turned, large, sweep, x2, y2]: readonly number[] & { readonly length: number },
): readonly Segment[] => {
  const [x, y] = [x2 as number, y2 as number]
  let [rx, ry] = [Math.abs(rx0 as number), Math.abs(ry0 as number)]
  if (rx === 0 || ry === 0 || (x1 === x && y1 === y)) return [['L', x, y]]
  const phi = ((turned as number) * Math.PI) / 180
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)]
  const px = (cos * (x1 - x)) / 2 + (sin * (y1 - y)) / 2
  const py = (-sin * (x1 - x)) / 2 + (cos * (y1 - y)) / 2
  const grow = Math.sqrt((px / rx) ** 2 + (py / ry) ** 2)
  if (grow > 1) [rx, ry] = [rx * grow, ry * grow]
  const square = (rx * py) ** 2 + (ry * px) ** 2
  const root = Math.sqrt(Math.max(0, (rx * ry) ** 2 - square) / square) * (large === sweep ? -1 : 1)
  const [cxr, cyr] = [(root * rx * py) / ry, (-root * ry * px) / rx]
  const [cx, cy] = [cos * cxr - sin * cyr + (x1 + x) / 2, sin * cxr + cos * cyr + (y1 + y) / 2]
  const from = Math.atan2((py - cyr) / ry, (px - cxr) / rx)
  const to = Math.atan2((-py - cyr) / ry, (-px - cxr) / rx)
  const whole = 2 * Math.PI
  const delta = sweep === 0 ? (to - from - whole) % whole : (to - from + whole) % whole
  const pieces = Math.max(1, Math.ceil(Math.abs(delta) / LONGEST_TURN - 1e-9))
  const step = delta / pieces
  const handle = (4 / 3) * Math.tan(step / 4)
  const at = (angle: number, out: number): [number, number] => {
    const ex = rx * (Math.cos(angle) - out * Math.sin(angle))
    const ey = ry * (Math.sin(angle) + out * Math.cos(angle))
    return [cx + cos * ex - sin * ey, cy + sin * ex + cos * ey]
  }
  return Array.from({ length: pieces }, (_, i): Segment => {
    const [a, b] = [from + i * step, from + (i + 1) * step]
    const end = i === pieces - 1 ? ([x, y] as const) : at(b, 0)
    return ['C', ...at(a, handle), ...at(b, -handle), ...end]
  })
}

/** Reads the `d` of a path. Throws `SyntaxError` for a command or a count of numbers that is none. */
export const readPathData = (d: string): readonly Segment[] => {
  const segments: Segment[] = []
  let [x, y, startX, startY] = [0, 0, 0, 0]
  /** Last handle of the curve before, for `S` and `T`. */
  let [lastX, lastY, last] = [0, 0, '']
  for (const [, letter, list] of d.matchAll(/([A-Za-z])([^A-Za-z]*(?:e[-+]?\d+[^A-Za-z]*)*)/g)) {
    const command = (letter as string).toUpperCase()
    const relative = letter !== command
    const numbers = [...(list as string).matchAll(NUMBER)].map(([text]) => Number(text))
    const size = LENGTHS[command]
    if (
      size === undefined ||
      (size === 0 ? numbers.length > 0 : numbers.length === 0 || numbers.length % size !== 0)
    )
      throw new SyntaxError(`“${letter}${list}” is no part of a path`)
    for (let i = 0; i === 0 || i < numbers.length; i += Math.max(size, 1)) {
      const n = numbers.slice(i, i + size)
      const [ox, oy] = relative ? [x, y] : [0, 0]
      const pair = (k: number): [number, number] => [ox + (n[k] as number), oy + (n[k + 1] as number)]
      switch (command) {
        case 'M':
        case 'L': {
          ;[x, y] = pair(0)
          const starts = command === 'M' && i === 0
          if (starts) [startX, startY] = [x, y]
          segments.push([starts ? 'M' : 'L', x, y])
          break
        }
        case 'H':
          x = ox + (n[0] as number)
          segments.push(['L', x, y])
          break
        case 'V':
          y = oy + (n[0] as number)
          segments.push(['L', x, y])
          break
        case 'C':
        case 'S': {
          const smooth = command === 'S'
          const first: [number, number] = smooth
            ? last === 'C' || last === 'S'
              ? [2 * x - lastX, 2 * y - lastY]
              : [x, y]
            : pair(0)
          const k = smooth ? 0 : 2
          ;[lastX, lastY] = pair(k)
          const end = pair(k + 2)
          segments.push(['C', ...first, lastX, lastY, ...end])
          ;[x, y] = end
          break
        }
        case 'Q':
        case 'T': {
          ;[lastX, lastY] =
            command === 'Q' ? pair(0) : last === 'Q' || last === 'T' ? [2 * x - lastX, 2 * y - lastY] : [x, y]
          const end = pair(command === 'Q' ? 2 : 0)
          const third = (from: number, handle: number): number => from + (2 / 3) * (handle - from)
          segments.push([
            'C',
            third(x, lastX),
            third(y, lastY),
            third(end[0], lastX),
            third(end[1], lastY),
            ...end,
          ])
          ;[x, y] = end
          break
        }
        case 'A': {
          const [endX, endY] = pair(5)
          segments.push(...arcSegments(x, y, [...n.slice(0, 5), endX, endY]))
          ;[x, y] = [endX, endY]
          break
        }
        case 'Z':
          segments.push(['Z'])
          ;[x, y] = [startX, startY]
      }
      last = command
    }
  }
  return segments
}
