import { amountText, differenceText, spanText } from '#proof/compare/amount.ts'
import type { Contrast, MetricComparison, Verdict } from '#proof/compare/model.ts'
import { plotScale } from './plotScale.ts'

const WIDTH = 420
const PAD = 14
const HEIGHT = 44

const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  better: 'better',
  worse: 'worse',
  differs: 'differs',
  alike: 'as good as alike',
  open: 'may be luck',
  unknown: 'too few burns',
}

const DifferenceLine = ({
  contrast,
  comparison,
}: {
  readonly contrast: Contrast
  readonly comparison: MetricComparison
}) => {
  const { metric, margin, contrasts } = comparison
  const { difference } = contrast
  if (difference === null) return null
  const all = contrasts.flatMap((one) =>
    one.difference === null ? [] : [one.difference.low, one.difference.high],
  )
  const scale = plotScale([...all, margin, -margin], PAD, WIDTH - PAD, { zero: true, most: 5 })
  const { x } = scale
  const size = (difference.high - difference.low) / 2
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      className="contrast-line"
      aria-label={`Difference ${differenceText(metric, difference.value, size)}, most likely from ${spanText(metric, difference.low, difference.high, ' to ', size)}`}
    >
      <rect x={x(-margin)} width={x(margin) - x(-margin)} y={2} height={22} className="plot-margin" />
      <line x1={x(0)} x2={x(0)} y1={0} y2={26} className="plot-zero" />
      <g className="plot-interval">
        <line x1={x(difference.low)} x2={x(difference.high)} y1={13} y2={13} />
        <line x1={x(difference.low)} x2={x(difference.low)} y1={7} y2={19} />
        <line x1={x(difference.high)} x2={x(difference.high)} y1={7} y2={19} />
      </g>
      <circle cx={x(difference.value)} cy={13} r={5} className="plot-value" />
      {scale.ticks.map((tick) => (
        <text key={tick} x={x(tick)} y={HEIGHT - 4} textAnchor="middle" className="plot-figure">
          {amountText(metric, tick, scale.step)
            .replace(/ \(.*\)$/, '')
            .replace('%', 'points')}
        </text>
      ))}
    </svg>
  )
}

/** Each variant against the reference: what to take from it, how sure, and what would settle it. */
export const Contrasts = ({
  comparison,
  reference,
}: {
  readonly comparison: MetricComparison
  readonly reference: string
}) => {
  const shown = comparison.contrasts.filter(
    ({ variant, against }) => variant === reference || against === reference,
  )
  const others = comparison.contrasts.filter((one) => !shown.includes(one))
  return (
    <>
      <ul className="contrasts">
        {shown.map((contrast) => (
          <li key={`${contrast.variant} ${contrast.against}`}>
            <p>
              <strong className="verdict" data-verdict={contrast.verdict}>
                {VERDICT_WORDS[contrast.verdict]}
              </strong>{' '}
              {contrast.sentence}
            </p>
            {contrast.moreSentence !== null && <p className="small">{contrast.moreSentence}</p>}
            <DifferenceLine contrast={contrast} comparison={comparison} />
          </li>
        ))}
      </ul>
      {others.length > 0 && (
        <details>
          <summary>The other pairs</summary>
          <ul className="contrasts">
            {others.map((contrast) => (
              <li key={`${contrast.variant} ${contrast.against}`}>
                <p>{contrast.sentence}</p>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  )
}
