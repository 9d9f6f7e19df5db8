/** Told apart by shape, so that no colour need be seen: what the points of one day or batch have in common. */
export const SHAPES = ['circle', 'square', 'triangle', 'diamond', 'cross', 'bar'] as const
export type ShapeName = (typeof SHAPES)[number]

const OUTLINES: Readonly<Record<Exclude<ShapeName, 'circle'>, string>> = {
  square: 'M-5-5h10v10h-10z',
  triangle: 'M0-6.5l6.5 11.5h-13z',
  diamond: 'M0-7l6 7-6 7-6-7z',
  cross: 'M-6-2h4v-4h4v4h4v4h-4v4h-4v-4h-4z',
  bar: 'M-3-7h6v14h-6z',
}

interface PointProps {
  readonly shape: ShapeName
  readonly x: number
  readonly y: number
  /** Something went wrong in that burn: drawn hollow. */
  readonly hollow: boolean
  readonly title: string
}

export const PointShape = ({ shape, x, y, hollow, title }: PointProps) => (
  <g transform={`translate(${x} ${y})`} className={hollow ? 'dot dot-hollow' : 'dot'}>
    <title>{title}</title>
    {shape === 'circle' ? <circle r={5.5} /> : <path d={OUTLINES[shape]} />}
  </g>
)
