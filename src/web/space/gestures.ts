import { draggedBy, keyed, type Orbit, zoomedBy } from './orbit.ts'

interface Held {
  readonly x: number
  readonly y: number
}

/**
 * Turns a picture by mouse, finger and key: drag turns, wheel and two fingers bring nearer, arrow keys turn, + and - bring
 * nearer, Home goes back. The wheel is taken only while the picture has the focus or Ctrl is held: a page must scroll past it.
 */
export const listenToGestures = (
  place: HTMLElement,
  orbit: () => Orbit,
  change: (next: Orbit) => void,
): (() => void) => {
  const fingers = new Map<number, Held>()
  const apart = (): number => {
    const [a, b] = [...fingers.values()]
    return a === undefined || b === undefined ? 0 : Math.hypot(a.x - b.x, a.y - b.y)
  }
  const down = (event: PointerEvent): void => {
    if (event.button !== 0) return
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY })
    place.setPointerCapture(event.pointerId)
  }
  const move = (event: PointerEvent): void => {
    const before = fingers.get(event.pointerId)
    if (before === undefined) return
    const was = apart()
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY })
    if (fingers.size === 1)
      change(draggedBy(orbit(), before.x - event.clientX, event.clientY - before.y, place.clientWidth))
    else if (was > 0) change(zoomedBy(orbit(), apart() / was))
  }
  const up = (event: PointerEvent): void => void fingers.delete(event.pointerId)
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
  place.addEventListener('wheel', wheel, { passive: false })
  place.addEventListener('keydown', key)
  return () => {
    place.removeEventListener('pointerdown', down)
    place.removeEventListener('pointermove', move)
    place.removeEventListener('pointerup', up)
    place.removeEventListener('pointercancel', up)
    place.removeEventListener('wheel', wheel)
    place.removeEventListener('keydown', key)
  }
}
