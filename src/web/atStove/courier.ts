import type { Answer } from '#wire/answer.ts'
import type { DocumentHead, OpenDocument } from '#wire/documents.ts'
import type { EventBatch, TrialEvent } from '#wire/trials.ts'
import type { BurnStore, KeptBurn, KeptPhoto } from './burnStore.ts'

/** What a burn needs of the workshop. */
export interface Line {
  readonly open: (document: string) => Promise<Answer<OpenDocument>>
  readonly logEvents: (batch: EventBatch) => Promise<Answer<readonly TrialEvent[]>>
  readonly events: (trial: string, since: number) => Promise<Answer<readonly TrialEvent[]>>
  readonly attach: (photo: KeptPhoto) => Promise<Answer<DocumentHead>>
  /** How far the workshop's clock is ahead of this one [ms], or null where it does not answer. */
  readonly ahead: () => Promise<number | null>
}

/** How the last visit went. */
export type Visit =
  | { readonly kind: 'been there' }
  | { readonly kind: 'out of reach' }
  | { readonly kind: 'refused'; readonly sentence: string }

/** So many events a letter: far below what the workshop takes. */
const BATCH = 400
/** Less than this is not told from the time a message takes, and from a clock told in whole seconds [ms]. */
const SAME_CLOCK = 1500

const failed = <T>(answer: Extract<Answer<T>, { ok: false }>): Visit =>
  answer.refusal.code === 'unreachable'
    ? { kind: 'out of reach' }
    : { kind: 'refused', sentence: answer.refusal.sentence }

/**
 * One visit to the workshop: how its clock stands, what is new there, and everything that it does not have yet. All of
 * it can be done again at any time, from any point at which it was broken off: the workshop keeps an event once.
 */
export const visit = async (
  trial: string,
  client: string,
  store: BurnStore,
  line: Line,
  now: () => number,
): Promise<Visit> => {
  let kept: KeptBurn = await store.load(trial)
  if (kept.burn.shift === null) {
    const ahead = await line.ahead()
    if (ahead === null) return { kind: 'out of reach' }
    await store.shift(trial, Math.abs(ahead) < SAME_CLOCK ? 0 : Math.round(ahead))
    kept = await store.load(trial)
  }
  const opened = await line.open(trial)
  if (!opened.ok) return failed(opened)
  const { document, revision } = opened.value
  if (document.name !== kept.burn.name || revision.text !== kept.burn.text)
    await store.knows(trial, { name: document.name, text: revision.text })
  const waiting = kept.noted.filter(({ sent }) => !sent)
  for (let from = 0; from < waiting.length; from += BATCH) {
    const batch = waiting.slice(from, from + BATCH)
    const answer = await line.logEvents({
      trial,
      client,
      at: new Date(now() + (kept.burn.shift ?? 0)).toISOString(),
      events: batch.map(({ id, at, body, replaces, withdrawn }) => ({
        id,
        at,
        body,
        ...(replaces === null ? {} : { replaces }),
        ...(withdrawn ? { withdrawn } : {}),
      })),
    })
    if (!answer.ok) return failed(answer)
    await store.sent(
      trial,
      batch.map(({ id }) => id),
    )
  }
  const news = await line.events(trial, kept.burn.sequence)
  if (!news.ok) return failed(news)
  if (news.value.length > 0)
    await store.hear(trial, news.value, Math.max(...news.value.map(({ sequence }) => sequence)))
  for (const photo of kept.photos) {
    const answer = await line.attach(photo)
    if (!answer.ok) return failed(answer)
    await store.dropPhoto(photo.id)
  }
  return { kind: 'been there' }
}
