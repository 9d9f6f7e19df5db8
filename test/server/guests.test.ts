import { connect, type Socket } from 'node:net'
import { DatabaseSync } from 'node:sqlite'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { MOST_OF_ONE_DEVICE } from '#server/listen/crowd.ts'
import { FRAME_TYPE, frameHead } from '#wire/frame.ts'
import { SMALL_BODY, TEXT_BODY } from '#wire/limits.ts'
import { act, newStove, value } from '../store/acts.ts'
import { HOUSE, JSON_TYPE, noAnswer, openRig, PAGE, post, type Rig, type Said, type Sent } from './rig.ts'

let rig: Rig
let stove: string
beforeEach(async () => {
  rig = await openRig()
  stove = (await value(rig.workshop.create(act(), newStove()))).id
})
afterEach(() => rig.close())

const sequence = async (): Promise<number> => (await value(rig.workshop.about())).sequence

/** Everything a maker keeps, to see that nothing of it moved. */
const kept = async () => ({
  sequence: await sequence(),
  open: await value(rig.workshop.open(stove)),
  faults: await value(rig.workshop.verify()),
})

interface Refusal {
  readonly status: number
  readonly code: string
  readonly field: string
  readonly said: RegExp
}

/** Refused with a sentence, in one line of the terminal, and nothing moved. */
const expectRefused = async (ask: () => Promise<Said>, { status, code, field, said }: Refusal) => {
  const before = await kept()
  const got = await ask()
  const { refusal, problems = [] } = noAnswer(got)
  expect({ status: got.status, code: refusal.code }).toEqual({ status, code })
  expect(refusal.sentence).toMatch(said)
  expect(problems[0]?.field).toBe(field)
  for (const one of problems) expect(`${one.allowed}|${one.fix}`).toMatch(/.+\|.+/)
  expect(rig.lines).toEqual([expect.stringMatching(/^2031-05-17T14:05:00\.000Z refused \S+ \S+ .*: \S.*$/)])
  expect(rig.lines[0]?.slice(-200)).toContain(refusal.sentence.split('\n')[0]?.slice(-20))
  expect(got.headers['x-content-type-options']).toBe('nosniff')
  expect(got.headers['content-security-policy']).toMatch(/^default-src 'none'/)
  expect(await kept()).toEqual(before)
}

const renamed = { act: act(), document: '', version: 1, name: 'Stolen' }
const rename = (headers: Readonly<Record<string, string>>): Sent =>
  post({ ...renamed, document: stove }, headers)

describe('a guest by another name', () => {
  it.each([
    ['another name', 'evil.example'],
    ['a name that begins like ours', 'localhost.evil.example:4300'],
    ['a name that ends like ours', 'evil-127.0.0.1'],
    ['a number that means us', '2130706433'],
    ['every address', '0.0.0.0'],
    ['the address of another entrance', '127.0.0.2'],
    ['a name with a user', 'localhost@evil.example'],
    ['a dot behind', 'localhost.'],
  ])('is refused: %s', async (_, host) => {
    await expectRefused(() => rig.here('/api/rename', rename({ host })), {
      status: 421,
      code: 'not allowed',
      field: 'Host',
      said: /127\.0\.0\.1, localhost/,
    })
  })

  it.each(['127.0.0.1', 'localhost', 'LOCALHOST:5173', '127.0.0.1:1'])('is let be as %s', async (host) => {
    expect((await rig.here('/api/about', post({}, { host }))).status).toBe(200)
  })

  it('is not shown the page either', async () => {
    const { status, text } = await rig.here('/', { headers: { host: 'evil.example' } })
    expect(status).toBe(421)
    expect(text).not.toContain(PAGE)
  })
})

