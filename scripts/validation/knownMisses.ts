import knownMisses from '#reference/known-misses.json' with { type: 'json' }
import { hits, type OutsideRow, offText, type Standing } from './row.ts'

interface KnownMiss {
  readonly checks: readonly string[]
  readonly why: string
}

/** Checks that miss, with the reason that they share. */
export const misses: readonly KnownMiss[] = knownMisses.rows

/** Why each check that misses does. */
export const missReasons: ReadonlyMap<string, string> = new Map(
  misses.flatMap(({ checks, why }) => checks.map((check) => [check, why] as const)),
)

/** What a memory says cannot fail a test. */
export const isEnforced = (standing: Standing): boolean => standing !== 'from memory'

/** What is wrong with a row, or null: it hits, or its miss is known. A known miss that passes is a fault. */
export const faultOf = (row: OutsideRow): string | null => {
  const known = missReasons.has(row.check)
  if (hits(row)) return known ? `${row.check} passes now: take it out of known-misses.json` : null
  return known ? null : `${row.check} misses: ${offText(row)}`
}
