import { type KeyboardEvent, type PointerEvent, useRef } from 'react'
import { useHeldTouch } from '../section/useHeldTouch.ts'
import type { Live, LiveStove } from '../stove/liveBurn.ts'
import { type Strip, timeAt } from './strip.ts'

/** Of an arrow key, and with Shift [s]. */
const STEP = 30
const STRIDE = 300

/** The hand of the clock over the strip: dragged, or moved with the keys of a slider. */
export const Scrubber = ({
  strip,
  zoom,
  live,
  stove,
  words,
}: {
  readonly strip: Strip
  /** Pixels of the screen for one of the strip. */
  readonly zoom: number
  readonly live: Live
  readonly stove: LiveStove
  readonly words: string
}) => {
  const held = useRef<{ readonly pointer: number; readonly from: number | null } | null>(null)
  const grasp = useHeldTouch()
  const { at, burn } = live
  const x = strip.time.at(Math.min(at, strip.until))
  const place = (event: PointerEvent<SVGGElement>): void => {
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect()
    if (box !== undefined) stove.at.set(timeAt(strip, (event.clientX - box.left) / zoom))
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
      ref={grasp}
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
