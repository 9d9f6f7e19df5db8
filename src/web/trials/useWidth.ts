import { type RefObject, useEffect, useRef, useState } from 'react'

/** Width of what the ref is put on, as it changes, so that letters of a drawing stay as large as those beside it [px]. */
export const useWidth = <T extends HTMLElement>(usual: number): readonly [RefObject<T | null>, number] => {
  const ref = useRef<T>(null)
  const [width, setWidth] = useState(usual)
  useEffect(() => {
    const element = ref.current
    if (element === null) return
    const watch = new ResizeObserver(([entry]) => {
      const seen = Math.floor(entry?.contentRect.width ?? 0)
      if (seen > 0) setWidth(seen)
    })
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return [ref, width]
}
