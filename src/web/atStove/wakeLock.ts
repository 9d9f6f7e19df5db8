import { useEffect, useState } from 'react'

/** Whether the screen is kept on. */
export type Awake = 'kept awake' | 'asking' | 'not here'

/** Keeps the screen on while the page is seen, where the browser lets a page do so. */
export const useAwake = (): Awake => {
  const [awake, setAwake] = useState<Awake>('asking')
  useEffect(() => {
    if (!('wakeLock' in navigator)) {
      setAwake('not here')
      return
    }
    let lock: WakeLockSentinel | null = null
    let gone = false
    const ask = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return
      try {
        lock = await navigator.wakeLock.request('screen')
        if (gone) await lock.release()
        else setAwake('kept awake')
      } catch {
        if (!gone) setAwake('not here')
      }
    }
    const seen = (): void => void ask()
    document.addEventListener('visibilitychange', seen)
    void ask()
    return () => {
      gone = true
      document.removeEventListener('visibilitychange', seen)
      void lock?.release().catch(() => undefined)
    }
  }, [])
  return awake
}
