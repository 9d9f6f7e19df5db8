import { useMemo } from 'react'
import { useCell } from '../cell/useCell.ts'
import { units } from '../settings/settings.ts'
import type { Live, LiveStove } from '../stove/liveBurn.ts'
import {
  bandPath,
  powerPath,
  powerTicks,
  powerUnit,
  type Strip,
  stripMarks,
  timeTicks,
  waterPath,
  waterTicks,
} from './strip.ts'

/** Firepower with its band and the parent's behind it, water, what happens when. */
export const Curves = ({
  strip,
  live,
  stove,
}: {
  readonly strip: Strip
  readonly live: Live
  readonly stove: LiveStove
}) => {
  const bands = useCell(stove.bands)
  const before = useCell(stove.before)
  const inUnits = useCell(units)
  const { burn } = live
  const drawn = useMemo(() => {
    if (burn === null) return null
    return {
      power: powerPath(strip, burn),
      water: waterPath(strip, burn),
      marks: stripMarks(strip, burn),
      times: timeTicks(strip),
    }
  }, [strip, burn])
  if (drawn === null || burn === null) return null
  const band = bands?.key === live.key ? (bands.answer?.firepowerOverTime ?? null) : null
  const { left, right, top, bottom } = strip
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of an SVG takes no focus
    <g aria-hidden="true">
      {powerTicks(strip, inUnits).map(({ y, text }) => (
        <g key={text}>
          <path className="strip-grid" d={`M${left} ${y}H${right}`} />
          <text className="strip-tick" x={left - 7} y={y + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      <text className="strip-tick" x={left - 7} y={top - 12} textAnchor="end">
        {powerUnit(inUnits)}
      </text>
      {waterTicks(strip, inUnits).map(({ y, text }) => (
        <text key={text} className="strip-tick strip-water-tick" x={right + 7} y={y + 4}>
          {text}
        </text>
      ))}
      {drawn.times.map(({ x, text }) => (
        <g key={text}>
          <path className="strip-grid" d={`M${x} ${bottom}v5`} />
          <text className="strip-tick" x={x} y={bottom + 18} textAnchor={text === '0' ? 'start' : 'middle'}>
            {text}
          </text>
        </g>
      ))}
      {band === null ? null : <path className="strip-band" d={bandPath(strip, band)} />}
      {before?.burn == null ? null : <path className="strip-before" d={powerPath(strip, before.burn)} />}
      <path className="strip-water" d={drawn.water} />
      <path className="strip-power" d={drawn.power} />
      {drawn.marks.map(({ x, text, line, anchor }) => (
        <g key={text}>
          <path className="strip-event" d={`M${x} ${line === 0 ? 4 : 19}V${bottom}`} />
          <text
            className="strip-words"
            x={anchor === 'start' ? x + 4 : x - 4}
            y={line === 0 ? 13 : 28}
            textAnchor={anchor}
          >
            {text}
          </text>
        </g>
      ))}
    </g>
  )
}
