import { toMillimetres } from '#basis/units.ts'
import type { Can } from '#stove/model.ts'

/** Which measure is being taken. */
export type Taken =
  | 'seamDiameter'
  | 'bodyDiameter'
  | 'height'
  | 'bodyWall'
  | 'top.opening'
  | 'bottom.opening'
  | null

interface Shape {
  readonly seam: number
  readonly body: number
  readonly height: number
  readonly opening: number
}

/** A can nobody measured yet looks like a middling one [mm]. */
const USUAL: Shape = { seam: 87, body: 84, height: 115, opening: 66 }

const shapeOf = (can: Can | null): Shape => {
  if (can === null) return USUAL
  const opening = can.top.kind === 'pull-off' || can.top.kind === 'friction' ? can.top.opening.value : null
  const body = toMillimetres(can.bodyDiameter.value)
  return {
    seam: toMillimetres(can.seamDiameter.value),
    body,
    height: toMillimetres(can.height.value),
    opening: opening === null ? 0.8 * body : opening * 1000,
  }
}

const WIDTH = 340
const HEIGHT = 330

/** Jaws of a calliper round something: two upright jaws on a beam. */
const Jaws = ({
  left,
  right,
  at,
  beam,
  on,
}: {
  left: number
  right: number
  at: number
  beam: number
  on: boolean
}) => (
  <g className="can-tool" data-on={on}>
    <path d={`M${left} ${at}V${beam}H${right}V${at}`} />
    <path d={`M${left} ${at}l-6 -10v-${Math.abs(at - beam) - 10}`} />
    <path d={`M${right} ${at}l6 -10v-${Math.abs(at - beam) - 10}`} />
  </g>
)

const Letter = ({ x, y, on, children }: { x: number; y: number; on: boolean; children: string }) => (
  <g className="can-letter" data-on={on}>
    <circle cx={x} cy={y} r="11" />
    <text x={x} y={y + 4.5}>
      {children}
    </text>
  </g>
)

/** The can with where to put the calliper; the measure that is being typed stands out. */
export const CanPicture = ({ can, taken }: { readonly can: Can | null; readonly taken: Taken }) => {
  const shape = shapeOf(can)
  const scale = Math.min(190 / shape.seam, 190 / shape.height)
  const [wide, body, high, opening] = [shape.seam, shape.body, shape.height, shape.opening].map(
    (n) => n * scale,
  ) as [number, number, number, number]
  const middle = 150
  const bottom = 285
  const top = bottom - high
  const [left, right] = [middle - body / 2, middle + body / 2]
  const [seamLeft, seamRight] = [middle - Math.max(wide, body + 5) / 2, middle + Math.max(wide, body + 5) / 2]
  const seam = Math.max(5, 3.2 * scale)
  const ruler = seamRight + 40
  const half = (top + bottom) / 2
  const inOpening = taken === 'top.opening' || taken === 'bottom.opening'
  return (
    <svg
      className="can-picture"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label="A can with where to measure it: A across the top, over the seam, the widest place; B across the plain wall; C upright, over both seams; D the thickness of the wall; E across the opening of the top, inside its ledge."
    >
      <path
        className="can-tin"
        d={`M${left} ${top + seam}V${bottom - seam}M${right} ${top + seam}V${bottom - seam}`}
      />
      <rect className="can-wall" x={left} y={top + seam} width={body} height={high - 2 * seam} />
      {[top, bottom - seam].map((y) => (
        <rect
          key={y}
          className="can-seam"
          x={seamLeft}
          y={y}
          width={seamRight - seamLeft}
          height={seam}
          rx="1.5"
        />
      ))}
      <path
        className="can-hidden"
        d={`M${left + 3} ${top + seam + 4}H${right - 3}M${left + 3} ${bottom - seam - 4}H${right - 3}`}
      />

      <Jaws
        left={seamLeft}
        right={seamRight}
        at={top + seam / 2}
        beam={top - 34}
        on={taken === 'seamDiameter'}
      />
      <Letter x={middle} y={top - 34} on={taken === 'seamDiameter'}>
        A
      </Letter>
      <g className="can-tool" data-on={inOpening}>
        <path d={`M${middle - opening / 2} ${top + seam + 9}v-20h${opening}v20`} />
        <path d={`M${middle - opening / 2} ${top + seam + 4}H${middle + opening / 2}`} />
      </g>
      <Letter x={middle + opening / 4} y={top - 8} on={inOpening}>
        E
      </Letter>

      <g className="can-tool" data-on={taken === 'bodyDiameter'}>
        <path d={`M${left} ${half}H${right}`} />
        <path d={`M${left} ${half - 9}v18M${right} ${half - 9}v18`} />
        <path
          d={`M${left + 8} ${half - 4}L${left} ${half}l8 4M${right - 8} ${half - 4}L${right} ${half}l-8 4`}
        />
      </g>
      <Letter x={middle} y={half} on={taken === 'bodyDiameter'}>
        B
      </Letter>

      <g className="can-tool" data-on={taken === 'height'}>
        <path d={`M${ruler} ${top}V${bottom}M${ruler - 8} ${top}h16M${ruler - 8} ${bottom}h16`} />
        {Array.from({ length: 9 }, (_, i) => top + ((i + 1) * high) / 10).map((y) => (
          <path key={y} d={`M${ruler} ${y}h5`} />
        ))}
      </g>
      <Letter x={ruler} y={half} on={taken === 'height'}>
        C
      </Letter>

      <g className="can-tool" data-on={taken === 'bodyWall'}>
        <path d={`M${left} ${bottom - seam - 26}L${seamLeft - 26} ${bottom - 12}`} />
        <circle cx={left} cy={bottom - seam - 26} r="4" />
      </g>
      <Letter x={seamLeft - 33} y={bottom - 6} on={taken === 'bodyWall'}>
        D
      </Letter>
    </svg>
  )
}
