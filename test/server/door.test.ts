import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { CODE_LASTS, MOST_OF_ALL, MOST_OF_ONE } from '#server/door/invitations.ts'
import { CALLS } from '#wire/calls.ts'
import { type Device, type Door, type Invitation, WITHOUT_CERTIFICATE } from '#wire/door.ts'
import { FRAME_TYPE } from '#wire/frame.ts'
import { UPLOADS } from '#wire/uploads.ts'
import { act, newStove, value } from '../store/acts.ts'
import { listenTo } from './eventStream.ts'
import { HOUSE, houseOrigin, noAnswer, openRig, PAGE, post, type Rig, type Said } from './rig.ts'

let rig: Rig
beforeEach(async () => {
  rig = await openRig()
})
afterEach(() => rig.close())

const flat = (text: string): string => text.replace(/\s+/g, ' ')

const given = <T>({ status, text }: Said): T => {
  expect(text).toMatch(/^\{"ok":true/)
  expect(status).toBe(200)
  return (JSON.parse(text) as { readonly value: T }).value
}

const invite = async (): Promise<Invitation> => given(await rig.here('/api/invite', post({})))
const pair = (code: string, name = 'Phone') => rig.there('/api/pair', post({ code, name }))

/** The cookie as a browser would send it back. */
const cookieFrom = ({ headers }: Said): string => headers['set-cookie']?.[0]?.split(';')[0] ?? ''

/** A device that has been let in. */
const letIn = async (name?: string): Promise<string> => cookieFrom(await pair((await invite()).code, name))

const another = (code: string): string => `${code.startsWith('A') ? 'C' : 'A'}${code.slice(1)}`

describe('a stranger in the house', () => {
  it('is given nothing of what is kept, by any call, upload, stream or picture', async () => {
    const { id } = await value(rig.workshop.create(act(), newStove({ name: 'Secret stove' })))
    const open = ['door', 'pair', 'leave']
    for (const name of Object.keys(CALLS).filter((one) => !open.includes(one))) {
      const got = await rig.there(`/api/${name}`, post({ document: id }))
      expect([name, got.status, noAnswer(got).refusal.code]).toEqual([name, 401, 'not paired'])
      expect(noAnswer(got).refusal.sentence).toContain('Ask for a code at the bench')
    }
    for (const name of Object.keys(UPLOADS)) {
      const upload = { method: 'POST', headers: { 'content-type': FRAME_TYPE }, body: 'x' }
      expect((await rig.there(`/api/upload/${name}`, upload)).status).toBe(401)
    }
    for (const path of ['/api/archive', `/api/photo/${id}`, '/api/watch?since=0', '/api/none', '/api/'])
      expect([path, (await rig.there(path)).status]).toEqual([path, 401])
    expect(rig.lines.join('\n')).not.toContain('Secret')
    expect(rig.lines.length).toBeGreaterThan(10)
  })

  it('is turned away before a byte of what it sends is read', async () => {
    const got = await rig
      .there('/api/autosave', post({ text: 'x'.repeat(3_000_000) }))
      .catch((error) => error)
    // It may still be sending when it is hung up on.
    if (got instanceof Error) expect((got as NodeJS.ErrnoException).code).toMatch(/EPIPE|ECONNRESET/)
    else expect(got.status).toBe(401)
  })

  it('is shown the door, and nothing of it needs anything from elsewhere', async () => {
    const page = await rig.there('/stoves/some-stove')
    expect([page.status, page.headers.location]).toEqual([303, '/pair'])
    const door = await rig.there('/pair')
    expect([door.status, door.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8'])
    const used = [...door.text.matchAll(/(?:href|src)="([^"]*)"/g)].map(([, path]) => path ?? '')
    expect(used).toEqual(['data:,', '/pair.css', '/pair.js'])
    expect(flat(door.text)).toContain(WITHOUT_CERTIFICATE)
    for (const path of used.slice(1)) expect((await rig.there(path)).status).toBe(200)
    expect(door.text).not.toMatch(/<script>|style="|\son\w+="/)
  })

  it('gets the policy of the page too, but for what browsers heed at this machine alone', async () => {
    const opener = 'cross-origin-opener-policy'
    for (const path of ['/pair', '/api/archive', '/../x']) {
      const there = (await rig.there(path)).headers
      expect(there['content-security-policy']).toMatch(/^default-src 'none'; script-src 'self'/)
      expect([there[opener], (await rig.here(path)).headers[opener]]).toEqual([undefined, 'same-origin'])
    }
  })

  it('learns how it stands, and that there is a house', async () => {
    expect(given<Door>(await rig.there('/api/door', post({})))).toEqual({
      from: 'the house',
      letIn: false,
      device: null,
      house: true,
      encrypted: false,
      version: '0.1.0',
    })
    expect(given<Door>(await rig.here('/api/door', post({})))).toMatchObject({
      from: 'this machine',
      letIn: true,
    })
  })

  it('cannot make itself this machine by what it says', async () => {
    for (const headers of [
      { host: 'localhost' },
      { host: `127.0.0.1:${rig.bench.port}` },
      { 'x-forwarded-for': '127.0.0.1' },
      { 'x-real-ip': '127.0.0.1' },
      { forwarded: 'for=127.0.0.1' },
    ] as Readonly<Record<string, string>>[])
      expect([401, 421]).toContain((await rig.there('/api/list', post({}, headers))).status)
  })
})

describe('a code', () => {
  it('lets one device in, once', async () => {
    const { code, until, pages, pictures } = await invite()
    expect(code).toMatch(/^[A-HJ-NP-Z3-9]{4}-[A-HJ-NP-Z3-9]{4}$/)
    expect(Date.parse(until)).toBe(Date.parse('2031-05-17T14:15:00Z'))
    expect(pages).toEqual([`${houseOrigin(rig)}/pair#${code}`])
    expect(pictures[0]).toMatch(/^<svg .*<rect [^>]*fill="#fff"/)
    const first = await pair(code)
    expect(given<Device>(first)).toMatchObject({ name: 'Phone', since: '2031-05-17T14:05:00.000Z' })
    expect(first.headers['set-cookie']?.[0]).toMatch(
      /^tinwright-[0-9a-f]{10}=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Max-Age=31536000$/,
    )
    expect(given<unknown[]>(await rig.there('/api/list', post({}, { cookie: cookieFrom(first) })))).toEqual(
      [],
    )
    const again = await pair(code)
    expect([again.status, noAnswer(again).refusal.code]).toEqual([401, 'not paired'])
    expect(noAnswer(again).refusal.sentence).toContain('was used already')
    expect(again.headers['set-cookie']).toBeUndefined()
    expect(rig.lines).toEqual([expect.stringMatching(/refused \S+ POST \/api\/pair: This code will not do/)])
  })

  it('may be typed as people type', async () => {
    const { code } = await invite()
    given(await pair(` ${code.toLowerCase().replace('-', ' ')} `))
  })

  it('is over after ten minutes, and when another is asked for', async () => {
    const first = await invite()
    rig.pass(CODE_LASTS - 1)
    const second = await invite()
    expect((await pair(first.code)).status).toBe(401)
    rig.pass(CODE_LASTS)
    expect((await pair(second.code)).status).toBe(401)
    const third = await invite()
    rig.pass(CODE_LASTS - 1)
    expect((await pair(third.code)).status).toBe(200)
  })

  it('cannot be guessed at: one address waits after five, the code is over after fifteen', async () => {
    const { code } = await invite()
    for (let n = 0; n < MOST_OF_ONE; n++) expect((await pair(another(code))).status).toBe(401)
    const waits = await pair(code)
    expect([waits.status, noAnswer(waits).refusal.code]).toEqual([429, 'too often'])
    rig.pass(CODE_LASTS)
    // A new code, after the wait.
    const next = await invite()
    given(await pair(next.code))
    expect(MOST_OF_ALL).toBeGreaterThan(MOST_OF_ONE)
  })

  it('opens nothing when there is none', async () => {
    for (const code of ['', '----', 'AAAA-AAAA']) {
      const got = await pair(code)
      expect(got.status).toBe(401)
    }
  })

  it('is made at this machine only, and so are the list and its end', async () => {
    const cookie = await letIn()
    for (const [name, request] of [
      ['invite', {}],
      ['devices', {}],
      ['revoke', { device: 'x' }],
    ] as const) {
      const got = await rig.there(`/api/${name}`, post(request, { cookie }))
      expect([got.status, noAnswer(got).refusal.code]).toEqual([403, 'not allowed'])
    }
  })
})

describe('a device that was let in', () => {
  it('works like the page at this machine', async () => {
    const cookie = await letIn()
    const wanted = newStove()
    given(await rig.there('/api/create', post({ act: act(), wanted }, { cookie })))
    expect(await value(rig.workshop.open(wanted.id))).toMatchObject({ document: { name: 'Redshank' } })
    expect((await rig.there('/', { headers: { cookie } })).text).toBe(PAGE)
    expect(given<Door>(await rig.there('/api/door', post({}, { cookie })))).toMatchObject({
      letIn: true,
      device: 'Phone',
    })
  })

  it('is still held to its own page', async () => {
    const cookie = await letIn()
    const wrong = { cookie, origin: 'http://evil.example' }
    expect((await rig.there('/api/create', post({ act: act(), wanted: newStove() }, wrong))).status).toBe(403)
    const right = { cookie, origin: houseOrigin(rig) }
    given(await rig.there('/api/create', post({ act: act(), wanted: newStove() }, right)))
  })

  it('is known by a token that the list does not tell', async () => {
    const cookie = await letIn('Kitchen')
    const token = cookie.split('=')[1] ?? 'none'
    expect(rig.devices.text).toContain('Kitchen')
    expect(rig.devices.text).not.toContain(token)
    const { devices } = JSON.parse(rig.devices.text ?? '') as {
      readonly devices: { readonly token: string }[]
    }
    const stolen = `${cookie.split('=')[0]}=${devices[0]?.token}`
    expect((await rig.there('/api/list', post({}, { cookie: stolen }))).status).toBe(401)
    for (const wrong of ['', 'tinwright=1', cookie.slice(0, -1), `${cookie}x`, `x${cookie}`])
      expect((await rig.there('/api/list', post({}, { cookie: wrong }))).status).toBe(401)
  })

  it('is out when the maker says so, at once, its stream too', async () => {
    const cookie = await letIn('Old phone')
    const other = await letIn('New phone')
    const list = given<Device[]>(await rig.here('/api/devices', post({})))
    expect(list.map(({ name }) => name)).toEqual(['Old phone', 'New phone'])
    await value(rig.workshop.create(act(), newStove({ name: 'Open stove' })))
    const stream = await listenTo(HOUSE, rig.bench.port, '/api/watch?since=0', { cookie })
    expect((await stream.next()).data).toContain('Open stove')
    const left = given<Device[]>(await rig.here('/api/revoke', post({ device: list[0]?.id })))
    expect(left.map(({ name }) => name)).toEqual(['New phone'])
    await value(rig.workshop.create(act(), newStove({ name: 'Secret stove' })))
    expect(await stream.next()).toMatchObject({
      event: 'refusal',
      data: expect.stringContaining('not paired'),
    })
    await stream.ended
    expect(stream.all()).not.toContain('Secret')
    expect((await rig.there('/api/list', post({}, { cookie }))).status).toBe(401)
    given(await rig.there('/api/list', post({}, { cookie: other })))
    const unknown = await rig.here('/api/revoke', post({ device: 'nobody' }))
    expect([unknown.status, noAnswer(unknown).refusal.code]).toEqual([404, 'unknown'])
  })

  it('may go by itself', async () => {
    const cookie = await letIn()
    const left = await rig.there('/api/leave', post({}, { cookie }))
    expect(left.headers['set-cookie']?.[0]).toMatch(/=; Path=\/; HttpOnly; SameSite=Strict; Max-Age=0$/)
    expect((await rig.there('/api/list', post({}, { cookie }))).status).toBe(401)
  })

  it('is noted by its last day', async () => {
    const cookie = await letIn()
    rig.pass(3 * 24 * 3600_000)
    given(await rig.there('/api/list', post({}, { cookie })))
    const [device] = given<Device[]>(await rig.here('/api/devices', post({})))
    expect(device?.seen).toBe('2031-05-20')
  })

  it('stays let in when the bench is opened again', async () => {
    const cookie = await letIn()
    const { text } = rig.devices
    const again = await openRig({ deviceFile: { read: () => text, write: () => undefined } })
    expect((await again.there('/api/list', post({}, { cookie }))).status).toBe(200)
    await again.close()
  })

  it('is out when the list does not read', async () => {
    const cookie = await letIn()
    for (const text of ['', '{}', '{"format":"tinwright/devices@2","devices":[]}', 'null']) {
      rig.devices.text = text
      expect((await rig.there('/api/list', post({}, { cookie }))).status).toBe(401)
    }
  })
})

describe('a bench that is closed to the house', () => {
  it('invites nobody', async () => {
    const closed = await openRig({ house: null })
    const got = await closed.here('/api/invite', post({}))
    expect([got.status, noAnswer(got).refusal.sentence]).toEqual([403, expect.stringContaining('--lan')])
    await expect(closed.there('/')).rejects.toMatchObject({ code: 'ECONNREFUSED' })
    await closed.close()
  })
})
