import { once } from 'node:events'
import { request } from 'node:https'
import { createServer } from 'node:net'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { readCertificate } from '#server/door/certificate.ts'
import type { House } from '#server/listen/houseDoors.ts'
import type { Door, Invitation } from '#wire/door.ts'
import { needs } from '../outsideProgram.ts'
import { value } from '../store/acts.ts'
import { launch } from '../web/harness/browser.ts'
import { type Authority, makeAuthority, type Pair } from './certificates.ts'
import {
  clientOf,
  HOUSE,
  houseOrigin,
  noAnswer,
  openRig,
  post,
  type Rig,
  type Said,
  type Sent,
  START,
} from './rig.ts'

let authority: Authority | null = null
beforeAll(() => {
  try {
    authority = makeAuthority()
  } catch {
    // Each test that needs OpenSSL says that it is missing.
  }
})
afterAll(() => authority?.close())

let rig: Rig | null = null
afterEach(async () => {
  await rig?.close()
  rig = null
})

const certificateOf = ({ certificate, key }: Pair) => {
  const file = (path: string, text: string) => ({ path, text })
  const read = readCertificate(
    file('bench.pem', certificate),
    file('bench.key', key),
    new Date(START).toISOString(),
  )
  if (!read.ok) throw new Error(read.problems.map(({ fix }) => fix).join())
  return read.value
}

const signed = (names: string) => {
  if (authority === null) throw new Error('no authority')
  return certificateOf(authority.sign({ names }))
}

const openHouse = async (house: House): Promise<Rig> => {
  rig = await openRig({ house })
  return rig
}

const openSafe = (names = `DNS:bench.example,IP:${HOUSE}`): Promise<Rig> =>
  openHouse({ addresses: () => [HOUSE], certificate: signed(names) })

/** As a device that knows the authority, or does not. */
const sendSafely = (
  { bench }: Rig,
  path: string,
  { method = 'GET', headers = {}, body }: Sent = {},
  ca = authority?.certificate,
): Promise<Said> =>
  new Promise((resolve, reject) => {
    const where = {
      host: HOUSE,
      port: bench.port,
      path,
      method,
      headers,
      agent: false,
      // By which name it called, the door has to judge; here the client does not.
      checkServerIdentity: () => undefined,
      ...(ca === undefined ? {} : { ca }),
    }
    const asked = request(where, (response) => {
      let text = ''
      response.setEncoding('utf8')
      response.on('data', (chunk) => {
        text += chunk
      })
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }))
    })
    asked.on('error', reject)
    asked.end(body)
  })

