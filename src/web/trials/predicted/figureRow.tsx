import { amountText, rangeText } from '#proof/compare/amount.ts'
import type { PredictedFigure, Side } from '#proof/predicted/model.ts'
import { plotScale } from '../plotScale.ts'

const WIDTH = 300
const HEIGHT = 40
const PAD = 8

const SIDE_WORDS: Readonly<Record<Side, string>> = {
  within: 'within the band',
  above: 'above the band',
  below: 'below the band',
}

/** What may be told of one figure: band, likeliest, measured with its uncertainty. */
const Picture = ({ figure }: { readonly figure: PredictedFigure }) => {
  const { band, predicted, measured, u } = figure
  const values = [
    ...(band === null ? [] : [band.low, band.high]),
    ...(predicted === null ? [] : [predicted]),
    ...(measured === null ? [] : [measured]),
  ]
  if (values.length === 0) return null
  const { x, ticks, step } = plotScale(values, PAD, WIDTH - PAD, { most: 4 })
  const doubt = u ?? 0
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true" className="figure-line">
      {ticks.map((tick) => (
        <g key={tick}>
          <line x1={x(tick)} x2={x(tick)} y1={0} y2={24} className="plot-grid" />
          <text x={x(tick)} y={HEIGHT - 3} textAnchor="middle" className="plot-figure">
            {amountText(figure.claim, tick, step).replace(/ .*$/, '')}
          </text>
        </g>
      ))}
      {band !== null && (
        <rect
          x={x(band.low)}
          width={Math.max(2, x(band.high) - x(band.low))}
          y={5}
          height={14}
          className="figure-band"
        />
      )}
      {predicted !== null && (
        <line x1={x(predicted)} x2={x(predicted)} y1={2} y2={22} className="figure-median" />
      )}
      {measured !== null && (
        <g className="figure-measured">
          <line
            x1={Math.max(0, x(measured - doubt))}
            x2={Math.min(WIDTH, x(measured + doubt))}
            y1={12}
            y2={12}
          />
          <path d={`M${x(measured)} 6l6 6-6 6-6-6z`} />
        </g>
      )}
    </svg>
  )
}

export const FigureRow = ({ figure }: { readonly figure: PredictedFigure }) => {
  const { claim, band, predicted, measured, u, side } = figure
  if (predicted === null && measured === null) return null
  const text = (value: number | null, doubt: number): string =>
    value === null ? '–' : amountText(claim, value, Math.max(doubt, 0.005 * Math.abs(value)))
  return (
    <tr>
      <th scope="row">{claim.name}</th>
      <td>
        {text(predicted, band === null ? 0 : (band.high - band.low) / 4)}
        {band !== null && <span className="muted small"> {rangeText(claim, band.low, band.high)}</span>}
      </td>
      <td>{text(measured, u ?? 0)}</td>
      <td data-side={side}>{side === null ? '' : SIDE_WORDS[side]}</td>
      <td>
        <Picture figure={figure} />
      </td>
    </tr>
  )
}
