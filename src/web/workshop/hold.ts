/**
 * Holds a name as long as this page lives, so that no other page of this browser has it too. Without Web Locks
 * (a phone at a bench that is open to the house over plain HTTP) pages ask each other.
 */
export type Hold = (name: string, wait: boolean) => Promise<(() => void) | null>

/** How long a page that was just left may take to let go. [ms] */
const PATIENCE = 3000
/** How long another page may take to answer. [ms] */
const ANSWER = 250

const byLocks =
  (locks: LockManager): Hold =>
  (name, wait) =>
    new Promise((resolve) => {
      const wish: LockOptions = wait ? { signal: AbortSignal.timeout(PATIENCE) } : { ifAvailable: true }
      locks
        .request(name, wish, (lock) => {
          if (lock === null) {
            resolve(null)
            return undefined
          }
          return new Promise<void>((release) => resolve(release))
        })
        .catch(() => resolve(null))
    })

const byAsking = (): Hold => {
  const held = new Set<string>()
  const line = new BroadcastChannel('tinwright.hold')
  const waiting = new Map<string, (taken: boolean) => void>()
  line.onmessage = ({ data }: MessageEvent<{ readonly ask?: string; readonly taken?: string }>) => {
    if (data.ask !== undefined && held.has(data.ask)) line.postMessage({ taken: data.ask })
    if (data.taken !== undefined) waiting.get(data.taken)?.(true)
  }
  return async (name) => {
    if (held.has(name)) return null
    const taken = await new Promise<boolean>((resolve) => {
      waiting.set(name, resolve)
      line.postMessage({ ask: name })
      setTimeout(() => resolve(false), ANSWER)
    })
    waiting.delete(name)
    if (taken) return null
    held.add(name)
    return () => void held.delete(name)
  }
}

export const hold: Hold =
  typeof navigator !== 'undefined' && 'locks' in navigator ? byLocks(navigator.locks) : byAsking()
