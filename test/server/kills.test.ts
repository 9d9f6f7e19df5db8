import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { randomStream } from '#basis/random.ts'
import type { CallName, RequestOf, ValueOf } from '#wire/calls.ts'
import { AT, open, value } from '../store/acts.ts'
import { clientOf } from './rig.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tinwright-server-kills-'))
})
const begun = new Set<ChildProcess>()
afterAll(() => {
  // Where a test failed in the middle, its servers are still there.
  for (const child of begun) child.kill('SIGKILL')
  // A drive that many write to takes its time.
  rmSync(folder, { recursive: true, maxRetries: 10 })
})

interface Running {
  readonly child: ChildProcess
  readonly address: string
  readonly port: number
}

/** Words after `node` that start a server on a workshop at a port. */
type Program = (file: string, port: number) => readonly string[]

const path = (name: string): string => fileURLToPath(new URL(name, import.meta.url))

/** The very program that a maker starts. */
const makers: Program = (file, port) => [
  path('../../src/cli/main.ts'),
  ...['bench', '--no-open', '--json', '--port', String(port), '--workshop', file],
]
const serverAlone: Program = (file, port) => [path('./serving.ts'), file, String(port)]

/** Starts one, until it has said where it is. */
const start = async (program: Program, file: string, port: number): Promise<Running> => {
  const child = spawn(process.execPath, program(file, port), {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, NODE_COMPILE_CACHE: join(folder, 'compiled') },
  })
  begun.add(child)
  child.once('close', () => begun.delete(child))
  let out = ''
  let err = ''
  child.stderr.on('data', (data) => {
    err += data
  })
  await new Promise<void>((resolve, reject) => {
    child.stdout.on('data', (data) => {
      out += data
      if (out.includes('\n')) resolve()
    })
    child.on('close', () => reject(new Error(`It ended by itself: ${err}`)))
  })
  return { child, ...(JSON.parse(out) as { readonly address: string; readonly port: number }) }
}

/** What Node compiled once it keeps only for a program that ends by itself. */
const warm = async (program: Program): Promise<void> => {
  const { child } = await start(program, join(folder, 'warm'), 0)
  child.kill('SIGTERM')
  await once(child, 'close')
}

/** A few pages of the database each, so that a kill can hit between them. */
const text = (word: string): string => `${word}\n${word.repeat(700)}`

/** Edits without end through a server that is killed so many times in the middle; then all of it has to be there. */
const endure = async (program: Program, name: string, wantedKills: number, seed: number): Promise<void> => {
  const file = join(folder, name)
  const random = randomStream(seed)
  let running = await start(program, file, 0)
  let kills = 0
  let acknowledged = 0
  let blow = 3

  /** As a page does: what was not answered is asked again, word for word, when the server is back. */
  const insist = async <N extends CallName>(call: N, request: RequestOf<N>): Promise<ValueOf<N>> => {
    for (;;) {
      const answer = await clientOf({ bench: running as never }).call(call, request)
      if (answer.ok) {
        acknowledged++
        return answer.value
      }
      expect(answer.refusal.code).toBe('unreachable')
      if (running.child.exitCode === null && running.child.signalCode === null)
        await once(running.child, 'close')
      running = await start(program, file, running.port)
      blow = acknowledged + 1 + Math.floor(random.uniform() * 10)
    }
  }
  /** Strikes while what comes next is on its way. */
  const strikeSoon = (): void => {
    if (kills >= wantedKills || acknowledged < blow) return
    kills++
    blow = Infinity
    const { child } = running
    setTimeout(() => child.kill('SIGKILL'), random.uniform() * 6)
  }

  const document = 'stove-of-kills'
  const client = 'window'
  let base = 'revision-0'
  let number = 0
  const revisions = [base]
  const wanted = {
    id: document,
    kind: 'stove',
    name: 'Redshank',
    revision: base,
    text: text(base),
    note: '',
  } as const
  await insist('create', { act: { id: 'step-0', client, at: AT }, wanted })
  for (let n = 1; kills < wantedKills || blow === Infinity; n++) {
    strikeSoon()
    const word = `edit-${n}`
    const draft = await insist('autosave', {
      ...{ document, client, at: AT, number, base, text: text(word), label: word },
    })
    expect(draft.text).toBe(text(word))
    number = draft.number
    const seen = await insist('draft', { document, client })
    expect(seen?.text).toBe(text(word))
    if (n % 3 !== 0) continue
    const revision = `revision-${n}`
    const save = { document, revision, base, text: text(word), note: word, draft: { number } }
    await insist('save', { act: { id: `step-${n}`, client, at: AT }, wanted: save })
    revisions.push(revision)
    base = revision
    number = (await insist('draft', { document, client }))?.number ?? Number.NaN
  }
  expect(kills).toBe(wantedKills)
  expect(await insist('verify', {})).toEqual([])
  running.child.kill('SIGTERM')
  const [code] = await once(running.child, 'close')
  expect(code).toBe(0)
  const shop = await open({ file })
  expect((await value(shop.history(document))).map(({ id }) => id)).toEqual(revisions)
  await shop.close()
}

const OF_THE_PROGRAM = 8
const OF_THE_SERVER = 192
/** Servers at once, each with a workshop of its own: half of the time is starting them. */
const LANES = 4

describe(`a server that is killed in the middle of edits and started again, ${OF_THE_PROGRAM + OF_THE_SERVER} times`, () => {
  it(`has every acknowledged one, each once: the program of a maker, ${OF_THE_PROGRAM} times`, async () => {
    await warm(makers)
    await endure(makers, 'whole', OF_THE_PROGRAM, 20310518)
  }, 900_000)

  it(`has every acknowledged one, each once: the server alone, ${OF_THE_SERVER} times`, async () => {
    await warm(serverAlone)
    const lanes = Array.from({ length: LANES }, (_, n) =>
      endure(serverAlone, `lane-${n}`, OF_THE_SERVER / LANES, 20310519 + n),
    )
    await Promise.all(lanes)
  }, 900_000)
})
