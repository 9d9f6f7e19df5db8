import type { BurnStore, KeptBurn, KeptPhoto, KnownBurn, Noted } from '#web/atStove/burnStore.ts'
import { moved, unknownBurn } from '#web/atStove/burnStore.ts'
import type { Line } from '#web/atStove/courier.ts'
import { type Answer, given, refused } from '#wire/answer.ts'
import type { TrialEvent } from '#wire/trials.ts'

/** A phone's storage that lives as long as the test. */
export const memoryStore = (): BurnStore => {
  const burns = new Map<string, KnownBurn>()
  const noted = new Map<string, Noted>()
  const heard = new Map<string, TrialEvent>()
  const photos = new Map<string, KeptPhoto>()
  const of = <T extends { readonly trial: string }>(all: Map<string, T>, trial: string): readonly T[] =>
    [...all.values()].filter((one) => one.trial === trial)
  const burn = (trial: string): KnownBurn => burns.get(trial) ?? unknownBurn(trial)
  return {
    load: async (trial): Promise<KeptBurn> => ({
      burn: burn(trial),
      noted: of(noted, trial),
      heard: of(heard, trial),
      photos: of(photos, trial),
    }),
    note: async (one) => {
      const { shift } = burn(one.trial)
      noted.set(one.id, one.ownClock && shift !== null ? moved(one, shift) : one)
    },
    knows: async (trial, change) => void burns.set(trial, { ...burn(trial), ...change }),
    sent: async (_, ids) => {
      for (const id of ids) noted.set(id, { ...(noted.get(id) as Noted), sent: true })
    },
    hear: async (trial, events, sequence) => {
      for (const event of events) heard.set(event.id, event)
      burns.set(trial, { ...burn(trial), sequence })
    },
    shift: async (trial, by) => {
      if (burn(trial).shift !== null) return
      for (const one of of(noted, trial)) if (one.ownClock && !one.sent) noted.set(one.id, moved(one, by))
      burns.set(trial, { ...burn(trial), shift: by })
    },
    keepPhoto: async (photo) => void photos.set(photo.id, photo),
    dropPhoto: async (id) => void photos.delete(id),
  }
}

export interface PretendWorkshop {
  readonly line: (over?: { readonly ahead?: number }) => Line
  readonly events: readonly TrialEvent[]
  /** Out of reach, or answers get lost after the workshop has done its part. */
  fault: 'none' | 'out of reach' | 'answers lost'
}

/** What the workshop does with events (test/store has the true one), in memory. */
export const pretendWorkshop = (text = ''): PretendWorkshop => {
  const events: TrialEvent[] = []
  const lost = (): Answer<never> => refused('unreachable', 'The bench does not answer.')
  const over = <T>(work: () => Answer<T>): Promise<Answer<T>> => {
    if (workshop.fault === 'out of reach') return Promise.resolve(lost())
    const answer = work()
    return Promise.resolve(workshop.fault === 'answers lost' ? lost() : answer)
  }
  const workshop: PretendWorkshop = {
    events,
    fault: 'none',
    line: ({ ahead = 0 } = {}) => ({
      open: (document) =>
        workshop.fault === 'answers lost'
          ? Promise.resolve(given(opened(document, text)))
          : over(() => given(opened(document, text))),
      logEvents: (batch) =>
        over(() => {
          for (const event of batch.events) {
            const known = events.find(({ id }) => id === event.id)
            if (known !== undefined) {
              if (known.body !== event.body) return refused('conflict', `${event.id} says something else`)
              continue
            }
            events.push({
              ...event,
              replaces: event.replaces ?? null,
              withdrawn: event.withdrawn ?? false,
              trial: batch.trial,
              client: batch.client,
              created: batch.at,
              sequence: events.length + 1,
            })
          }
          return given([])
        }),
      events: (_, since) => over(() => given(events.filter(({ sequence }) => sequence > since))),
      attach: () => over(() => refused('broken', 'no photos here')),
      ahead: async () => (workshop.fault === 'out of reach' ? null : ahead),
    }),
  }
  return workshop
}

const opened = (id: string, text: string) => ({
  document: {
    id,
    kind: 'trial' as const,
    name: 'Morning burn',
    head: 'r1',
    deleted: false,
    version: 1,
    aboutDocument: 'stove',
    aboutRevision: 'r0',
    created: '2031-05-17T08:00:00Z',
    touched: 1,
  },
  revision: {
    id: 'r1',
    document: id,
    parents: [],
    note: '',
    hash: '',
    created: '2031-05-17T08:00:00Z',
    text,
  },
})
