import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from 'react'
import { formatQuantity } from '#basis/text/format.ts'
import { clockText } from '#craft/figure/scale.ts'
import { useCell } from '../cell/useCell.ts'
import { waterAt } from '../section/moment.ts'
import { useSize } from '../section/useSize.ts'
import { figureIn } from '../settings/inUnits.ts'
import { type Units, units } from '../settings/settings.ts'
import type { Live, LiveStove } from '../stove/liveBurn.ts'
import {
  bandPath,
  powerPath,
  powerTicks,
  powerUnit,
  type Strip,
  stripMarks,
  stripOf,
  timeAt,
  timeTicks,
  waterPath,
  waterTicks,
} from './strip.ts'
import './course.css'

const STEP = 30
const STRIDE = 300
/** A whole burn is played in this time [ms]. */
const PLAYED_IN = 14_000

const PHASES = { lighting: 'lighting', 'wood gas': 'wood gas', char: 'char glows' } as const

/** What holds at the time that is looked at. */
const nowWords = (live: Live, inUnits: Units): string => {
  const { burn, at, step } = live
  const held = burn?.steps[step]
  if (burn === null || held === undefined) return ''
  const water = waterAt(live)
  const one = inUnits === 'both' ? 'mm' : inUnits
  return [
    `${formatQuantity(Math.round(at / 10) * 10, 'timeAfterLighting')} after lighting`,
    PHASES[held.phase],
    figureIn(held.firepower, 'firepower', one),
    water === null ? null : `1 L at ${figureIn(water, 'waterTemperature', one)}`,
    `wall ${figureIn(held.hottestOuterWall, 'wallTemperature', one)}`,
  ]
    .filter((text) => text !== null)
    .map((text) => text.replaceAll(' ', '\u00a0'))
    .join(' · ')
}