describe('a guest from another page', () => {
  const own = () => `127.0.0.1:${rig.bench.port}`
  it.each([
    ['a page elsewhere', 'https://evil.example'],
    ['a page of nowhere', 'null'],
    ['another program of this machine', 'http://127.0.0.1:1'],
    ['the same address with a lock', `https://127.0.0.1`],
    ['a name that begins like ours', 'http://127.0.0.1.evil.example'],
  ])('is refused: %s', async (_, origin) => {
    await expectRefused(() => rig.here('/api/rename', rename({ host: own(), origin })), {
      status: 403,
      code: 'not allowed',
      field: 'Origin',
      said: /Only the pages of this bench may ask/,
    })
  })

  it.each(['cross-site', 'same-site', 'none'])('is refused when the browser says %s', async (site) => {
    await expectRefused(() => rig.here('/api/rename', rename({ host: own(), 'sec-fetch-site': site })), {
      status: 403,
      code: 'not allowed',
      field: 'Sec-Fetch-Site',
      said: /same-origin/,
    })
  })

  it('may not read either, by a picture or a stream', async () => {
    for (const path of [`/api/photo/${stove}`, '/api/watch?since=0', '/api/archive']) {
      const got = await rig.here(path, { headers: { 'sec-fetch-site': 'cross-site' } })
      expect([got.status, noAnswer(got).refusal.code]).toEqual([403, 'not allowed'])
    }
    expect(rig.lines).toHaveLength(3)
  })

  // The router undoes percent signs, and would find the call behind them.
  it.each([
    ['GET', '/%61pi/archive'],
    ['GET', '/api%2farchive'],
    ['GET', '/%2561pi/archive'],
    ['GET', '/%61pi/photo/%ff'],
    ['GET', '/%61pi/watch?since=0'],
    ['POST', '/%61%70%69/undo'],
    ['POST', '/%61pi/upload/importArchive'],
  ])('comes no further by other letters for the same: %s %s', async (method, path) => {
    for (const headers of [{}, { origin: 'https://evil.example' }, { 'sec-fetch-site': 'cross-site' }]) {
      const got = await rig.here(path, { method, headers: { ...JSON_TYPE, ...headers } })
      expect([got.status, noAnswer(got).refusal.code]).toEqual([400, 'not allowed'])
    }
    expect(rig.lines).toHaveLength(3)
  })

  it('has nothing made for it that it would not be sent', async () => {
    for (const path of ['/api/archive', '/api/watch?since=0']) {
      const { status, headers } = await rig.here(path, { method: 'HEAD' })
      expect([status, headers.allow]).toEqual([405, 'GET, POST'])
    }
    expect((await rig.here('/', { method: 'HEAD' })).status).toBe(200)
  })

  it('may link to the page, and the page itself may ask', async () => {
    const linked = await rig.here('/stoves/1', { headers: { 'sec-fetch-site': 'cross-site' } })
    expect([linked.status, linked.text]).toEqual([200, PAGE])
    const host = own()
    const asked = await rig.here(
      '/api/rename',
      rename({ host, origin: `http://${host}`, 'sec-fetch-site': 'same-origin' }),
    )
    expect(asked.status).toBe(200)
    expect(rig.lines).toEqual([])
  })

  it('is refused when it comes through a proxy on this machine', async () => {
    await expectRefused(() => rig.here('/api/about', post({}, { 'x-forwarded-for': '203.0.113.9' })), {
      status: 403,
      code: 'not allowed',
      field: 'x-forwarded-for',
      said: /--lan/,
    })
  })
})

describe('a path that climbs', () => {
  it.each([
    '/../../etc/passwd',
    '/assets/../../../etc/passwd',
    '/%2e%2e/%2e%2e/etc/passwd',
    '/assets/..%2f..%2fetc/passwd',
    '/%252e%252e/etc/passwd',
    '/..\\..\\windows\\win.ini',
    '/assets/%5c..%5c..%5cetc',
    '/./index.html',
    '//etc/passwd',
    '/index.html%00.png',
    '/a%0d%0aset-cookie:%20x=1',
    '/%c0%ae%c0%ae/etc/passwd',
    '/%ff',
    '/%2e%2e/%ff',
    '/%2',
    'http://localhost/api/about',
    '*',
    'http://127.0.0.1/../etc/passwd',
  ])('is refused: %s', async (path) => {
    await expectRefused(() => rig.here(path), {
      status: 400,
      code: 'not allowed',
      field: 'the path',
      said: /steps upwards/,
    })
  })

  it.each(['/etc/passwd.txt', '/package.json', '/assets/', '/assets/none.js', '/src/server/app.ts'])(
    'finds nothing, or the page: %s',
    async (path) => {
      const { status, text } = await rig.here(path)
      if (status === 200) expect(text).toBe(PAGE)
      else expect([status, JSON.parse(text).refusal.code]).toEqual([404, 'unknown'])
    },
  )

  it('is refused when it is longer than any of ours', async () => {
    await expectRefused(() => rig.here(`/${'a'.repeat(3000)}`), {
      status: 414,
      code: 'not allowed',
      field: 'the path',
      said: /3001 characters/,
    })
  })
})

