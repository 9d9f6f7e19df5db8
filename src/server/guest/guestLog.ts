import { shown } from '#basis/text/fault.ts'

export interface RefusedGuest {
  /** Network address. */
  readonly address: string
  readonly method: string
  readonly target: string
  readonly sentence: string
}

export interface LogOptions {
  /** Milliseconds since any fixed moment [ms] */
  readonly clock: () => number
  /** `2031-05-17T14:05:00Z` */
  readonly now: () => string
  readonly write: (line: string) => void
  /** Lines in a minute; more are counted. */
  readonly most?: number
}

export interface GuestLog {
  readonly refused: (guest: RefusedGuest) => void
  /** Says how many were only counted so far. */
  readonly flush: () => void
}

const MINUTE = 60_000

/**
 * One line for each guest that was refused. Nothing a guest says breaks the line or colours the terminal, and
 * a flood of them makes a line with its number.
 */
export const guestLog = ({ clock, now, write, most = 20 }: LogOptions): GuestLog => {
  let since = -Infinity
  let lines = 0
  let counted = 0
  const flush = (): void => {
    if (counted > 0) write(`${now()} refused ${counted} more`)
    counted = 0
  }
  return {
    refused: ({ address, method, target, sentence }) => {
      if (clock() - since >= MINUTE) {
        flush()
        since = clock()
        lines = 0
      }
      if (lines >= most) {
        counted++
        return
      }
      lines++
      const line = sentence.replaceAll('\n', ' ').slice(0, 400)
      write(`${now()} refused ${shown(address)} ${shown(method)} ${shown(target)}: ${line}`)
    },
    flush,
  }
}
