import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { randomStream } from '#basis/random.ts'
import { open, value } from './acts.ts'

const saver = fileURLToPath(new URL('./saver.ts', import.meta.url))

let folder: string
/** What Node compiled once; a killed program leaves none behind, so one that ends by itself fills it. */
let cache: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tinwright-kills-'))
  cache = join(folder, 'compiled')
})
// A drive that many write to takes its time.
afterAll(() => rmSync(folder, { recursive: true }), 120_000)

/** How many saves a killed program was told of before the blow falls, and then how long it goes on [ms]. */
interface Blow {
  readonly after: number
  readonly wait: number
}

interface Killed {
  readonly client: string
  readonly said: readonly string[]
}

/** Runs a program that saves without end, and kills it in the middle. What it said by then was acknowledged. */
const killOne = async (file: string, client: string, { after, wait }: Blow): Promise<Killed> => {
  const child = spawn(process.execPath, [saver, file, client], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, NODE_COMPILE_CACHE: cache },
  })
  let out = ''
  let err = ''
  let struck = false
  child.stderr.on('data', (data) => {
    err += data
  })
  child.stdout.on('data', (data) => {
    out += data
    if (struck || out.split('\n').length <= after) return
    struck = true
    setTimeout(() => child.kill('SIGKILL'), wait)
  })
  const [, signal] = await once(child, 'close')
  if (signal !== 'SIGKILL') throw new Error(`${client} ended by itself: ${err}`)
  // A line that the blow cut was not read by anybody.
  return { client, said: out.slice(0, out.lastIndexOf('\n')).split('\n') }
}

const KILLS = 200
/** Programs at once, each with a workshop of its own: half of the time is starting them. */
const LANES = 4

const isWhole = (text: string, word: string): boolean => text === `${word}\n${word.repeat(700)}`

describe(`${KILLS} kills in the middle of saves`, () => {
  it('lose nothing that was acknowledged, and leave a workshop that opens whole', async () => {
    const random = randomStream(20310517)
    const blows = Array.from({ length: KILLS }, () => ({
      after: 1 + Math.floor(random.uniform() * 12),
      wait: random.uniform() * 8,
    }))
    const warm = join(folder, 'warm')
    await (await open({ file: warm })).close()
    spawnSync(process.execPath, [saver, warm, 'warm', '1'], {
      env: { ...process.env, NODE_COMPILE_CACHE: cache },
    })
    const lane = async (n: number): Promise<number> => {
      const file = join(folder, `workshop-${n}`)
      await (await open({ file })).close()
      const killed: Killed[] = []
      for (let kill = n; kill < KILLS; kill += LANES) {
        const one = await killOne(file, `client-${kill}`, blows[kill] as Blow)
        killed.push(one)
        // Opened at once, as a maker would, over the log that the dead program left.
        const shop = await open({ file })
        const last = one.said.at(-1)?.split(' ')[1] ?? ''
        const history = await value(shop.history(`${one.client}-stove`))
        const words = one.said.filter((line) => line.startsWith('revision')).map((line) => line.split(' ')[1])
        expect(history.map(({ id }) => id).slice(0, words.length)).toEqual(words)
        // One more may have been kept without anybody being told.
        expect(history.length - words.length).toBeLessThanOrEqual(1)
        if (one.said.some((line) => line.startsWith('draft'))) {
          const draft = await value(shop.draft(`${one.client}-stove`, one.client))
          const place = (word: string): number => Number(word.split('-').at(-1))
          const word = draft?.text.split('\n')[0] ?? ''
          expect(isWhole(draft?.text ?? '', word)).toBe(true)
          expect(place(word) - place(last)).toBeGreaterThanOrEqual(0)
          expect(place(word) - place(last)).toBeLessThanOrEqual(1)
        }
        await shop.close()
      }
      const shop = await open({ file })
      expect(await value(shop.verify())).toEqual([])
      let saves = 0
      for (const { said } of killed) {
        for (const line of said) {
          const [word, revision = ''] = line.split(' ')
          if (word !== 'revision') continue
          expect(isWhole((await value(shop.revision(revision))).text, revision)).toBe(true)
          saves++
        }
      }
      await shop.close()
      return saves
    }
    const saves = await Promise.all(Array.from({ length: LANES }, (_, n) => lane(n)))
    expect(saves.reduce((sum, n) => sum + n, 0)).toBeGreaterThan(KILLS)
  }, 900_000)
})

describe('two programs at one workshop', () => {
  it('lose nothing of each other, and neither is kept waiting for ever', async () => {
    const file = join(folder, 'both')
    await (await open({ file })).close()
    const both = await Promise.all(
      ['one', 'two'].map((client) => killOne(file, client, { after: 60, wait: 0 })),
    )
    const shop = await open({ file })
    for (const { client, said } of both) {
      const words = said.filter((line) => line.startsWith('revision')).map((line) => line.split(' ')[1])
      expect(words.length).toBeGreaterThan(25)
      const history = (await value(shop.history(`${client}-stove`))).map(({ id }) => id)
      expect(history.slice(0, words.length)).toEqual(words)
    }
    expect(await value(shop.verify())).toEqual([])
    await shop.close()
  })
})
