import { clockText, clockTicks, multiples, roundStep, scaleOf } from '#craft/figure/scale.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'

const WIDTH = 900
const HEIGHT = 300
const PLOT = { left: 54, right: WIDTH - 30, top: 26, bottom: HEIGHT - 34 }

/** Letters, dashes and colours: any one of them tells the curves apart. */
export const LETTERS = ['A', 'B', 'C', 'D'] as const
const DASHES = ['', '9 4', '2.5 4', '12 4 2.5 4'] as const

export interface CurveOf {
  readonly name: string
  readonly report: BurnReport | null
}

/** Firepower over the whole burn, all stoves in one figure. */
export const BesideCurves = ({ stoves }: { readonly stoves: readonly CurveOf[] }) => {
  const all = stoves.flatMap(({ report }, i) => (report === null ? [] : [{ report, i }]))
  if (all.length === 0) return <p className="muted">None of them burns: there is no curve.</p>
  const until = Math.max(...all.map(({ report }) => report.series.at(-1)?.time ?? 60))
  const highest = Math.max(
    500,
    ...all.flatMap(({ report }) => report.series.map(({ firepower }) => firepower)),
  )
  const step = roundStep(highest, 4)
  const most = Math.ceil(highest / step) * step
  const time = scaleOf(0, until, PLOT.left, PLOT.right)
  const power = scaleOf(0, most, PLOT.bottom, PLOT.top)
  const round = (value: number): number => Math.round(value * 10) / 10
  return (
    <figure className="beside-curves">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Firepower over time of ${all.map(({ i }) => `${LETTERS[i]}, ${stoves[i]?.name}`).join('; ')}. The table above has the figures.`}
      >
        {multiples(step, 0, most).map((value) => (
          <g key={value}>
            <path className="beside-grid" d={`M${PLOT.left} ${round(power.at(value))}H${PLOT.right}`} />
            <text className="beside-tick" x={PLOT.left - 8} y={power.at(value) + 4} textAnchor="end">
              {Number((value / 1000).toPrecision(3))}
            </text>
          </g>
        ))}
        {clockTicks(time, 60).map((at) => (
          <text key={at} className="beside-tick" x={time.at(at)} y={PLOT.bottom + 20} textAnchor="middle">
            {clockText(at)}
          </text>
        ))}
        <text className="beside-tick" x={PLOT.left - 8} y={PLOT.top - 12} textAnchor="end">
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
                y={Math.max(PLOT.top - 6, power.at(peak.firepower) - 7)}
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
