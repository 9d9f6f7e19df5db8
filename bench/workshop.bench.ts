import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Answer } from '#store/answer.ts'
import { openWorkshop } from '#store/open.ts'
import type { Rows } from './row.ts'

const at = '2031-05-17T14:05:00Z'
const SAVES = 200

const value = async <T>(answer: Promise<Answer<T>>): Promise<T> => {
  const got = await answer
  if (got.ok) return got.value
  throw new Error(got.refusal.sentence)
}

/** In milliseconds, of runs in ascending order. */
const median = (times: readonly number[]): number =>
  times.toSorted((a, b) => a - b)[times.length >> 1] ?? Number.NaN

/** What the drive promises decides: every save is synced before it is acknowledged. */
export const rows: Rows = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'tinwright-bench-'))
  const file = join(folder, 'workshop')
  const text = readFileSync(new URL('../examples/greylag.stove.json', import.meta.url), 'utf8')
  try {
    const shop = await value(openWorkshop({ file }, { at, beginAs: 'bench' }))
    const act = (n: number) => ({ id: `step-${n}`, client: 'bench', at })
    const document = 'stove'
    const first = { id: document, kind: 'stove', name: 'Greylag', revision: 'r0', text, note: '' } as const
    await value(shop.create(act(0), first))
    const saves: number[] = []
    const edits: number[] = []
    for (let n = 1; n <= SAVES; n++) {
      const edited = `${text}${' '.repeat(n)}`
      let started = performance.now()
      const draft = { document, client: 'bench', at, number: n - 1, base: 'r0', text: edited, label: 'edit' }
      await value(shop.autosave(draft))
      edits.push(performance.now() - started)
      started = performance.now()
      const save = { document, base: `r${n - 1}`, revision: `r${n}`, text: edited, note: '' }
      await value(shop.save(act(n), save))
      saves.push(performance.now() - started)
    }
    await shop.close()
    const opens: number[] = []
    for (let n = 0; n < 11; n++) {
      const started = performance.now()
      const again = await value(openWorkshop({ file }, { at, beginAs: null }))
      await value(again.open(document))
      opens.push(performance.now() - started)
      await again.close()
    }
    return [
      { name: 'workshop: save a revision, synced', value: median(saves), unit: 'ms', bar: null },
      { name: 'workshop: autosave an edit, synced', value: median(edits), unit: 'ms', bar: null },
      {
        name: `workshop: open one of ${SAVES} revisions, checked`,
        value: median(opens),
        unit: 'ms',
        bar: null,
      },
    ]
  } finally {
    rmSync(folder, { recursive: true })
  }
}