describe('a body that will not do', () => {
  const about = (body: string | Uint8Array, headers: Readonly<Record<string, string>> = JSON_TYPE): Sent => ({
    method: 'POST',
    headers,
    body,
  })
  const refusals: readonly [what: string, path: string, sent: Sent, refusal: Refusal][] = [
    [
      'no JSON',
      '/api/about',
      about('{ "a": '),
      { status: 400, code: 'bad input', field: 'the body', said: /no JSON/ },
    ],
    [
      'nothing at all',
      '/api/about',
      about(''),
      { status: 400, code: 'bad input', field: 'the body', said: /no JSON/ },
    ],
    [
      'bytes of no text',
      '/api/about',
      about(new Uint8Array([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x3a, 0x31, 0x7d])),
      { status: 400, code: 'bad input', field: 'the body', said: /no UTF-8/ },
    ],
    [
      'brackets without end',
      '/api/about',
      about(`${'['.repeat(20_000)}${']'.repeat(20_000)}`),
      { status: 400, code: 'bad input', field: 'the body', said: /12 deep/ },
    ],
    [
      'parts without end',
      '/api/logEvents',
      about(`{"events":[${'{},'.repeat(60_000)}{}]}`),
      { status: 400, code: 'bad input', field: 'the body', said: /50000 parts/ },
    ],
    [
      'a list',
      '/api/about',
      about('[]'),
      { status: 400, code: 'bad input', field: 'the request', said: /braces/ },
    ],
    [
      'a key that nobody knows',
      '/api/about',
      about('{ "path": "/etc/passwd" }'),
      { status: 400, code: 'bad input', field: 'path', said: /only the fields that this call knows/ },
    ],
    [
      'a key that reaches behind objects',
      '/api/about',
      about('{ "__proto__": { "ok": true } }'),
      { status: 400, code: 'bad input', field: '__proto__', said: /only the fields/ },
    ],
    [
      'a path where an id belongs',
      '/api/open',
      about('{ "document": "../../etc/passwd" }'),
      { status: 400, code: 'bad input', field: 'document', said: /an id of up to 80/ },
    ],
    [
      'a form',
      '/api/undo',
      about('act=1', { 'content-type': 'application/x-www-form-urlencoded' }),
      { status: 415, code: 'bad input', field: 'Content-Type', said: /application\/json/ },
    ],
    [
      'text that a form can send',
      '/api/undo',
      about('{}', { 'content-type': 'text/plain' }),
      { status: 415, code: 'bad input', field: 'Content-Type', said: /application\/json/ },
    ],
    [
      'no type',
      '/api/undo',
      about('{}', {}),
      { status: 415, code: 'bad input', field: 'Content-Type', said: /missing/ },
    ],
    [
      'another alphabet',
      '/api/undo',
      about('{}', { 'content-type': 'application/json; charset=utf-16' }),
      { status: 415, code: 'bad input', field: 'Content-Type', said: /utf-16/ },
    ],
    [
      'packed',
      '/api/about',
      about('{}', { ...JSON_TYPE, 'content-encoding': 'gzip' }),
      { status: 415, code: 'bad input', field: 'Content-Encoding', said: /gzip/ },
    ],
    [
      'a call that nobody knows',
      '/api/close',
      about('{}'),
      { status: 404, code: 'unknown', field: 'the call', said: /two versions/ },
    ],
    [
      'a call named after what every object has',
      '/api/constructor',
      about('{}'),
      { status: 404, code: 'unknown', field: 'the call', said: /constructor/ },
    ],
    [
      'a frame that is none',
      '/api/upload/attach',
      about(new Uint8Array([255, 255, 255, 255]), { 'content-type': FRAME_TYPE }),
      { status: 400, code: 'bad input', field: 'the upload', said: /at most 32000 bytes/ },
    ],
    [
      'an upload without words',
      '/api/upload/importArchive',
      about(new Uint8Array([...frameHead({}), 80, 75]), { 'content-type': FRAME_TYPE }),
      { status: 400, code: 'bad input', field: 'act', said: /act is missing/ },
    ],
    [
      'a method of another kind',
      '/api/about',
      { method: 'DELETE' },
      { status: 405, code: 'not allowed', field: 'the method', said: /GET, POST/ },
    ],
    [
      'an expectation that nobody knows',
      '/api/about',
      about('{}', { ...JSON_TYPE, expect: 'a-miracle' }),
      { status: 417, code: 'not allowed', field: 'Expect', said: /a-miracle/ },
    ],
    [
      'a writing call by GET',
      '/api/undo',
      {},
      { status: 404, code: 'unknown', field: 'the path', said: /api\/undo/ },
    ],
  ]
  it.each(refusals)('is refused: %s', async (_, path, sent, refusal) => {
    await expectRefused(() => rig.here(path, sent), refusal)
  })

  it('is refused by the size it says of itself, before it is read', async () => {
    const said = { ...JSON_TYPE, 'content-length': String(SMALL_BODY + 1), expect: '100-continue' }
    await expectRefused(
      () => rig.here('/api/about', { method: 'POST', headers: said, body: 'x'.repeat(SMALL_BODY + 1) }),
      {
        status: 413,
        code: 'too large',
        field: 'the body',
        said: /at most 64000 bytes/,
      },
    )
  })

  it('is refused by its size when it says none, and the line is cut', async () => {
    const before = await kept()
    const got = await new Promise<string>((resolve) => {
      let text = ''
      const socket = connect(rig.bench.port, '127.0.0.1')
      socket.write(
        'POST /api/autosave HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n',
      )
      const chunk = `10000\r\n${'x'.repeat(0x10000)}\r\n`
      let sent = 0
      const more = (): void => {
        while (sent < 4 * TEXT_BODY && !socket.destroyed) {
          sent += 0x10000
          if (!socket.write(chunk)) return
        }
      }
      socket.on('drain', more)
      socket.on('data', (data) => {
        text += data
      })
      socket.on('error', () => undefined)
      socket.on('close', () => resolve(text))
      more()
    })
    expect(got).toMatch(/^HTTP\/1\.1 413 /)
    expect(got).toContain('more than 4.1 MB')
    expect(rig.lines).toHaveLength(1)
    expect(await kept()).toEqual(before)
  })

  it('is told field by field', async () => {
    const got = await rig.here('/api/rename', post({ act: { id: 'x' }, document: 7, extra: 1 }))
    expect(noAnswer(got).problems?.map(({ field }) => field)).toEqual([
      'act.client',
      'act.at',
      'document',
      'version',
      'name',
      'extra',
    ])
  })
})

