import { mkdtempSync, rmSync } from 'node:fs'
import { type IncomingHttpHeaders, request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Assets, assetOf } from '#server/asset/assets.ts'
import { type BenchOptions, openBench, type RunningBench } from '#server/openBench.ts'
import type { Workshop } from '#store/workshop.ts'
import type { NoAnswer } from '#wire/answer.ts'
import { makeClient, makeUploader } from '#wire/client.ts'
import { FRAME_TYPE } from '#wire/frame.ts'
import { callPath, uploadPath } from '#wire/routes.ts'
import { open, value } from '../store/acts.ts'

/** A second address of this machine, that stands for one in the house. */
export const HOUSE = process.platform === 'darwin' ? '::1' : '127.0.0.2'
const inAddress = HOUSE.includes(':') ? `[${HOUSE}]` : HOUSE

export interface Said {
  readonly status: number
  readonly headers: IncomingHttpHeaders
  readonly text: string
}

export interface Sent {
  readonly method?: string
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: string | Uint8Array
}

/** What a browser or anybody else can send; nothing is made right on the way, as `fetch` would. */
const send = (host: string, port: number, path: string, sent: Sent = {}): Promise<Said> =>
  new Promise((resolve, reject) => {
    const { method = 'GET', headers = {}, body } = sent
    const asked = request({ host, port, path, method, headers, agent: false }, (response) => {
      let text = ''
      response.setEncoding('utf8')
      response.on('data', (chunk) => {
        text += chunk
      })
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }))
      response.on('error', reject)
    })
    // A server that has said enough hangs up while we still send.
    asked.on('error', reject)
    asked.end(body)
  })

export const JSON_TYPE = { 'content-type': 'application/json' }

export const PAGE = '<!doctype html><link rel="icon" href="data:,"><title>The bench</title>'
const encoded = (text: string): Uint8Array => new TextEncoder().encode(text)
const SCRIPT = `${'const row = 12\n'.repeat(400)}`

const assets: Assets = new Map(
  Object.entries({
    '/index.html': PAGE,
    '/sw.js': 'self.addEventListener("fetch", () => {})',
    '/assets/bench-1a2b3c4d.js': SCRIPT,
  }).map(([path, text]) => [path, assetOf(path, encoded(text))]),
)

export interface Rig {
  readonly bench: RunningBench
  readonly workshop: Workshop
  readonly file: string
  /** Lines that the terminal shows. */
  readonly lines: string[]
  /** What the list of devices says. */
  readonly devices: { text: string | null }
  /** Time passes [ms] */
  readonly pass: (time: number) => void
  /** From this machine. */
  readonly here: (path: string, sent?: Sent) => Promise<Said>
  /** From the house. */
  readonly there: (path: string, sent?: Sent) => Promise<Said>
  /** Ends the bench and opens another on the same workshop at the same port. */
  readonly reopen: (own: Partial<BenchOptions>) => Promise<void>
  readonly close: () => Promise<void>
}

export const START = Date.parse('2031-05-17T14:05:00Z')

/** A bench on a workshop of its own, in a folder that goes with it. */
export const openRig = async (own: Partial<BenchOptions> = {}): Promise<Rig> => {
  const folder = mkdtempSync(join(tmpdir(), 'tinwright-server-'))
  const file = join(folder, 'workshop.tinwright')
  const workshop = await open({ file })
  const lines: string[] = []
  const devices: { text: string | null } = { text: null }
  let time = START
  const options: BenchOptions = {
    workshop,
    assets,
    deviceFile: {
      read: () => devices.text,
      write: (text) => {
        devices.text = text
      },
    },
    port: 0,
    house: { addresses: () => [HOUSE], certificate: null },
    version: '0.1.0',
    write: (line) => lines.push(line),
    clock: () => time,
    now: () => new Date(time).toISOString(),
    ...own,
  }
  let bench = await value(openBench(options))
  const { port } = bench
  return {
    get bench() {
      return bench
    },
    workshop,
    file,
    lines,
    devices,
    pass: (passed) => {
      time += passed
    },
    here: (path, sent) => send('127.0.0.1', port, path, sent),
    there: (path, sent) => send(HOUSE, port, path, sent),
    reopen: async (other) => {
      await bench.close()
      bench = await value(openBench({ ...options, port, ...other }))
    },
    close: async () => {
      await bench.close()
      await workshop.close()
      rmSync(folder, { recursive: true })
    },
  }
}

export const houseOrigin = ({ bench }: Rig): string => `http://${inAddress}:${bench.port}`

/** Posts JSON. */
export const post = (body: unknown, headers: Readonly<Record<string, string>> = {}): Sent => ({
  method: 'POST',
  headers: { ...JSON_TYPE, ...headers },
  body: JSON.stringify(body),
})

export const noAnswer = ({ text }: Said): NoAnswer => {
  const answer = JSON.parse(text) as NoAnswer | { readonly ok: true }
  if (answer.ok) throw new Error(`was not refused: ${text}`)
  return answer
}

/** The client of the pages, over `fetch`. */
export const clientOf = ({ bench }: Pick<Rig, 'bench'>) =>
  makeClient(async (name, body) => {
    const response = await fetch(new URL(callPath(name), bench.address), {
      method: 'POST',
      headers: JSON_TYPE,
      body: JSON.stringify(body),
    })
    return response.json()
  })

export const uploaderOf = ({ bench }: Pick<Rig, 'bench'>) =>
  makeUploader<Uint8Array<ArrayBuffer>>(
    async (name, head, bytes) => {
      const response = await fetch(new URL(uploadPath(name), bench.address), {
        method: 'POST',
        headers: { 'content-type': FRAME_TYPE },
        body: new Blob([head, bytes]),
      })
      return response.json()
    },
    (bytes) => bytes.length,
  )