const Curves = ({
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

const Scrubber = ({
  strip,
  live,
  stove,
  words,
}: {
  readonly strip: Strip
  readonly live: Live
  readonly stove: LiveStove
  readonly words: string
}) => {
  const held = useRef<{ readonly pointer: number; readonly from: number | null } | null>(null)
  const { at, burn } = live
  const x = strip.time.at(Math.min(at, strip.until))
  const place = (event: PointerEvent<SVGGElement>): void => {
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect()
    if (box !== undefined) stove.at.set(timeAt(strip, event.clientX - box.left))
  }
  const press = (event: KeyboardEvent): void => {
    // Where it was sent last: keys come faster than answers.
    const from = stove.at.get() ?? at
    const go = (to: number): void => stove.at.set(Math.min(strip.until - 1, Math.max(0, to)))
    const by = event.shiftKey ? STRIDE : STEP
    const times = burn?.events.map(({ time }) => time) ?? []
    switch (event.key) {
      case 'ArrowRight':
      case 'ArrowUp':
        go(from + by)
        break
      case 'ArrowLeft':
      case 'ArrowDown':
        go(from - by)
        break
      case 'PageUp':
        go(times.find((time) => time > from + 1) ?? strip.until)
        break
      case 'PageDown':
        go(times.findLast((time) => time < from - 1) ?? 0)
        break
      case 'Home':
        go(0)
        break
      case 'End':
        go(strip.until - 1)
        break
      case 'Escape':
        stove.at.set(null)
        break
      default:
        return
    }
    event.preventDefault()
  }
  return (
    <g
      className="scrubber"
      role="slider"
      tabIndex={0}
      aria-label="Time after lighting"
      aria-valuemin={0}
      aria-valuemax={Math.round(strip.until)}
      aria-valuenow={Math.round(at)}
      aria-valuetext={words.replaceAll('\u00a0', ' ')}
      onKeyDown={press}
      onPointerDown={(event) => {
        if (event.button !== 0) return
        event.currentTarget.setPointerCapture(event.pointerId)
        event.currentTarget.focus({ preventScroll: true })
        held.current = { pointer: event.pointerId, from: stove.at.get() }
        place(event)
      }}
      onPointerMove={(event) => {
        if (held.current?.pointer === event.pointerId) place(event)
      }}
      onPointerUp={() => {
        held.current = null
      }}
      onPointerCancel={() => {
        if (held.current !== null) stove.at.set(held.current.from)
        held.current = null
      }}
    >
      <rect
        className="scrubber-reach"
        x={strip.left - 20}
        y={0}
        width={strip.right - strip.left + 40}
        height={strip.height}
      />
      <path className="scrubber-line" d={`M${x} ${strip.top - 6}V${strip.bottom}`} />
      <circle className="scrubber-knob" cx={x} cy={strip.bottom} r={7} />
    </g>
  )
}

/** Runs the time through the burn until it is over or somebody stops it. */
const usePlay = (stove: LiveStove, until: number) => {
  const [playing, setPlaying] = useState(false)
  useEffect(() => {
    if (!playing) return
    let frame = 0
    let last: number | null = null
    const tick = (now: number): void => {
      const gone = last === null ? 0 : now - last
      last = now
      const next = (stove.at.get() ?? 0) + (gone / PLAYED_IN) * until
      if (next >= until) {
        stove.at.set(until - 1)
        setPlaying(false)
        return
      }
      stove.at.set(next)
      frame = requestAnimationFrame(tick)
    }
    frame = requestAnimationFrame(tick)
    return () => cancelAnimationFrame(frame)
  }, [playing, stove, until])
  return { playing, setPlaying }
}

/** The burn from lighting to the last char as a strip; its scrubber moves the section through it. */
export const Course = ({ stove }: { readonly stove: LiveStove }) => {
  const { place, size } = useSize()
  const live = useCell(stove.live)
  const before = useCell(stove.before)
  const bands = useCell(stove.bands)
  const chosen = useCell(stove.at)
  const inUnits = useCell(units)
  const burn = live?.burn ?? null
  const band = bands?.key === live?.key ? (bands?.answer?.firepowerOverTime ?? null) : null
  const then = before?.burn ?? null
  const strip = useMemo(
    () =>
      size === null || burn === null ? null : stripOf(size.width, size.height, burn, { before: then, band }),
    [size, burn, then, band],
  )
  const { playing, setPlaying } = usePlay(stove, strip?.until ?? 60)
  const words = live === null ? '' : nowWords(live, inUnits)
  return (
    <section className="course" aria-label="The burn over time">
      <div className="course-head">
        <p className="small">
          {words}
          {chosen === null && words !== '' ? <span className="muted"> · half way down</span> : null}
        </p>
        <div className="course-acts">
          <button
            type="button"
            data-weight="quiet"
            disabled={burn === null}
            onClick={() => {
              if (!playing && chosen !== null && strip !== null && chosen >= strip.until - 2) stove.at.set(0)
              if (!playing && chosen === null) stove.at.set(0)
              setPlaying(!playing)
            }}
          >
            {playing ? 'Stop' : 'Play the burn'}
          </button>
          <button
            type="button"
            data-weight="quiet"
            disabled={chosen === null}
            onClick={() => {
              setPlaying(false)
              stove.at.set(null)
            }}
          >
            Half way down
          </button>
        </div>
      </div>
      <div className="strip-place" ref={place}>
        {strip === null || live === null ? (
          live !== null && burn === null ? (
            <p className="muted">Nothing to show over time: it does not burn.</p>
          ) : null
        ) : (
          // biome-ignore lint/a11y/noSvgWithoutTitle: named by the section round it; a title would show as a tip
          <svg width={strip.width} height={strip.height} viewBox={`0 0 ${strip.width} ${strip.height}`}>
            <Curves strip={strip} live={live} stove={stove} />
            <Scrubber strip={strip} live={live} stove={stove} words={words} />
          </svg>
        )}
      </div>
      <p className="course-key small muted" aria-hidden="true" hidden={strip === null}>
        <span className="key-power" /> firepower
        {band === null ? null : (
          <>
            <span className="key-band" /> 5 to 95 %
          </>
        )}
        <span className="key-water" /> water, 1 L
        {then === null ? null : (
          <>
            <span className="key-before" /> {before?.name}
          </>
        )}
        <span className="key-end">{strip === null ? '' : `over after ${clockText(strip.until)}`}</span>
      </p>
    </section>
  )
}
