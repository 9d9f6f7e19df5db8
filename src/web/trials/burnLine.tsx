import { type BurnLog, type Entry, entryText, isWeighing, litAt, standing } from '../atStove/entry.ts'
import { runningTime } from '../atStove/runningTime.ts'
import { lanes, timeTicks } from './lanes.ts'
import { useWidth } from './useWidth.ts'

const USUAL_WIDTH = 960
const LEFT = 8
const RIGHT = 24
const LANE = 19

/** As much of a remark as a line of time has room for. */
const MOST = 36
const shortened = (text: string): string => (text.length > MOST ? `${text.slice(0, MOST - 1)}…` : text)

/** The burn as a line of time: what happened above it with a tick, what was weighed with a square. */
export const BurnLine = ({ log }: { readonly log: BurnLog }) => {
  const [ref, width] = useWidth<HTMLElement>(USUAL_WIDTH)
  const entries = standing(log)
  const [first] = entries
  if (first === undefined) return <figure ref={ref} />
  const zero = litAt(log) ?? Date.parse(first.at)
  const start = Math.min(0, (Date.parse(first.at) - zero) / 1000)
  const end = Math.max(60, ...entries.map(({ at }) => (Date.parse(at) - zero) / 1000))
  const scale = (width - LEFT - RIGHT) / (end - start)
  const x = (seconds: number): number => LEFT + (seconds - start) * scale
  const placed = lanes(
    entries.map((entry) => ({
      key: entry.id,
      x: x((Date.parse(entry.at) - zero) / 1000),
      text: shortened(entryText(entry)),
    })),
    width,
  )
  const top = (Math.max(...placed.map(({ lane }) => lane)) + 1) * LANE + 8
  const byId = new Map(entries.map((entry) => [entry.id, entry]))
  return (
    <figure className="burn-line" ref={ref}>
      <svg
        width={width}
        height={top + 30}
        viewBox={`0 0 ${width} ${top + 30}`}
        role="img"
        aria-label="What happened, along the time since lighting"
      >
        <line x1={x(start)} x2={x(end)} y1={top} y2={top} className="line-ink" />
        {timeTicks(end, Math.max(3, Math.floor(width / 110))).map((seconds) => (
          <g key={seconds}>
            <line x1={x(seconds)} x2={x(seconds)} y1={top} y2={top + 6} className="line-ink" />
            <text
              x={x(seconds)}
              y={top + 22}
              textAnchor={seconds === 0 ? 'start' : 'middle'}
              className="line-figure"
            >
              {runningTime(seconds * 1000)}
            </text>
          </g>
        ))}
        {placed.map(({ key, x: at, lane, from, text }) => {
          const entry = byId.get(key) as Entry
          const y = top - 8 - lane * LANE
          return (
            <g key={key}>
              <line x1={at} x2={at} y1={top} y2={y - 4} className="line-faint" />
              {isWeighing(entry) ? (
                <rect x={at - 4} y={top - 4} width={8} height={8} className="line-weighed" />
              ) : (
                <line x1={at} x2={at} y1={top - 6} y2={top + 6} className="line-event" />
              )}
              <text x={from + 3} y={y - 4} className="line-word">
                {text}
              </text>
            </g>
          )
        })}
      </svg>
    </figure>
  )
}
