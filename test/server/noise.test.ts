import { connect } from 'node:net'
import * as fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CALLS } from '#wire/calls.ts'
import { act, newStove, value } from '../store/acts.ts'
import { openRig, PAGE, post, type Rig } from './rig.ts'

let rig: Rig
beforeAll(async () => {
  rig = await openRig()
  await value(rig.workshop.create(act(), newStove()))
})
afterAll(() => rig.close())

/** Sends bytes as they are, and gives all that comes back before the line is cut. */
const raw = (text: string): Promise<string> =>
  new Promise((resolve) => {
    let got = ''
    const socket = connect(rig.bench.port, '127.0.0.1', () => socket.end(text, 'latin1'))
    socket.setEncoding('utf8')
    socket.on('data', (data) => {
      got += data
    })
    socket.on('error', () => undefined)
    socket.on('close', () => resolve(got))
  })

const calls = Object.keys(CALLS)
const piece = fc.oneof(
  fc.constantFrom(
    '..',
    '.',
    '%2e%2e',
    '%2f',
    '\\',
    '%5c',
    '%00',
    'api',
    'upload',
    'assets',
    '',
    '%',
    '%zz',
    ...calls,
  ),
  fc.string({ unit: 'binary-ascii', maxLength: 12 }),
)
const target = fc
  .array(piece, { maxLength: 6 })
  .map((pieces) => `/${pieces.join('/')}`.replace(/[\s\p{Cc}]/gu, '+'))
const method = fc.constantFrom('GET', 'POST', 'HEAD', 'PUT', 'OPTIONS', 'TRACE', 'PATCH', 'PROPFIND')
const field = fc.tuple(
  fc.constantFrom(
    'Origin',
    'Cookie',
    'Content-Type',
    'Sec-Fetch-Site',
    'If-None-Match',
    'Last-Event-ID',
    'Accept-Encoding',
    'Range',
    'Upgrade',
  ),
  fc.oneof(
    fc.constantFrom('application/json', 'same-origin', 'gzip', 'null', '"', 'bytes=0-1', 'websocket', '0'),
    fc.string({ unit: 'binary-ascii', maxLength: 20 }).map((text) => text.replace(/[^\x20-\x7e]/g, '')),
  ),
)

describe('noise', () => {
  it('of any path, method and fields gets an answer of ours, none of them a fault, and changes nothing', async () => {
    const before = (await value(rig.workshop.about())).sequence
    await fc.assert(
      fc.asyncProperty(method, target, fc.array(field, { maxLength: 4 }), async (verb, path, fields) => {
        // A stream would go on for ever.
        fc.pre(!/^\/api\/watch/.test(path))
        const head = fields.map(([name, text]) => `${name}: ${text}\r\n`).join('')
        const got = await raw(
          `${verb} ${path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n${head}\r\n`,
        )
        expect(got).toMatch(/^HTTP\/1\.1 (?:200|304|4\d\d) /)
      }),
      { numRuns: 400 },
    )
    expect((await value(rig.workshop.about())).sequence).toBe(before)
    for (const line of rig.lines) expect(line).not.toMatch(/broke|\p{Cc}/u)
    expect((await rig.here('/')).text).toBe(PAGE)
  })

  it('of any JSON in any call is refused field by field or answered, never a fault', async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...calls), fc.jsonValue({ maxDepth: 3 }), async (name, json) => {
        const got = await rig.here(`/api/${name}`, post(json))
        expect(got.status).toBeLessThan(500)
        if (got.status === 400) expect(JSON.parse(got.text).problems).not.toEqual([])
      }),
      { numRuns: 400 },
    )
    for (const line of rig.lines) expect(line).not.toMatch(/broke/)
  })
})
