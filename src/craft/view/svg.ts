import type { Point } from '../drawing.ts'
import type { LineWeight, View, ViewFill } from './view.ts'

/** Colours and pens of a picture of solids. */
export interface ViewTheme {
  readonly ink: string
  /** The darkest and the lightest shade, each as red, green and blue from 0 to 255. */
  readonly dark: readonly [number, number, number]
  readonly light: readonly [number, number, number]
  /** Tin that was cut. */
  readonly cut: string
  /** Width of each line [mm]. */
  readonly pens: Readonly<Record<LineWeight, number>>
}

/** Ink on paper: prints well in black and white. */
export const PAPER_THEME: ViewTheme = {
  ink: '#2b2622',
  dark: [176, 168, 158],
  light: [252, 250, 246],
  cut: '#2b2622',
  pens: { outline: 0.35, edge: 0.18, cut: 0.35 },
}

/** The same for a dark page. */
export const DARK_THEME: ViewTheme = {
  ...PAPER_THEME,
  ink: '#efe8dd',
  dark: [38, 35, 32],
  light: [116, 109, 100],
  cut: '#efe8dd',
}

const toneColour = ({ dark, light, cut }: ViewTheme, tone: ViewFill['tone']): string => {
  if (tone === 'cut') return cut
  const mixed = [0, 1, 2].map((part) => Math.round(dark[part]! + (light[part]! - dark[part]!) * tone))
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`
}

/** Hundredths of a millimetre as a whole number: short, and the unit of the picture’s box. */
const UNITS = 100

/** Room for the thick line that runs along the edge [mm]. */
const EDGE = 0.5

const pathOf = (points: readonly Point[], height: number, closed: boolean): string => {
  let [x, y] = [0, 0]
  const steps = points.map((point, index) => {
    const toX = Math.round((EDGE + point.x) * UNITS)
    const toY = Math.round((EDGE + height - point.y) * UNITS)
    const [dx, dy] = [toX - x, toY - y]
    x = toX
    y = toY
    if (index === 0) return `M${toX} ${toY}`
    return dx === 0 && dy === 0 ? '' : `l${dx}${dy < 0 ? '' : ' '}${dy}`
  })
  return steps.join('') + (closed ? 'z' : '')
}

const WEIGHTS: readonly LineWeight[] = ['edge', 'cut', 'outline']

const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`)

/** A picture as SVG groups, in hundredths of a millimetre, for whoever sets it into a larger one. */
export const viewGroup = (view: View, theme: ViewTheme = PAPER_THEME): string => {
  const fills = view.fills.map(({ tone, rings }) => {
    const colour = toneColour(theme, tone)
    const d = rings.map((ring) => pathOf(ring, view.height, true)).join('')
    return `<path fill="${colour}" stroke="${colour}" d="${d}"/>`
  })
  const lines = WEIGHTS.map((weight) => {
    const d = view.lines
      .filter((line) => line.weight === weight)
      .map(({ points }) => pathOf(points, view.height, false))
      .join('')
    return d === '' ? '' : `<path stroke-width="${theme.pens[weight] * UNITS}" d="${d}"/>`
  })
  return [
    '<g fill-rule="evenodd" stroke-width="6" stroke-linejoin="round">',
    ...fills,
    `</g><g fill="none" stroke="${theme.ink}" stroke-linecap="round" stroke-linejoin="round">`,
    ...lines,
    '</g>',
  ].join('\n')
}

/** A picture as a whole SVG file at true size, told to those who cannot see it by `title`. */
export const viewSvg = (view: View, title: string, theme: ViewTheme = PAPER_THEME): string => {
  const [wide, high] = [view.width + 2 * EDGE, view.height + 2 * EDGE]
  const box = [0, 0, wide, high].map((value) => Math.round(value * UNITS)).join(' ')
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${wide.toFixed(2)}mm" height="${high.toFixed(2)}mm" ` +
    `viewBox="${box}" role="img"><title>${escaped(title)}</title>\n${viewGroup(view, theme)}\n</svg>\n`
  )
}
