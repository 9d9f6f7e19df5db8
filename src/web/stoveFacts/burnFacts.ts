import { problemSentence } from '#basis/problem.ts'
import { usualConditions } from '#compose/conditions.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Stove } from '#stove/model.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import { solver } from '../solve/solver.ts'
import { workshop } from '../workshop/workshop.ts'

/** A revision of a stove as it reads, and how it burns on a mild day. */
export interface BurnFacts {
  readonly revision: string
  /** What was changed and why, as its maker wrote it. */
  readonly note: string
  readonly created: string
  readonly file: StoveFile | null
  readonly stove: Stove | null
  readonly report: BurnReport | null
  /** Why there is no burn, or no stove; null: all is there. */
  readonly sentence: string | null
}

const known = new Map<string, Cell<BurnFacts | null>>()

const work = async (revision: string): Promise<BurnFacts> => {
  const answer = await workshop.revision(revision)
  const none = { revision, note: '', created: '', file: null, stove: null, report: null }
  if (!answer.ok) return { ...none, sentence: answer.refusal.sentence }
  const { text, note, created } = answer.value
  const read = readStoveDocument(text)
  if (!read.ok) return { ...none, note, created, sentence: read.problems.map(problemSentence).join(' ') }
  const { file, stove } = read.value
  const burnt = await solver.burn(stove, usualConditions)
  const there = { revision, note, created, file, stove }
  if (!burnt.ok) return { ...there, report: null, sentence: burnt.sentence }
  return burnt.value.kind === 'burn'
    ? { ...there, report: burnt.value.report, sentence: null }
    : { ...there, report: null, sentence: burnt.value.noBurn.sentence }
}

// One after the other: a large family must not hold up the stove on the bench.
let queue: Promise<unknown> = Promise.resolve()

const NONE = createCell<BurnFacts | null>(null)

/** Of one revision; null until it is worked out, and for none. A revision never changes, so it is worked out once. */
export const burnFacts = (revision: string): Cell<BurnFacts | null> => {
  if (revision === '') return NONE
  const there = known.get(revision)
  if (there !== undefined) return there
  const cell = createCell<BurnFacts | null>(null)
  known.set(revision, cell)
  queue = queue.then(async () => {
    const facts = await work(revision).catch(() => null)
    // Asked for again, it is looked for again.
    if (facts?.file === null || facts === null) known.delete(revision)
    cell.set(facts)
  })
  return cell
}

/** One litre's time from going on to the boil [s]; null where it does not boil. */
export const litreOf = ({ boils }: BurnReport): number | null =>
  boils.find(({ litres }) => litres === 1)?.time ?? null