describe('what is no HTTP', () => {
  const raw = (text: string): Promise<string> =>
    new Promise((resolve) => {
      let got = ''
      const socket = connect(rig.bench.port, '127.0.0.1', () => socket.write(text))
      socket.on('data', (data) => {
        got += data
      })
      socket.on('error', () => undefined)
      socket.on('close', () => resolve(got))
    })
  it.each([
    ['noise', 'hello\r\n\r\n'],
    [
      'two lengths',
      'POST /api/about HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2\r\nContent-Length: 3\r\n\r\n{}',
    ],
    [
      'a length and pieces',
      'POST /api/about HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n',
    ],
    ['another HTTP', 'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n'],
    ['a length below nothing', 'POST /api/about HTTP/1.1\r\nHost: localhost\r\nContent-Length: -1\r\n\r\n'],
    ['a field that goes on in the next line', 'GET / HTTP/1.1\r\nHost: localhost\r\nX: a\r\n b\r\n\r\n'],
    ['a field with a nul in it', 'GET / HTTP/1.1\r\nHost: localhost\r\nX: a\0b\r\n\r\n'],
    ['fields without end', `GET / HTTP/1.1\r\nHost: localhost\r\nX: ${'a'.repeat(40_000)}\r\n\r\n`],
  ])('is cut off and told: %s', async (_, text) => {
    const said = await raw(text)
    expect(said).toMatch(/^HTTP\/1\.1 4\d\d /)
    expect(said).toMatch(/\r\n\r\nIt.* no HTTP.*\.\n$/)
    expect(said).toMatch(/content-security-policy: default-src 'none'/)
    expect(rig.lines).toEqual([expect.stringContaining('no HTTP')])
    expect((await rig.here('/api/about', post({}))).status).toBe(200)
  })

  it.each([
    ['no name', 'GET /api/archive HTTP/1.1\r\n\r\n'],
    ['an empty name', 'GET /api/archive HTTP/1.1\r\nHost:\r\n\r\n'],
    ['the first HTTP', 'GET /api/archive HTTP/1.0\r\n\r\n'],
    ['two names', 'GET /api/archive HTTP/1.1\r\nHost: evil.example\r\nHost: localhost\r\n\r\n'],
  ])('is refused with a sentence where it is HTTP with %s', async (_, text) => {
    expect(await raw(text)).toMatch(/^HTTP\/1\.1 421 (?:.|\s)*"field":"Host"/)
    expect(rig.lines).toHaveLength(1)
  })

  it('is refused with a sentence where it wants to be led elsewhere', async () => {
    const said = await raw('CONNECT evil.example:443 HTTP/1.1\r\nHost: evil.example\r\n\r\n')
    expect(said).toMatch(/^HTTP\/1\.1 405 (?:.|\s)*Open the bench by the address/)
    const own = await raw('CONNECT 127.0.0.1:22 HTTP/1.1\r\nHost: localhost\r\n\r\n')
    expect(own).toMatch(/^HTTP\/1\.1 405 (?:.|\s)*will not do/)
    expect(rig.lines).toHaveLength(2)
  })

  it('is asked nothing more on a line on which it was turned away', async () => {
    const json = 'Content-Type: application/json\r\nContent-Length'
    const create = JSON.stringify({ act: act(), wanted: newStove() })
    const before = await kept()
    const said = await raw(
      `GET / HTTP/1.1\r\nHost: evil\r\n\r\nPOST /api/create HTTP/1.1\r\nHost: localhost\r\n${json}: ${create.length}\r\n\r\n${create}`,
    )
    expect(said.match(/HTTP\/1\.1 \d{3}/g)).toEqual(['HTTP/1.1 421'])
    expect(await kept()).toEqual(before)
  })

  it('is a page like any other where it would be a websocket: there are none', async () => {
    const said = await raw(
      'GET / HTTP/1.1\r\nHost: localhost\r\nConnection: Upgrade, close\r\nUpgrade: websocket\r\nSec-WebSocket-Key: x3JJHMbDL1EzLkh9GBhXDw==\r\nSec-WebSocket-Version: 13\r\n\r\n',
    )
    expect(said).toMatch(/^HTTP\/1\.1 200 /)
    expect(said).not.toMatch(/upgrade/i)
  })

  it('cannot write lines into the terminal', async () => {
    await raw('GET /\u001b[2Jgone HTTP/1.1\r\nHost: x\u001b[31m\r\n\r\n')
    await rig.here('/api/%1b%5b31m', post({}))
    await rig.here('/api/x', { method: 'POST', headers: { host: 'a\u0085b' }, body: '' })
    for (const line of rig.lines) expect(line).not.toMatch(/\p{Cc}/u)
    expect(rig.lines.length).toBeGreaterThan(1)
  })
})

