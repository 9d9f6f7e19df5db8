import { writingOf } from '#basis/text/writing.ts'
import type { Metres } from '#basis/units.ts'
import { partHeight } from '#stove/assembly/place.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Bit, Duty, Stove } from '#stove/model.ts'
import { wallHoleSize } from '#stove/opening/row.ts'
import { type Move, type OpeningFile, type OpeningRef, type PartFile, withPart } from './move.ts'

/** Takes an opening away. The tin there is whole again. */
export const removeOpening = ({ part, opening }: OpeningRef): Move => ({
  label: `take ${opening} away`,
  change: (file) =>
    withPart(file, part, (whole) => {
      const { [opening]: _, ...openings } = (whole.openings ?? {}) as Record<string, OpeningFile>
      return { ...whole, openings } as PartFile
    }),
})

/** A name that no opening of the part has yet. */
const freeName = (file: StoveFile, part: string, wish: string): string => {
  const taken = new Set(Object.keys(file.parts[part]?.openings ?? {}))
  if (!taken.has(wish)) return wish
  let number = 2
  while (taken.has(`${wish} ${number}`)) number++
  return `${wish} ${number}`
}

/** The middle of the longest stretch of wall that no row of the part takes up [m]. */
const freeHeight = (stove: Stove, name: string): number => {
  const part = stove.parts.get(name)
  if (part === undefined) return 0
  const wall = partHeight(part)
  const taken = [...part.openings.values()]
    .flatMap((row) => {
      if (row.kind !== 'row') return []
      const half = wallHoleSize(row.hole).axial / 2
      return [{ from: row.height - half, to: row.height + half }]
    })
    .sort((a, b) => a.from - b.from)
  let [from, best] = [0, { middle: wall / 2, length: -1 }]
  for (const gap of [...taken, { from: wall, to: wall }]) {
    if (gap.from - from > best.length) best = { middle: (from + gap.from) / 2, length: gap.from - from }
    from = Math.max(from, gap.to)
  }
  return best.middle
}

/** What a new row is called for what it is for. */
const NAMES: Readonly<Record<Duty, string>> = {
  intake: 'intake',
  primary: 'primary row',
  secondary: 'ring',
  tertiary: 'breathers',
  outlet: 'outlet',
  passage: 'passage',
  fixing: 'screws',
}

/** As many as a maker begins with: common practice, no source. */
const FIRST_COUNT = 12

/** Adds a ring of round holes where the wall of a can has most room, and says what it is called. */
export const addRow = (
  stove: Stove,
  file: StoveFile,
  part: string,
  duty: Duty,
  bit: Bit,
): { readonly move: Move; readonly ref: OpeningRef } => {
  const opening = freeName(file, part, NAMES[duty])
  // The hand of the rows that are there; in a part without any, millimetres.
  const sibling = Object.values((file.parts[part]?.openings ?? {}) as Record<string, OpeningFile>).find(
    ({ kind }) => kind === 'row',
  )
  const writing = writingOf(sibling?.kind === 'row' ? sibling.height : undefined, 'holeHeight')
  const height = writing.write(writing.snap(freeHeight(stove, part) as Metres))
  const row = { kind: 'row', duty, hole: { bit: bit.name }, count: FIRST_COUNT, height } as const
  return {
    ref: { part, opening },
    move: {
      label: `add ${opening} to ${part}`,
      change: (to) =>
        withPart(
          to,
          part,
          (whole) => ({ ...whole, openings: { ...whole.openings, [opening]: row } }) as PartFile,
        ),
    },
  }
}

/** What an opening is for, said anew. */
export const setDuty = ({ part, opening }: OpeningRef, duty: Duty): Move => ({
  label: `call ${opening} ${duty}`,
  change: (file) =>
    withPart(file, part, (whole) => {
      const there = (whole.openings as Record<string, OpeningFile> | undefined)?.[opening]
      return there === undefined
        ? whole
        : ({ ...whole, openings: { ...whole.openings, [opening]: { ...there, duty } } } as PartFile)
    }),
})
