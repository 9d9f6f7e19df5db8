import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Act, Workshop } from '#store/workshop.ts'
import { act, fresh, value } from '../acts.ts'
import type { Rig } from './rig.ts'

interface Shown {
  readonly name: string
  readonly head: string
  readonly deleted: boolean
}

interface ModelStep {
  readonly document: string
  readonly before: Shown
  readonly after: Shown
  undone: boolean
}

/** The workshop as a few maps: what the database has to agree with after every move. */
interface Model {
  readonly documents: Map<string, Shown>
  readonly revisions: Map<string, string>
  readonly steps: Map<string, ModelStep[]>
}

type Word = 'create' | 'save' | 'stale save' | 'rename' | 'remove' | 'restore' | 'undo' | 'redo' | 'again'

const move = fc.record({
  word: fc.constantFrom<Word>(
    'create',
    'save',
    'save',
    'stale save',
    'rename',
    'remove',
    'restore',
    'undo',
    'undo',
    'redo',
    'again',
  ),
  client: fc.constantFrom('one', 'two'),
  pick: fc.nat(5),
  text: fc.string({ unit: 'grapheme', maxLength: 12 }).filter((text) => !text.includes('\0')),
})
interface Move {
  readonly word: Word
  readonly client: string
  readonly pick: number
  readonly text: string
}

const FIELDS = ['name', 'head', 'deleted'] as const

const put = (model: Model, client: string, document: string, after: Shown): true => {
  const before = model.documents.get(document) ?? { ...after, deleted: true }
  const steps = model.steps.get(client) ?? []
  model.steps.set(client, [...steps, { document, before, after, undone: false }])
  model.documents.set(document, after)
  return true
}

/** Takes back or does again, as the model sees it; false where that has to be refused. */
const shift = (model: Model, client: string, way: 'undo' | 'redo'): boolean => {
  const steps = model.steps.get(client) ?? []
  const standing = steps.findLastIndex(({ undone }) => !undone)
  const step = way === 'undo' ? steps[standing] : steps.find(({ undone }, n) => undone && n > standing)
  if (step === undefined) return false
  const [from, to] = way === 'undo' ? [step.after, step.before] : [step.before, step.after]
  const now = model.documents.get(step.document) as Shown
  const fields = FIELDS.filter((field) => from[field] !== to[field])
  if (fields.some((field) => now[field] !== from[field])) return false
  if (to.deleted && !from.deleted && now.head !== from.head) return false
  const changed = Object.fromEntries(fields.map((field) => [field, to[field]]))
  model.documents.set(step.document, { ...now, ...changed })
  step.undone = way === 'undo'
  return true
}

type Asked = (shop: Workshop) => Promise<{ readonly ok: boolean }>

/** What a move asks of the workshop, and whether the model says that it works. */
const ask = async (shop: Workshop, model: Model, { word, client, pick, text }: Move, step: Act) => {
  const ids = [...model.documents.keys()]
  const document = ids[pick % Math.max(1, ids.length)]
  if (word === 'undo' || word === 'redo') {
    const asked: Asked = (on) => on[word](step)
    return { asked, works: shift(model, client, word) }
  }
  if (word === 'create' || document === undefined) {
    const [id, revision, name] = [fresh('stove'), fresh('revision'), `stove ${pick}`]
    model.revisions.set(revision, text)
    const asked: Asked = (on) => on.create(step, { id, kind: 'stove', name, revision, text, note: '' })
    return { asked, works: put(model, client, id, { name, head: revision, deleted: false }) }
  }
  const now = model.documents.get(document) as Shown
  if (word === 'save' || word === 'stale save') {
    const revision = fresh('revision')
    const base = word === 'save' ? now.head : 'somewhere-else'
    const asked: Asked = (on) => on.save(step, { document, base, revision, text, note: '' })
    const works = word === 'save' && !now.deleted
    if (works) {
      model.revisions.set(revision, text)
      put(model, client, document, { ...now, head: revision })
    }
    return { asked, works }
  }
  const { version } = (await value(shop.open(document))).document
  if (word === 'rename') {
    const name = `name ${pick}`
    const asked: Asked = (on) => on.rename(step, document, version, name)
    return { asked, works: put(model, client, document, { ...now, name }) }
  }
  const deleted = word === 'remove'
  const asked: Asked = (on) => (deleted ? on.remove : on.restore)(step, document, version)
  return { asked, works: now.deleted !== deleted && put(model, client, document, { ...now, deleted }) }
}

const seen = async (shop: Workshop) =>
  new Map(
    (await value(shop.list({ deleted: true }))).map(({ id, name, head, deleted }) => [
      id,
      { name, head, deleted },
    ]),
  )

export const modelSuite = ({ workshop, runs }: Rig) =>
  describe('any sequence of moves by two windows', () => {
    it('leaves the workshop as a simple model says, with every revision that was ever written', async () => {
      const shop = await workshop()
      await fc.assert(
        fc.asyncProperty(fc.array(move, { maxLength: 30 }), async (moves) => {
          const model: Model = { documents: new Map(), revisions: new Map(), steps: new Map() }
          const before = new Set((await seen(shop)).keys())
          // Windows of their own in every run, so that one workshop serves them all.
          const [run, windows] = [fresh('run'), new Map<string, Asked>()]
          for (const one of moves) {
            const client = `${run}-${one.client}`
            const last = windows.get(client)
            if (one.word === 'again') {
              // A lost answer: the very same step once more changes nothing.
              if (last !== undefined) expect((await last(shop)).ok).toBe(true)
            } else {
              const { asked, works } = await ask(shop, model, { ...one, client }, act(client))
              expect((await asked(shop)).ok, one.word).toBe(works)
              if (works) windows.set(client, asked)
            }
            const now = [...(await seen(shop))].filter(([id]) => !before.has(id))
            expect(new Map(now)).toEqual(model.documents)
          }
          for (const [id, text] of model.revisions) expect((await value(shop.revision(id))).text).toBe(text)
        }),
        { numRuns: runs },
      )
      expect(await value(shop.verify())).toEqual([])
    })
  })
