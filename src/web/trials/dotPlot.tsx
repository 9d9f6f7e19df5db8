import { amountText, rangeText } from '#proof/compare/amount.ts'
import type { MetricComparison, Point } from '#proof/compare/model.ts'
import { plotScale, spreadOut } from './plotScale.ts'
import { PointShape, SHAPES, type ShapeName } from './pointShape.tsx'
import { useWidth } from './useWidth.ts'

/** Wide enough for names beside the points; else they stand above them [px]. */
const ROOMY = 560
const NAMES = 190
const RIGHT = 24
const ROW = 58
const NAME_ABOVE = 26
const MOST_WIDTH = 860
const DOT = 12

const burns = (count: number): string => (count === 1 ? '1 burn' : `${count} burns`)

const shapesFor = (points: readonly Point[]): ReadonlyMap<string, ShapeName> =>
  new Map(
    [...new Set(points.map(({ block }) => block))].map((block, i) => [
      block,
      SHAPES[i % SHAPES.length] as ShapeName,
    ]),
  )

/** Every burn of every variant as a point, the mean as a bar, and where the true mean most likely lies. */
export const DotPlot = ({ comparison }: { readonly comparison: MetricComparison }) => {
  const [ref, room] = useWidth<HTMLElement>(MOST_WIDTH)
  const { metric, variants } = comparison
  const points = variants.flatMap((one) => one.points)
  const ends = variants.flatMap(({ interval }) => (interval === null ? [] : [interval.low, interval.high]))
  const values = points.map(({ value }) => value)
  // A wide interval of two burns must not squeeze all points together: it may run off the sheet.
  const span = Math.max(...values) - Math.min(...values) || Math.abs(values[0] ?? 1)
  const near = ends.filter((end) => end > Math.min(...values) - span && end < Math.max(...values) + span)
  const width = Math.min(room, MOST_WIDTH)
  const roomy = width >= ROOMY
  const left = roomy ? NAMES : RIGHT
  const rowHeight = roomy ? ROW : ROW + NAME_ABOVE
  const scale = plotScale([...values, ...near], left, width - RIGHT, { most: roomy ? 7 : 4 })
  const inside = (x: number): number => Math.max(left, Math.min(width - RIGHT, x))
  const shapes = shapesFor(points)
  const height = variants.length * rowHeight + 34
  return (
    <figure className="dot-plot" ref={ref}>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`${metric.name}: every burn of every variant`}
      >
        {scale.ticks.map((tick) => (
          <g key={tick}>
            <line x1={scale.x(tick)} x2={scale.x(tick)} y1={0} y2={height - 30} className="plot-grid" />
            <text x={scale.x(tick)} y={height - 12} textAnchor="middle" className="plot-figure">
              {amountText(metric, tick, scale.step).replace(/ \(.*\)$/, '')}
            </text>
          </g>
        ))}
        {variants.map(({ variant, points: own, mean, interval, count }, row) => {
          const y = (row + 1) * rowHeight - ROW / 2
          const rows = spreadOut(
            own.map(({ value }) => scale.x(value)),
            DOT,
          )
          return (
            <g key={variant}>
              <text x={0} y={roomy ? y - 2 : y - 28} className="plot-name">
                {variant.length > 24 ? `${variant.slice(0, 23)}…` : variant}
                {!roomy && <tspan className="plot-figure">{`  ${burns(count)}`}</tspan>}
              </text>
              {roomy && (
                <text x={0} y={y + 15} className="plot-figure">
                  {burns(count)}
                </text>
              )}
              {interval !== null && (
                <g className="plot-interval">
                  <title>
                    {`Mean ${amountText(metric, mean, (interval.high - interval.low) / 2)}; the true one most likely ${rangeText(metric, interval.low, interval.high)}`}
                  </title>
                  <line
                    x1={inside(scale.x(interval.low))}
                    x2={inside(scale.x(interval.high))}
                    y1={y + 20}
                    y2={y + 20}
                  />
                  {[interval.low, interval.high]
                    .map(scale.x)
                    .filter((x) => x === inside(x))
                    .map((x) => (
                      <line key={x} x1={x} x2={x} y1={y + 15} y2={y + 25} />
                    ))}
                </g>
              )}
              <line x1={scale.x(mean)} x2={scale.x(mean)} y1={y - 16} y2={y + 25} className="plot-mean" />
              {own.map((point, i) => (
                <PointShape
                  key={point.index}
                  shape={shapes.get(point.block) ?? 'circle'}
                  x={scale.x(point.value)}
                  y={y - (rows[i] ?? 0) * 8}
                  hollow={point.mishap}
                  title={`${point.trial}, ${point.block}: ${amountText(metric, point.value, point.u)}${point.mishap ? '; something went wrong' : ''}`}
                />
              ))}
            </g>
          )
        })}
      </svg>
      <figcaption className="plot-key small">
        {shapes.size > 1 &&
          [...shapes].map(([block, shape]) => (
            <span key={block}>
              <svg viewBox="-8 -8 16 16" width="16" height="16" aria-hidden="true">
                <PointShape shape={shape} x={0} y={0} hollow={false} title={block} />
              </svg>
              {block}
            </span>
          ))}
        {points.some(({ mishap }) => mishap) && (
          <span>
            <svg viewBox="-8 -8 16 16" width="16" height="16" aria-hidden="true">
              <PointShape shape="circle" x={0} y={0} hollow title="something went wrong" />
            </svg>
            something went wrong
          </span>
        )}
        <span>upright bar: mean; line below: where the true mean most likely lies</span>
      </figcaption>
    </figure>
  )
}
