import type { NamedText } from '#wire/files.ts'
import { type Answer, refuse } from './answer.ts'
import { doStep } from './documents/journal.ts'
import type { Engine } from './engine/engine.ts'
import { noArrivals } from './files/arrivals.ts'
import { bringFile } from './files/importFile.ts'
import type { Act, DocumentHead } from './workshop.ts'

/** A file of the demo, and what it does not say itself. */
export interface DemoFile extends NamedText {
  /** Of a variant: the file before it that it was made from. */
  readonly from?: string
  /** What was changed and why. */
  readonly note?: string
}

export interface DemoReport {
  /** Laid in now; none in a workshop that has or had anything in it. */
  readonly added: readonly DocumentHead[]
}

/** Lists go by when a thing was made: so that they keep the order of the demo. */
const later = (at: string, by: number): string => new Date(Date.parse(at) + by).toISOString()

/** Lays the demo in, once, and only where nothing was ever made: a maker's own workshop stays as it is. */
export const loadDemo = (engine: Engine, act: Act, files: readonly DemoFile[]): Promise<Answer<DemoReport>> =>
  doStep(
    engine,
    act,
    ['demo', files],
    async (step) => {
      const { trx } = step
      const arrivals = noArrivals()
      const { demo } = await trx.selectFrom('workshop').select('demo').executeTakeFirstOrThrow()
      const anything =
        (await trx.selectFrom('documents').select('id').limit(1).executeTakeFirst()) ??
        (await trx.selectFrom('drafts').select('document').limit(1).executeTakeFirst())
      if (demo === null && anything === undefined) {
        const heads = new Map<string, string>()
        for (const [n, { from, note, ...file }] of files.entries()) {
          const parent = from === undefined ? undefined : heads.get(from)
          if (from !== undefined && parent === undefined)
            refuse('bad input', `The demo is not whole: ${file.name} comes before ${from}, or without it.`)
          await bringFile({ ...step, act: { ...act, at: later(act.at, n) } }, arrivals, file, {
            ...(note === undefined ? {} : { note }),
            ...(parent === undefined ? {} : { parents: [parent] }),
          })
          const last = arrivals.added.at(-1)
          if (last !== undefined) heads.set(file.name, last.head)
        }
        await trx.updateTable('workshop').set({ demo: act.at }).execute()
      }
      return { label: 'lay in the demo', value: { added: arrivals.added } }
    },
    async () => ({ added: [] }),
  )
