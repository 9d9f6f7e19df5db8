import { draggedBy, keyed, type Orbit, zoomedBy } from './orbit.ts'

interface Held {
  readonly x: number
  readonly y: number
}

/** A place within the picture [px], and how much beside it may still be meant: a finger is broader than a mouse [px]. */
export interface Aim extends Held {
  readonly slack: number
}

/** What is done besides turning. */
export interface Presses {
  /** Pressed and let go at one place. */
  readonly press: (aim: Aim) => void
  /** A mouse is over a place, or over the picture no more. */
  readonly hover: (aim: Aim | null) => void
}

/** A pointer that has moved less than this has only pressed [px]. */
const STILL = 5
const SLACK = { mouse: 7, touch: 20 } as const

/**
 * Turns a picture by mouse, finger and key: drag turns, wheel and two fingers bring nearer, arrow keys turn, + and - bring
 * nearer, Home goes back. A press that turns nothing points at what lies there. The wheel is taken only while the picture has the focus or Ctrl is held: a page must scroll past it.
 */
export const listenToGestures = (
  place: HTMLElement,
  orbit: () => Orbit,
  change: (next: Orbit) => void,
  { press, hover }: Presses,
): (() => void) => {
  const fingers = new Map<number, Held>()
  /** Where the one finger went down that has turned nothing yet. */
  let still: Held | null = null
  const aimAt = (event: PointerEvent): Aim => {
    const box = place.getBoundingClientRect()
    const slack = event.pointerType === 'mouse' ? SLACK.mouse : SLACK.touch
    return { x: event.clientX - box.left, y: event.clientY - box.top, slack }
  }
  const apart = (): number => {
    const [a, b] = [...fingers.values()]
    return a === undefined || b === undefined ? 0 : Math.hypot(a.x - b.x, a.y - b.y)
  }
  const down = (event: PointerEvent): void => {
    if (event.button !== 0) return
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY })
    still = fingers.size === 1 ? { x: event.clientX, y: event.clientY } : null
    hover(null)
    place.setPointerCapture(event.pointerId)
  }
  const move = (event: PointerEvent): void => {
    const before = fingers.get(event.pointerId)
    if (before === undefined) {
      if (event.pointerType === 'mouse') hover(aimAt(event))
      return
    }
    if (still !== null && Math.hypot(event.clientX - still.x, event.clientY - still.y) < STILL) return
    still = null
    const was = apart()
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY })
    if (fingers.size === 1)
      change(draggedBy(orbit(), before.x - event.clientX, event.clientY - before.y, place.clientWidth))
    else if (was > 0) change(zoomedBy(orbit(), apart() / was))
  }
  const up = (event: PointerEvent): void => {
    fingers.delete(event.pointerId)
    if (still !== null && event.type === 'pointerup') press(aimAt(event))
    still = null
  }
  const leave = (): void => hover(null)
  const wheel = (event: WheelEvent): void => {
    if (document.activeElement !== place && !event.ctrlKey) return
    event.preventDefault()
    change(zoomedBy(orbit(), Math.exp(-event.deltaY * 0.0015)))
  }
  const key = (event: KeyboardEvent): void => {
    if (event.altKey || event.metaKey || event.ctrlKey) return
    const next = keyed(orbit(), event.key)
    if (next === null) return
    event.preventDefault()
    change(next)
  }
  place.addEventListener('pointerdown', down)
  place.addEventListener('pointermove', move)
  place.addEventListener('pointerup', up)
  place.addEventListener('pointercancel', up)
  place.addEventListener('pointerleave', leave)
  place.addEventListener('wheel', wheel, { passive: false })
  place.addEventListener('keydown', key)
  return () => {
    place.removeEventListener('pointerdown', down)
    place.removeEventListener('pointermove', move)
    place.removeEventListener('pointerup', up)
    place.removeEventListener('pointercancel', up)
    place.removeEventListener('pointerleave', leave)
    place.removeEventListener('wheel', wheel)
    place.removeEventListener('keydown', key)
  }
}
