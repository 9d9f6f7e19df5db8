import { type KeyboardEvent, memo, type PointerEvent, useRef } from 'react'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Stove } from '#stove/model.ts'
import type { StoveEditor } from '../stove/editor.ts'
import type { Handle } from './handles.ts'
import { useHeldTouch } from './useHeldTouch.ts'

interface GripProps {
  readonly handle: Handle
  readonly x: number
  readonly y: number
  /** How far from its middle a press still means it [px]. */
  readonly reach: number
  /** Pixels for a millimetre. */
  readonly scale: number
  readonly editor: StoveEditor
  readonly open: boolean
  readonly pointed: boolean
  readonly onOpen: () => void
  readonly onPoint: (over: boolean) => void
}

interface Gesture {
  readonly pointer: number
  readonly startX: number
  readonly startY: number
  readonly handle: Handle
  readonly stove: Stove
  readonly file: StoveFile
  moved: boolean
  /** What the last preview came to: a pointer that moves on within one millimetre changes nothing. */
  last: string
}

/** A pointer that has moved less than this has only pressed [px]. */
const PRESS = 3

const ARROWS: Readonly<Record<string, 1 | -1>> = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }

/** One thing to take hold of: dragged with a pointer, moved with the arrow keys, opened with Enter or a press. */
export const Grip = memo(
  ({ handle, x, y, reach, scale, editor, open, pointed, onOpen, onPoint }: GripProps) => {
    const gesture = useRef<Gesture | null>(null)
    const place = useHeldTouch()

    const moveOf = (event: PointerEvent, held: Gesture) => {
      const outwards = (event.clientX - held.startX) * held.handle.side
      const upwards = held.startY - event.clientY
      const pixels = held.handle.along === 'across' ? outwards : upwards
      return held.handle.drag(held.stove, held.file, pixels / scale / 1000)
    }
    const down = (event: PointerEvent<SVGGElement>): void => {
      if (event.button !== 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      event.currentTarget.focus({ preventScroll: true })
      gesture.current = {
        pointer: event.pointerId,
        startX: event.clientX,
        startY: event.clientY,
        handle,
        stove: editor.state.get().stove,
        file: editor.state.get().file,
        moved: false,
        last: '',
      }
    }
    const move = (event: PointerEvent<SVGGElement>): void => {
      const held = gesture.current
      if (held === null || held.pointer !== event.pointerId || held.handle.along === null) return
      if (!held.moved && Math.hypot(event.clientX - held.startX, event.clientY - held.startY) < PRESS) return
      held.moved = true
      const made = moveOf(event, held)
      if (made === null || made.label === held.last) return
      held.last = made.label
      editor.preview(made.change)
    }
    const up = (event: PointerEvent<SVGGElement>): void => {
      const held = gesture.current
      if (held === null || held.pointer !== event.pointerId) return
      gesture.current = null
      if (!held.moved) {
        onOpen()
        return
      }
      const made = moveOf(event, held)
      if (made === null) editor.abandon()
      else editor.commit(made.label, made.change)
    }
    const abandon = (): void => {
      if (gesture.current === null) return
      const { moved } = gesture.current
      gesture.current = null
      if (moved) editor.abandon()
    }
    const press = (event: KeyboardEvent<SVGGElement>): void => {
      if (event.key === 'Escape' && gesture.current !== null) abandon()
      else if (event.key === 'Enter' || event.key === ' ') onOpen()
      else {
        const by = ARROWS[event.key]
        if (by === undefined || handle.along === null || event.ctrlKey || event.metaKey || event.altKey)
          return
        const { stove, file } = editor.state.get()
        const made = handle.step(stove, file, by, event.shiftKey)
        if (made !== null) editor.commit(made.label, made.change)
      }
      event.preventDefault()
      event.stopPropagation()
    }
    const range =
      handle.along === null
        ? ({ 'aria-label': `${handle.label}: ${handle.value}` } as const)
        : ({
            'aria-label': handle.label,
            'aria-orientation': handle.along === 'up' ? 'vertical' : 'horizontal',
            'aria-valuenow': handle.now,
            'aria-valuemin': handle.least,
            'aria-valuemax': handle.most,
            'aria-valuetext': handle.value,
          } as const)
    return (
      // biome-ignore lint/a11y/noStaticElementInteractions: its role is one of two, each of them interactive
      <g
        ref={place}
        role={handle.along === null ? 'button' : 'slider'}
        {...range}
        tabIndex={0}
        className="grip"
        data-key={handle.key}
        data-along={handle.along ?? 'none'}
        data-open={open}
        data-pointed={pointed}
        transform={`translate(${x} ${y})`}
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={abandon}
        onLostPointerCapture={abandon}
        onPointerEnter={() => onPoint(true)}
        onPointerLeave={() => onPoint(false)}
        onFocus={() => onPoint(true)}
        onBlur={() => onPoint(false)}
        onKeyDown={press}
      >
        <circle className="grip-reach" r={reach} />
        <circle className="grip-ring" r={11} />
        <circle className="grip-knob" r={6} />
        {handle.along === 'up' ? (
          <path className="grip-way" d="M-3 -10.5L0 -14.5L3 -10.5M-3 10.5L0 14.5L3 10.5" />
        ) : null}
        {handle.along === 'across' ? (
          <path className="grip-way" d="M-10.5 -3L-14.5 0L-10.5 3M10.5 -3L14.5 0L10.5 3" />
        ) : null}
      </g>
    )
  },
)
