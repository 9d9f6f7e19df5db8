import { clockText, clockTicks, multiples, roundStep, scaleOf } from '#craft/figure/scale.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import { useWidth } from '../trials/useWidth.ts'

const HEIGHT = 300

/** Letters, dashes and colours: any one of them tells the curves apart. */
export const LETTERS = ['A', 'B', 'C', 'D'] as const
const DASHES = ['', '9 4', '2.5 4', '12 4 2.5 4'] as const

export interface CurveOf {
  readonly name: string
  readonly report: BurnReport | null
}

interface Curve {
  readonly report: BurnReport
  /** Its place among the stoves. */
  readonly i: number
}

/** Firepower over the whole burn, all stoves in one figure. */
export const BesideCurves = ({ stoves }: { readonly stoves: readonly CurveOf[] }) => {
  const all = stoves.flatMap(({ report }, i): readonly Curve[] => (report === null ? [] : [{ report, i }]))
  return all.length === 0 ? (
    <p className="beside-none muted">No burn to draw.</p>
  ) : (
    <Curves all={all} stoves={stoves} />
  )
}

const Curves = ({ all, stoves }: { readonly all: readonly Curve[]; readonly stoves: readonly CurveOf[] }) => {
  const [place, width] = useWidth<HTMLElement>(900)
  const plot = { left: 44, right: width - 14, top: 26, bottom: HEIGHT - 34 }
  const until = Math.max(...all.map(({ report }) => report.series.at(-1)?.time ?? 60))
  const highest = Math.max(
    500,
    ...all.flatMap(({ report }) => report.series.map(({ firepower }) => firepower)),
  )
  const step = roundStep(highest, 4)
  const most = Math.ceil(highest / step) * step
  const time = scaleOf(0, until, plot.left, plot.right)
  const power = scaleOf(0, most, plot.bottom, plot.top)
  const round = (value: number): number => Math.round(value * 10) / 10
  return (
    <figure ref={place} className="beside-curves">
      <svg
        viewBox={`0 0 ${width} ${HEIGHT}`}
        role="img"
        aria-label={`Firepower over time of ${all.map(({ i }) => `${LETTERS[i]}, ${stoves[i]?.name}`).join('; ')}. The table above has the figures.`}
      >
        {multiples(step, 0, most).map((value) => (
          <g key={value}>
            <path className="beside-grid" d={`M${plot.left} ${round(power.at(value))}H${plot.right}`} />
            <text className="beside-tick" x={plot.left - 8} y={power.at(value) + 4} textAnchor="end">
              {Number((value / 1000).toPrecision(3))}
            </text>
          </g>
        ))}
        {clockTicks(time, 60).map((at) => (
          <text key={at} className="beside-tick" x={time.at(at)} y={plot.bottom + 20} textAnchor="middle">
            {clockText(at)}
          </text>
        ))}
        <text className="beside-tick" x={plot.left - 8} y={plot.top - 12} textAnchor="end">
          kW
        </text>
        {all.map(({ report, i }) => {
          const points = report.series.map(
            ({ time: at, firepower }) => `${round(time.at(at))} ${round(power.at(firepower))}`,
          )
          const peak = report.series.reduce((best, one) => (one.firepower > best.firepower ? one : best))
          return (
            <g key={LETTERS[i]} data-curve={i}>
              <path className="beside-line" d={`M${points.join('L')}`} strokeDasharray={DASHES[i]} />
              <text
                className="beside-letter"
                x={time.at(peak.time) + 4 + 16 * i}
                y={Math.max(plot.top - 6, power.at(peak.firepower) - 7)}
              >
                {LETTERS[i]}
              </text>
            </g>
          )
        })}
      </svg>
      <figcaption className="beside-key small">
        {all.map(({ i }) => (
          <span key={LETTERS[i]} data-curve={i}>
            <svg viewBox="0 0 44 10" width="44" height="10" aria-hidden="true">
              <path className="beside-line" d="M0 5H44" strokeDasharray={DASHES[i]} />
            </svg>{' '}
            {LETTERS[i]} {stoves[i]?.name}
          </span>
        ))}
      </figcaption>
    </figure>
  )
}
