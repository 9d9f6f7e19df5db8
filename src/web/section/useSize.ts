import { useLayoutEffect, useRef, useState } from 'react'

export interface Size {
  readonly width: number
  readonly height: number
}

/** How much larger than usual letters are: on a wall of a screen, or because somebody wants them so [1]. */
const lettersNow = (): number =>
  Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / USUAL_LETTERS || 1

/** Of a browser that nobody has set otherwise [px]. */
const USUAL_LETTERS = 16

/**
 * Size of an element as it is laid out, and after every change of it, in units of which `zoom` pixels make one: a picture
 * that is drawn to this size has letters as large as the page round it.
 */
export const useSize = () => {
  const place = useRef<HTMLDivElement>(null)
  const [{ size, zoom }, setSize] = useState<{ readonly size: Size | null; readonly zoom: number }>({
    size: null,
    zoom: 1,
  })
  useLayoutEffect(() => {
    const here = place.current
    if (here === null) return
    const watch = new ResizeObserver(([entry]) => {
      if (entry === undefined) return
      const letters = lettersNow()
      const width = Math.round(entry.contentRect.width / letters)
      const height = Math.round(entry.contentRect.height / letters)
      // What is not laid out, behind another tab, keeps the size it had.
      if (width === 0 || height === 0) return
      setSize((last) =>
        last.size?.width === width && last.size.height === height && last.zoom === letters
          ? last
          : { size: { width, height }, zoom: letters },
      )
    })
    watch.observe(here)
    return () => watch.disconnect()
  }, [])
  return { place, size, zoom }
}
