import type { Drawing, Layer, Point, Shape } from '../drawing.ts'
import { emOf, textWidth, weightOf } from '../lettering/measure.ts'
import { PENS } from '../pdf/pen.ts'

const FONTS =
  "'Source Sans 3', 'Source Sans Pro', 'Segoe UI', 'Helvetica Neue', Arial, 'Noto Sans', 'DejaVu Sans', sans-serif"

/** Fine marks first, so that the lines that matter lie on top. */
const ORDER: readonly Layer[] = ['mark', 'dimension', 'paper', 'fold', 'drill', 'cut', 'text']

const number = (value: number): string => String(Number(value.toFixed(3)) + 0)
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

const grey = (level: number): string => {
  const part = Math.round(level * 255)
    .toString(16)
    .padStart(2, '0')
  return `#${part}${part}${part}`
}

const shapeElement = (shape: Shape, height: number): string => {
  const at = ({ x, y }: Point): readonly [string, string] => [number(x), number(height - y)]
  const pair = (point: Point): string => at(point).join(',')
  switch (shape.kind) {
    case 'line': {
      const [[x1, y1], [x2, y2]] = [at(shape.from), at(shape.to)]
      return `<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>`
    }
    case 'polyline':
      return `<${shape.closed ? 'polygon' : 'polyline'} points="${shape.points.map(pair).join(' ')}"/>`
    case 'circle': {
      const [x, y] = at(shape.centre)
      return `<circle cx="${x}" cy="${y}" r="${number(shape.radius)}"/>`
    }
    case 'arc': {
      const { centre, radius, from, to } = shape
      const end = (angle: number): string =>
        pair({
          x: centre.x + radius * Math.cos((angle * Math.PI) / 180),
          y: centre.y + radius * Math.sin((angle * Math.PI) / 180),
        })
      const r = number(radius)
      return `<path d="M${end(from)}A${r},${r} 0 ${to - from > 180 ? 1 : 0} 0 ${end(to)}"/>`
    }
    case 'text': {
      const [x, y] = at(shape.at)
      const weight = weightOf(shape.size) === 'semibold' ? ' font-weight="600"' : ''
      const anchor = shape.anchor === 'start' ? '' : ` text-anchor="${shape.anchor}"`
      const turn = shape.angle === 0 ? '' : ` transform="rotate(${number(-shape.angle)} ${x} ${y})"`
      // Whatever font stands in, the words take the room that was kept for them.
      return `<text x="${x}" y="${y}" font-size="${number(emOf(shape.size))}"${weight}${anchor}${turn} textLength="${number(textWidth(shape.text, shape.size))}" lengthAdjust="spacingAndGlyphs">${escaped(shape.text)}</text>`
    }
  }
}

/** A step's picture as SVG, in millimetres; the same picture gives the same bytes. */
export const stepSvg = ({ title, width, height, shapes }: Drawing): string => {
  const groups = ORDER.flatMap((layer) => {
    const { width: pen, grey: level, dash } = PENS[layer]
    const ink = grey(level)
    const lines = shapes.filter((shape) => shape.layer === layer && shape.kind !== 'text')
    const words = shapes.filter((shape) => shape.layer === layer && shape.kind === 'text')
    const dashes = dash.length === 0 ? '' : ` stroke-dasharray="${dash.join(' ')}"`
    const draw = (some: readonly Shape[]): string =>
      some.map((shape) => shapeElement(shape, height)).join('\n')
    return [
      ...(lines.length === 0
        ? []
        : [`<g fill="none" stroke="${ink}" stroke-width="${pen}"${dashes}>\n${draw(lines)}\n</g>`]),
      ...(words.length === 0 ? [] : [`<g fill="${ink}">\n${draw(words)}\n</g>`]),
    ]
  })
  const [wide, high] = [number(width), number(height)]
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}mm" height="${high}mm" viewBox="0 0 ${wide} ${high}" role="img" aria-labelledby="title" font-family="${FONTS}">`,
    `<title id="title">${escaped(title)}</title>`,
    `<rect width="${wide}" height="${high}" fill="#ffffff"/>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n')
}
