import { describe, expect, it } from 'vitest'
import type { Stove } from '#stove/model.ts'
import { type Hire, openHand } from '#web/plan/worker/hand.ts'
import type { Request, Word } from '#web/plan/worker/job.ts'

const wish = { stove: {} as Stove, arrangement: 'whole' } as const

/** A labourer that does only what a test tells it. */
const yard = () => {
  const workers: {
    readonly posted: Request[]
    ended: boolean
    word: (word: Word) => void
    broke: (why: string) => void
  }[] = []
  const hire: Hire = (word, broke) => {
    const worker = { posted: [] as Request[], ended: false, word, broke }
    workers.push(worker)
    return {
      post: (request) => void worker.posted.push(request),
      end: () => {
        worker.ended = true
      },
    }
  }
  return { hire, workers }
}

describe('the hand that leads a worker', () => {
  it('gives out one job at a time, in the order they came', async () => {
    const { hire, workers } = yard()
    const hand = openHand(hire)
    const told: string[] = []
    const first = hand.run('space', wish, { tell: (doing, share) => told.push(`${doing} ${share}`) })
    const second = hand.run('drawn', { ...wish, dark: false })
    const [worker] = workers
    expect(worker?.posted.map(({ name }) => name)).toEqual(['space'])
    worker?.word({ id: 1, kind: 'doing', doing: 'sawing', share: 0.5 })
    worker?.word({ id: 1, kind: 'done', done: 'a scene' })
    expect(worker?.posted.map(({ name }) => name)).toEqual(['space', 'drawn'])
    worker?.word({ id: 2, kind: 'done', done: '<svg/>' })
    expect(await first).toEqual({ kind: 'done', done: 'a scene' })
    expect(await second).toEqual({ kind: 'done', done: '<svg/>' })
    expect(told).toEqual(['sawing 0.5'])
    expect(workers).toHaveLength(1)
  })

  it('ends the worker of a job that is given up in the middle, and goes on with another', async () => {
    const { hire, workers } = yard()
    const hand = openHand(hire)
    const abort = new AbortController()
    const first = hand.run('space', wish, { signal: abort.signal })
    const second = hand.run('space', wish)
    abort.abort()
    expect(await first).toEqual({ kind: 'given up' })
    expect(workers.map(({ ended }) => ended)).toEqual([true, false])
    workers[1]?.word({ id: 2, kind: 'done', done: 'a scene' })
    expect(await second).toEqual({ kind: 'done', done: 'a scene' })
  })

  it('never begins what is given up before its turn', async () => {
    const { hire, workers } = yard()
    const hand = openHand(hire)
    const abort = new AbortController()
    const first = hand.run('space', wish)
    const second = hand.run('space', wish, { signal: abort.signal })
    abort.abort()
    expect(await second).toEqual({ kind: 'given up' })
    workers[0]?.word({ id: 1, kind: 'done', done: 1 })
    await first
    expect(workers[0]?.posted).toHaveLength(1)
    expect(workers[0]?.ended).toBe(false)
  })

  it('says problems as sentences, and hires anew after one broke', async () => {
    const { hire, workers } = yard()
    const hand = openHand(hire)
    const first = hand.run('space', wish)
    workers[0]?.word({
      id: 1,
      kind: 'refused',
      problems: [{ code: 'x', field: 'parts', value: '', allowed: 'one part', fix: 'Add a part.' }],
    })
    expect(await first).toMatchObject({
      kind: 'failed',
      sentence: 'parts is missing; allowed is one part. Add a part.',
    })
    const second = hand.run('space', wish)
    workers[0]?.broke('out of memory')
    expect(await second).toMatchObject({ kind: 'failed', sentence: 'out of memory' })
    void hand.run('space', wish)
    expect(workers).toHaveLength(2)
  })
})
