import { type RefObject, useEffect, useRef } from 'react'

const hold = (event: TouchEvent): void => event.preventDefault()

/**
 * For what a finger takes hold of: the page does not scroll away under it. `touch-action` alone is not heeded within a
 * drawing, and a listener that may refuse must be set by hand.
 */
export const useHeldTouch = (): RefObject<SVGGElement | null> => {
  const place = useRef<SVGGElement>(null)
  useEffect(() => {
    const here = place.current
    here?.addEventListener('touchstart', hold, { passive: false })
    return () => here?.removeEventListener('touchstart', hold)
  }, [])
  return place
}
