import type { NamedText } from '#wire/files.ts'
import type { Answer } from './answer.ts'
import { doStep } from './documents/journal.ts'
import type { Engine } from './engine/engine.ts'
import { bringFile, noArrivals } from './files/importFile.ts'
import type { Act, DocumentHead } from './workshop.ts'

export interface DemoReport {
  /** Laid in now; none in a workshop that has or had anything in it. */
  readonly added: readonly DocumentHead[]
}

/** Lays the demo in, once, and only where nothing was ever made: a maker's own workshop stays as it is. */
export const loadDemo = (
  engine: Engine,
  act: Act,
  files: readonly NamedText[],
): Promise<Answer<DemoReport>> =>
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
        for (const file of files) await bringFile(step, arrivals, file)
        await trx.updateTable('workshop').set({ demo: act.at }).execute()
      }
      return { label: 'lay in the demo', value: { added: arrivals.added } }
    },
    async () => ({ added: [] }),
  )