describe('a flood of guests', () => {
  const lines = async (host: string, count: number): Promise<readonly Socket[]> => {
    const opened = Array.from({ length: count }, () => connect(rig.bench.port, host))
    for (const socket of opened) socket.on('error', () => undefined)
    await Promise.all(
      opened.map(
        (socket) =>
          new Promise<void>((resolve) => {
            for (const over of ['connect', 'close'] as const) socket.once(over, () => resolve())
          }),
      ),
    )
    return opened
  }

  it('from one device of the house leaves room for the others', async () => {
    const opened = await lines(HOUSE, MOST_OF_ONE_DEVICE + 12)
    await expect.poll(() => opened.filter(({ closed }) => closed).length).toBe(12)
    expect(rig.lines).toHaveLength(12)
    expect(rig.lines[0]).toContain(`${MOST_OF_ONE_DEVICE} lines open already`)
    // Another one, and this machine.
    const [other] = await lines('127.0.0.1', 1)
    expect(other?.closed).toBe(false)
    expect((await rig.here('/api/about', post({}))).status).toBe(200)
    for (const socket of [...opened, other]) socket?.destroy()
    // Room again, once it has hung up.
    await expect.poll(async () => (await rig.there('/pair').catch(() => null))?.status).toBe(200)
  })

  it('makes twenty lines a minute and a number', async () => {
    for (let n = 0; n < 50; n++) await rig.here('/', { headers: { host: 'evil.example' } })
    expect(rig.lines).toHaveLength(20)
    rig.pass(60_000)
    await rig.here('/', { headers: { host: 'evil.example' } })
    expect(rig.lines).toHaveLength(22)
    expect(rig.lines[20]).toBe('2031-05-17T14:06:00.000Z refused 30 more')
  })
})

describe('a workshop that a newer program has brought up to date meanwhile', () => {
  it('is not written to; the page and the terminal are told', async () => {
    const other = new DatabaseSync(rig.file)
    other.exec('update workshop set format = 99')
    other.close()
    const got = await rig.here('/api/rename', rename({}))
    expect([got.status, noAnswer(got).refusal.code]).toEqual([503, 'newer'])
    expect(noAnswer(got).refusal.sentence).toMatch(/newer than this program.*Nothing was changed/)
    expect(rig.lines).toEqual([expect.stringContaining('newer than this program')])
    expect((await value(rig.workshop.open(stove))).document.name).toBe('Redshank')
  })
})