const given = <T>({ text }: Said): T => {
  expect(text).toMatch(/^\{"ok":true/)
  return (JSON.parse(text) as { readonly value: T }).value
}

describe('a bench with a certificate', () => {
  it('speaks https to the house, and http to this machine', async (test) => {
    needs(test, 'openssl')
    const own = await openSafe()
    const { port } = own.bench
    const { pages } = await value(clientOf(own).call('invite', {}))
    expect(own.bench.address).toBe(`http://127.0.0.1:${port}/`)
    expect(pages.map((page) => page.split('#')[0])).toEqual([
      `${houseOrigin(own).replace('http:', 'https:')}/pair`,
      `https://bench.example:${port}/pair`,
    ])
    expect(given<Door>(await sendSafely(own, '/api/door', post({})))).toMatchObject({ encrypted: true })
    expect(given<Door>(await own.here('/api/door', post({})))).toMatchObject({ encrypted: true })
  })

  it('gives devices a cookie for https alone, and binds them to nothing for months', async (test) => {
    needs(test, 'openssl')
    const own = await openSafe()
    const { code } = await value(clientOf(own).call('invite', {}))
    const got = await sendSafely(own, '/api/pair', post({ code, name: 'Phone' }))
    const [cookie = ''] = got.headers['set-cookie'] ?? []
    expect(cookie).toMatch(
      /^__Host-tinwright-[0-9a-f]{10}=[\w-]{43}; Path=\/; Secure; HttpOnly; SameSite=Strict; Max-Age=31536000$/,
    )
    const [bare = ''] = cookie.split(';')
    expect((await sendSafely(own, '/api/list', post({}, { cookie: bare }))).status).toBe(200)
    // The name that a door without TLS would have given.
    const plain = bare.replace('__Host-', '')
    expect((await sendSafely(own, '/api/list', post({}, { cookie: plain }))).status).toBe(401)
    expect(
      (await sendSafely(own, '/api/leave', post({}, { cookie: bare }))).headers['set-cookie']?.[0],
    ).toMatch(/^__Host-\S+=; Path=\/; Secure; HttpOnly; SameSite=Strict; Max-Age=0$/)
    for (const path of ['/pair', '/api/list', '/../x']) {
      const { headers } = await sendSafely(own, path)
      expect(headers['strict-transport-security']).toBeUndefined()
      expect(headers['cross-origin-opener-policy']).toBe('same-origin')
    }
  })

  it('is called by its address or a name of the certificate, and asked by its own pages', async (test) => {
    needs(test, 'openssl')
    const own = await openSafe()
    const { port } = own.bench
    for (const [host, origin, status] of [
      [`bench.example:${port}`, `https://bench.example:${port}`, 200],
      [`${HOUSE}:${port}`, `https://${HOUSE}:${port}`, 200],
      [`bench.example:${port}`, `http://bench.example:${port}`, 403],
      [`other.example:${port}`, `https://other.example:${port}`, 421],
      ['localhost', 'https://localhost', 421],
    ] as const)
      expect([host, (await sendSafely(own, '/api/door', post({}, { host, origin }))).status]).toEqual([
        host,
        status,
      ])
  })

  it('says in the terminal why a device does not come in', async (test) => {
    needs(test, 'openssl')
    const own = await openSafe()
    await expect(own.there('/pair')).rejects.toMatchObject({ code: expect.stringMatching(/ECONNRESET|HPE/) })
    await expect
      .poll(() => own.lines.join('\n'), { timeout: 60_000 })
      .toContain('this door speaks https:// only')
    // A device that was not told of the authority.
    await expect(sendSafely(own, '/pair', {}, 'none')).rejects.toMatchObject({
      code: expect.stringContaining('CERT'),
    })
  })

  it('says so when a browser does not trust the certificate', async (test) => {
    needs(test, 'openssl', 'chromium')
    const own = await openSafe()
    const browser = await launch()
    try {
      const page = await browser.newPage()
      await expect(page.goto(`${houseOrigin(own).replace('http:', 'https:')}/pair`)).rejects.toThrow(
        'ERR_CERT_AUTHORITY_INVALID',
      )
      await expect
        .poll(() => own.lines.join('\n'), { timeout: 60_000 })
        .toContain('It does not trust the certificate')
    } finally {
      await browser.close()
    }
  })

  it('invites nobody once the certificate is over, or stands for no address any more', async (test) => {
    needs(test, 'openssl')
    const own = await openSafe()
    const { until } = signed('DNS:bench.example')
    own.pass(Date.parse(until) - START + 1)
    const got = noAnswer(await own.here('/api/invite', post({})))
    expect(got.refusal.sentence).toMatch(/^The certificate was good until \d{4}-\d\d-\d\d/)
    await own.close()
    rig = null
    const moved = await openSafe('IP:192.168.1.20')
    expect(noAnswer(await moved.here('/api/invite', post({}))).refusal.sentence).toContain(
      'stands for no address that this machine has now',
    )
  })
})

describe('a machine whose addresses change', () => {
  it('is found at those that it has when a device is invited', async () => {
    let addresses: readonly string[] = []
    const own = await openHouse({ addresses: () => addresses, certificate: null })
    const ask = () => own.here('/api/invite', post({}))
    const none = noAnswer(await ask())
    expect(none.refusal.sentence).toContain('in no network of a house just now')
    addresses = [HOUSE]
    const both = await Promise.all([ask(), ask()])
    const [first, second] = both.map((said) =>
      given<Invitation>(said).pages.map((page) => page.split('#')[0]),
    )
    expect([first, second]).toEqual([[`${houseOrigin(own)}/pair`], [`${houseOrigin(own)}/pair`]])
    expect((await own.there('/pair')).status).toBe(200)
    addresses = []
    expect((await ask()).status).toBe(403)
    await expect(own.there('/pair')).rejects.toMatchObject({ code: 'ECONNREFUSED' })
    addresses = [HOUSE]
    expect((await ask()).status).toBe(200)
    expect((await own.there('/pair')).status).toBe(200)
  })

  it('tells when another program sits at the new address', async () => {
    let addresses: readonly string[] = []
    const own = await openHouse({ addresses: () => addresses, certificate: null })
    const other = createServer()
    other.listen(own.bench.port, HOUSE)
    await once(other, 'listening')
    addresses = [HOUSE]
    expect((await own.here('/api/invite', post({}))).status).toBe(403)
    expect(own.lines.join('\n')).toContain(`port ${own.bench.port} is in use there`)
    other.close()
    await once(other, 'close')
    expect((await own.here('/api/invite', post({}))).status).toBe(200)
  })
})
