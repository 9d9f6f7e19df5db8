import { useSyncExternalStore } from 'react'

const asked = (query: string): (() => boolean) => {
  const media = matchMedia(query)
  const subscribe = (listener: () => void): (() => void) => {
    media.addEventListener('change', listener)
    return () => media.removeEventListener('change', listener)
  }
  return () => useSyncExternalStore(subscribe, () => media.matches)
}

/** As narrow as a phone held upright: one thing at a time [px]. */
export const useNarrow = asked('(max-width: 760px)')

/** A desk with room for weather and plan beside the section [px]; the style sheet says the same. */
export const useWide = asked('(min-width: 1500px)')
