import { execFileSync } from 'node:child_process'
import type { Kind, Primitive, Spot } from './primitive.ts'

/** Every stroke of a PDF as `mutool trace` prints it, told apart by its pen alone. */

const MM_PER_POINT = 25.4 / 72

/** Width [mm] and grey of the pens, as they are meant to look on paper. */
const PENS: readonly (readonly [width: number, grey: number, layer: Kind])[] = [
  [0.5, 0, 'cut'],
  [0.2, 0, 'drill'],
  [0.3, 0, 'fold'],
  [0.3, 0.25, 'paper'],
  [0.18, 0.45, 'mark'],
  [0.14, 0, 'dimension'],
]

const attribute = (tag: string, name: string): string => {
  const at = tag.indexOf(` ${name}="`)
  if (at === -1) throw new Error(`no ${name} in ${tag}`)
  const from = at + name.length + 3
  return tag.slice(from, tag.indexOf('"', from))
}

const layerOf = (width: number, grey: number): Kind => {
  const pen = PENS.find(([w, g]) => Math.abs(w - width) < 0.01 && Math.abs(g - grey) < 0.02)
  if (pen === undefined) throw new Error(`no pen is ${width} mm wide and ${grey} grey`)
  return pen[2]
}

/** Centre of the circle through three points. */
const centreOf = (a: Spot, b: Spot, c: Spot): Spot => {
  const [bx, by, cx, cy] = [b.x - a.x, b.y - a.y, c.x - a.x, c.y - a.y]
  const d = 2 * (bx * cy - by * cx)
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy]
  return { x: a.x + (cy * b2 - by * c2) / d, y: a.y + (bx * c2 - cx * b2) / d }
}

const readStroke = (tag: string, body: string, height: number): Primitive => {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = attribute(tag, 'transform')
    .trim()
    .split(/\s+/)
    .map(Number)
  const place = (x: number, y: number): Spot => ({
    x: (a * x + c * y + e) * MM_PER_POINT,
    y: height - (b * x + d * y + f) * MM_PER_POINT,
  })
  const layer = layerOf(
    Number(attribute(tag, 'linewidth')) * Math.abs(a) * MM_PER_POINT,
    Number(attribute(tag, 'color')),
  )
  const points: Spot[] = []
  let [curved, closed] = [false, false]
  for (const [, name = '', rest = ''] of body.matchAll(/<(moveto|lineto|curveto|closepath)\b([^>]*)\/>/g)) {
    if (name === 'closepath') closed = true
    else if (name === 'curveto') {
      curved = true
      points.push(place(Number(attribute(rest, 'x3')), Number(attribute(rest, 'y3'))))
    } else points.push(place(Number(attribute(rest, 'x')), Number(attribute(rest, 'y'))))
  }
  if (!curved) return { kind: 'path', layer, points, closed }
  const [first, last] = [points[0] as Spot, points.at(-1) as Spot]
  // The curves of an arc end on it; a circle is eight of them.
  const third = (share: number): Spot => points[Math.round(share * (points.length - 1))] as Spot
  if (closed) {
    const centre = centreOf(first, third(1 / 3), third(2 / 3))
    return { kind: 'circle', layer, centre, radius: Math.hypot(first.x - centre.x, first.y - centre.y) }
  }
  if (points.length < 3) return middleless(tag, body, layer, first, last, place)
  const centre = centreOf(first, third(1 / 2), last)
  return {
    kind: 'arc',
    layer,
    centre,
    radius: Math.hypot(first.x - centre.x, first.y - centre.y),
    ends: [first, last],
  }
}

/** An arc of a single curve: its middle is a point of the curve like any other. */
const middleless = (
  _tag: string,
  body: string,
  layer: Kind,
  first: Spot,
  last: Spot,
  place: (x: number, y: number) => Spot,
): Primitive => {
  const curve = /<curveto\b([^>]*)\/>/.exec(body)?.[1] ?? ''
  const handle = (n: number): Spot =>
    place(Number(attribute(curve, `x${n}`)), Number(attribute(curve, `y${n}`)))
  const [one, two] = [handle(1), handle(2)]
  const middle = {
    x: (first.x + 3 * one.x + 3 * two.x + last.x) / 8,
    y: (first.y + 3 * one.y + 3 * two.y + last.y) / 8,
  }
  const centre = centreOf(first, middle, last)
  const radius = Math.hypot(first.x - centre.x, first.y - centre.y)
  return { kind: 'arc', layer, centre, radius, ends: [first, last] }
}

/** All pages, from each page's lower left corner. */
export const readPdfStrokes = (path: string): readonly (readonly Primitive[])[] => {
  const text = execFileSync('mutool', ['trace', path], { encoding: 'utf8', maxBuffer: 1 << 30 })
  return text
    .split('<page ')
    .slice(1)
    .map((page) => {
      const [, y0 = 0, , y1 = 0] = attribute(` ${page.slice(0, 200)}`, 'mediabox')
        .split(/\s+/)
        .map(Number)
      const height = (y1 - y0) * MM_PER_POINT
      return page
        .split('<stroke_path ')
        .slice(1)
        .map((stroke) => {
          const end = stroke.indexOf('>')
          return readStroke(
            ` ${stroke.slice(0, end)}`,
            stroke.slice(end, stroke.indexOf('</stroke_path>')),
            height,
          )
        })
    })
}
