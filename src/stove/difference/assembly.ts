import type { StoveFile } from '#stove/document/schema.ts'
import { type Difference, type Telling, turnChange } from './words.ts'

type Placed = StoveFile['assembly'][number]

const hostOf = (placed: Placed): string | null => ('host' in placed ? placed.host : null)
const raisedOf = (placed: Placed): string => ('raised' in placed ? (placed.raised ?? '0 mm') : '0 mm')

const where = (placed: Placed): string => {
  const host = hostOf(placed)
  return host === null ? placed.place : `${placed.place} ${host}`
}

/** What was changed of where parts of both stoves stand. A part that is new or gone is told by itself. */
export const assemblyDifferences = (
  before: StoveFile,
  after: StoveFile,
  telling: Telling,
): readonly Difference[] => {
  const old = new Map(before.assembly.map((placed) => [placed.part, placed]))
  return after.assembly.flatMap((now) => {
    const was = old.get(now.part)
    if (was === undefined) return []
    const said = (what: string): Difference => ({ part: now.part, opening: null, subject: now.part, what })
    const moved = where(was) === where(now) ? null : `${where(was)} → ${where(now)}`
    const raised =
      moved === null ? telling.change(raisedOf(was), raisedOf(now), 'raised', ['', 'higher', 'lower']) : null
    return [moved, raised, turnChange(was.turned, now.turned)].flatMap((what) =>
      what === null ? [] : [said(what)],
    )
  })
}
