import { writtenLog } from '#proof/trial/log.ts'
import type { Trial } from '#proof/trial/model.ts'
import type { DocumentHead } from '#wire/documents.ts'
import { type BurnLog, entryOf, logOf } from '../atStove/entry.ts'
import { createCell } from '../cell/cell.ts'
import { documents, workshop } from '../workshop/workshop.ts'
import { type Draft, draftFrom, type TrialSoFar, trialSoFar } from './draft.ts'

/** One trial of the workshop, with its log, as far as it has been told. */
export interface KnownTrial {
  readonly head: DocumentHead
  readonly draft: Draft
  readonly log: BurnLog
  readonly soFar: TrialSoFar
}

export interface TrialShelf {
  /** Some are still being fetched. */
  readonly loading: boolean
  readonly trials: readonly KnownTrial[]
  /** Documents that could not be read, each with a sentence. */
  readonly unread: readonly { readonly name: string; readonly sentence: string }[]
}

const shelf = createCell<TrialShelf>({ loading: true, trials: [], unread: [] })

/** All trials of the workshop, kept up to date from the first time anybody asks. */
export const allTrials = { get: shelf.get, subscribe: shelf.subscribe }

interface Fetched {
  /** Of what it was made. */
  readonly stamp: string
  readonly known: KnownTrial | null
  readonly sentence: string | null
}

const fetched = new Map<string, Fetched>()

const stampOf = ({ head, touched, name, version }: DocumentHead): string =>
  `${head} ${touched} ${name} ${version === 0}`

const fetchOne = async (head: DocumentHead): Promise<Fetched> => {
  const stamp = stampOf(head)
  const no = (sentence: string): Fetched => ({ stamp, known: null, sentence })
  const [revision, events] = await Promise.all([
    workshop.revision(head.head),
    // One that is still on its way has no events there to ask for.
    head.version === 0 ? null : workshop.ask('events', { trial: head.id }),
  ])
  if (!revision.ok) return no(revision.refusal.sentence)
  const draft = draftFrom(revision.value.text)
  if (draft === null) return no('Its text is no trial that this page can read.')
  const entries = events?.ok ? events.value.map(entryOf).filter((entry) => entry !== null) : []
  const log = logOf(entries, writtenLog(draft))
  return { stamp, known: { head, draft, log, soFar: trialSoFar(draft, log) }, sentence: null }
}

/** So many at a time: a workshop of many years has hundreds. */
const AT_ONCE = 6

let running = false
let again = false

const show = (heads: readonly DocumentHead[], loading: boolean): void => {
  const all = heads.map((head) => ({ head, one: fetched.get(head.id) }))
  shelf.set({
    loading,
    trials: all.flatMap(({ one }) => (one?.known == null ? [] : [one.known])),
    unread: all.flatMap(({ head, one }) =>
      one?.sentence == null ? [] : [{ name: head.name, sentence: one.sentence }],
    ),
  })
}

const look = async (): Promise<void> => {
  if (running) {
    again = true
    return
  }
  running = true
  do {
    again = false
    const heads = documents.get().filter(({ kind }) => kind === 'trial')
    const stale = heads.filter((head) => fetched.get(head.id)?.stamp !== stampOf(head))
    show(heads, stale.length > 0)
    for (let from = 0; from < stale.length; from += AT_ONCE) {
      const batch = stale.slice(from, from + AT_ONCE)
      const answers = await Promise.all(batch.map(fetchOne))
      for (const [i, answer] of answers.entries()) fetched.set((batch[i] as DocumentHead).id, answer)
    }
    show(heads, false)
  } while (again)
  running = false
}

let watching = false

/** Begins to fetch; asked again, it does nothing. */
export const watchTrials = (): void => {
  if (watching) return
  watching = true
  documents.subscribe(() => void look())
  void look()
}

/** Those that a comparison can use. */
export const wholeTrials = (trials: readonly KnownTrial[]): readonly Trial[] =>
  trials.flatMap(({ soFar }) => (soFar.trial === null ? [] : [soFar.trial]))
