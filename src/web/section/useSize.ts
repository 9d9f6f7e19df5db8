import { useLayoutEffect, useRef, useState } from 'react'

export interface Size {
  readonly width: number
  readonly height: number
}

/** Size of an element as it is laid out, and after every change of it [px]. */
export const useSize = () => {
  const place = useRef<HTMLDivElement>(null)
  const [size, setSize] = useState<Size | null>(null)
  useLayoutEffect(() => {
    const here = place.current
    if (here === null) return
    const watch = new ResizeObserver(([entry]) => {
      if (entry === undefined) return
      const width = Math.round(entry.contentRect.width)
      const height = Math.round(entry.contentRect.height)
      // What is not laid out, behind another tab, keeps the size it had.
      if (width === 0 || height === 0) return
      setSize((last) => (last?.width === width && last.height === height ? last : { width, height }))
    })
    watch.observe(here)
    return () => watch.disconnect()
  }, [])
  return { place, size }
}
