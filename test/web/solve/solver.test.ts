import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { usualConditions } from '#compose/conditions.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { FromWorker, ToWorker } from '#web/solve/ask.ts'
import { createSolver, type Port } from '#web/solve/client.ts'
import { createLatest } from '#web/solve/latest.ts'
import { frontAt, stepAt, stepHalfway } from '#web/solve/stepAt.ts'
import { createWork } from '#web/solve/work.ts'

const heron = JSON.parse(
  readFileSync(new URL('../../../examples/heron.stove.json', import.meta.url), 'utf8'),
) as StoveFile

/** A worker in this thread. Its messages go through a copy, as they do in a browser. */
const portHere = (): Port & { readonly break: () => void } => {
  let hear: (message: FromWorker) => void = () => undefined
  let broken: (why: string) => void = () => undefined
  let ended = false
  let now = 0
  const work = createWork(
    (message) => {
      const copy = structuredClone(message)
      queueMicrotask(() => {
        if (!ended) hear(copy)
      })
    },
    // Every look at the clock takes ten milliseconds: a slice is three sets.
    () => (now += 10),
    () => new Promise((go) => setImmediate(go)),
  )
  return {
    post: (message: ToWorker) => {
      const copy = structuredClone(message)
      setImmediate(() => void work(copy))
    },
    listen: (onMessage, onBroken) => {
      hear = onMessage
      broken = onBroken
    },
    end: () => {
      ended = true
    },
    break: () => broken('out of memory'),
  }
}

describe('solver', () => {
  test('answers every kind of ask with what the pure rooms say', async () => {
    const solver = createSolver(portHere)
    const steady = await solver.steady(heron, usualConditions)
    expect(steady.ok && steady.value.kind).toBe('prediction')
    const burn = await solver.burn(heron, usualConditions)
    expect(burn.ok && burn.value.kind === 'burn' && burn.value.report.bands).toBeNull()
    const turndown = await solver.turndown(heron, usualConditions)
    expect(turndown).toEqual({ ok: true, value: null })
  })

  test('says in a sentence what will not do', async () => {
    const answer = await createSolver(portHere).steady(heron, { ...usualConditions, fuel: 'coal' })
    expect(answer.ok).toBe(false)
    if (!answer.ok) expect(answer.sentence).toContain('coal')
  })

  test('draws bands in slices with progress', async () => {
    const told: number[] = []
    const bands = await createSolver(portHere).bands(heron, usualConditions, {
      samples: 8,
      onProgress: (done) => told.push(done),
    })
    expect(bands.ok && bands.value?.samples).toBe(8)
    expect(told.length).toBeGreaterThan(1)
    expect(told).toEqual([...told].sort((a, b) => a - b))
  })

  test('stops drawing bands when nobody wants them any more', async () => {
    const stop = new AbortController()
    let heard = 0
    const asked = createSolver(portHere).bands(heron, usualConditions, {
      samples: 200,
      signal: stop.signal,
      onProgress: () => {
        heard++
        stop.abort(new Error('changed'))
      },
    })
    await expect(asked).rejects.toThrow('changed')
    expect(heard).toBe(1)
  })

  test('looks through one burn without burning it anew', async () => {
    const solver = createSolver(portHere)
    const first = await solver.live(heron, usualConditions, 1, null)
    if (!first.ok || first.value.kind !== 'burn') throw new Error('Heron burns')
    expect(first.value.moment.frontPosition).toBeGreaterThanOrEqual(0.5)
    const { steps } = first.value.burn
    const late = (steps.at(-1)?.time ?? 0) - 1
    const second = await solver.live(heron, usualConditions, 1, late)
    if (!second.ok || second.value.kind !== 'burn') throw new Error('Heron burns')
    expect(second.value.burn.steps).toEqual(steps)
    expect(second.value.step).toBe(stepAt(steps, late))
  })

  test('begins a new worker after one broke, and says so to whoever waited', async () => {
    const opened: ReturnType<typeof portHere>[] = []
    const solver = createSolver(() => {
      const port = portHere()
      opened.push(port)
      return port
    })
    const asked = solver.burn(heron, usualConditions)
    opened[0]?.break()
    const answer = await asked
    expect(answer).toMatchObject({ ok: false })
    if (!answer.ok) expect(answer.sentence).toMatch(/begins anew .*out of memory/)
    expect((await solver.steady(heron, usualConditions)).ok).toBe(true)
    expect(opened).toHaveLength(2)
  })
})

test('of many questions that come while one is answered, only the last is asked next', async () => {
  const asked: number[] = []
  const answered: number[] = []
  const gates: (() => void)[] = []
  const ask = createLatest<number, number>(
    (question) => {
      asked.push(question)
      return new Promise((go) => gates.push(() => go(question)))
    },
    (answer) => answered.push(answer),
  )
  for (const question of [1, 2, 3, 4]) ask(question)
  expect(asked).toEqual([1])
  gates[0]?.()
  await new Promise((go) => setImmediate(go))
  expect(asked).toEqual([1, 4])
  gates[1]?.()
  await new Promise((go) => setImmediate(go))
  expect(answered).toEqual([1, 4])
})

describe('the step at a time', () => {
  const steps = [
    { time: 0, duration: 10, phase: 'lighting', frontPosition: 0 },
    { time: 10, duration: 20, phase: 'wood gas', frontPosition: 0.2 },
    { time: 30, duration: 20, phase: 'wood gas', frontPosition: 0.6 },
    { time: 50, duration: 50, phase: 'char', frontPosition: 1 },
  ]
  test('holds until the next begins', () => {
    expect([-1, 0, 9.9, 10, 49, 50, 99, 1000].map((at) => stepAt(steps, at))).toEqual([
      0, 0, 0, 1, 2, 3, 3, 3,
    ])
  })
  test('the front moves evenly through a step, and stays at the floor', () => {
    expect(frontAt(steps, 20)).toBeCloseTo(0.4, 12)
    expect(frontAt(steps, 40)).toBeCloseTo(0.8, 12)
    expect(frontAt(steps, 70)).toBe(1)
  })
  test('half way is where the front has got there, or where it went out before', () => {
    expect(stepHalfway(steps)).toBe(2)
    expect(stepHalfway(steps.slice(0, 2))).toBe(1)
  })
})
