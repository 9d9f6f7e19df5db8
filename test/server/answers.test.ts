import { once } from 'node:events'
import { createServer } from 'node:http'
import { afterEach, beforeEach, describe, expect, expectTypeOf, it } from 'vitest'
import { MOST_WATCHERS } from '#server/app.ts'
import type { Autosave, EditMove, EventBatch, ListWish, NewDocument, NewRevision } from '#store/workshop.ts'
import type { Answer } from '#wire/answer.ts'
import type { RequestOf } from '#wire/calls.ts'
import { readWatch } from '#wire/watch.ts'
import { AT, act, fresh, newStove, refusal, value } from '../store/acts.ts'
import { listenTo } from './eventStream.ts'
import { clientOf, noAnswer, openRig, PAGE, post, type Rig, uploaderOf } from './rig.ts'

let rig: Rig
let call: ReturnType<typeof clientOf>['call']
beforeEach(async () => {
  rig = await openRig()
  call = clientOf(rig).call
})
afterEach(() => rig.close())

const listen = (since: number, headers: Readonly<Record<string, string>> = {}) =>
  listenTo('127.0.0.1', rig.bench.port, `/api/watch?since=${since}`, headers)

/** A PNG by its first bytes; more nobody looks at. */
const picture = (size: number): Uint8Array<ArrayBuffer> => {
  const bytes = new Uint8Array(size).fill(7)
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return bytes
}

describe('the contract', () => {
  it('takes what the store takes, no more and no less', () => {
    expectTypeOf<NewDocument>().toExtend<RequestOf<'create'>['wanted']>()
    expectTypeOf<RequestOf<'create'>['wanted']>().toExtend<NewDocument>()
    expectTypeOf<NewRevision>().toExtend<RequestOf<'save'>['wanted']>()
    expectTypeOf<RequestOf<'save'>['wanted']>().toExtend<NewRevision>()
    expectTypeOf<Autosave>().toExtend<RequestOf<'autosave'>>()
    expectTypeOf<RequestOf<'autosave'>>().toExtend<Autosave>()
    expectTypeOf<EditMove>().toExtend<RequestOf<'undoEdit'>>()
    expectTypeOf<EventBatch>().toExtend<RequestOf<'logEvents'>>()
    expectTypeOf<ListWish>().toExtend<RequestOf<'list'>>()
  })
})

describe('the calls', () => {
  it('do a whole evening: make, edit, undo, save, rename, take away, bring back, undo', async () => {
    const wanted = newStove()
    const { id } = await value(call('create', { act: act(), wanted }))
    const draft = { document: id, client: 'window', at: AT, base: wanted.revision }
    const one = await value(
      call('autosave', { ...draft, number: 0, text: '{ "holes": 13 }', label: 'a hole' }),
    )
    const back = await value(call('undoEdit', { document: id, client: 'window', at: AT, number: one.number }))
    expect(back).toMatchObject({ text: wanted.text, redo: 'a hole', unsaved: false })
    const again = await value(
      call('redoEdit', { document: id, client: 'window', at: AT, number: back.number }),
    )
    const saved = await value(
      call('save', {
        act: act(),
        wanted: {
          document: id,
          revision: fresh('revision'),
          base: wanted.revision,
          text: again.text,
          note: 'one more',
        },
      }),
    )
    const renamed = await value(
      call('rename', { act: act(), document: id, version: saved.version, name: 'Knot' }),
    )
    const gone = await value(call('remove', { act: act(), document: id, version: renamed.version }))
    expect(await value(call('list', {}))).toEqual([])
    await value(call('restore', { act: act(), document: id, version: gone.version }))
    await value(call('undo', { act: act() }))
    await value(call('redo', { act: act() }))
    expect((await value(call('undoState', { client: 'window' }))).undo?.label).toBe('bring “Knot” back')
    expect((await value(call('history', { document: id }))).map(({ note }) => note)).toEqual(['', 'one more'])
    expect(await value(call('open', { document: id }))).toEqual(await value(rig.workshop.open(id)))
    expect(await value(call('drafts', {}))).toHaveLength(1)
    expect(await value(call('verify', {}))).toEqual([])
    expect(rig.lines).toEqual([])
  })

  it('keep settings, and files go in and out', async () => {
    expect(await value(call('setting', { key: 'units' }))).toBeNull()
    await value(call('setSetting', { act: act(), key: 'units', base: null, text: '"mm"' }))
    expect(await value(call('setting', { key: 'units' }))).toMatchObject({ text: '"mm"' })
    const shelf = await value(call('exportShelf', {}))
    expect(JSON.parse(shelf.text)).toMatchObject({ bits: [], cans: {} })
    expect(
      await refusal(call('importFile', { act: act(), file: { name: 'a.json', text: '{}' } })),
    ).toMatchObject({
      code: 'bad input',
      sentence: expect.stringContaining('a.json will not do'),
    })
  })

  it('answer the same step once more, after a lost answer, and do it once', async () => {
    const wanted = newStove()
    const once = { act: act(), wanted }
    const first = await call('create', once)
    expect(await call('create', once)).toEqual(first)
    const step = { act: act(), document: wanted.id, version: 1, name: 'Knot' }
    const renamed = await call('rename', step)
    expect(await call('rename', step)).toEqual(renamed)
    const edit = {
      document: wanted.id,
      client: 'w',
      at: AT,
      base: wanted.revision,
      number: 0,
      text: 'x',
      label: 'e',
    }
    const saved = await call('autosave', edit)
    expect(await call('autosave', edit)).toEqual(saved)
    expect(await value(call('history', { document: wanted.id }))).toHaveLength(1)
    const other = await refusal(call('rename', { ...step, name: 'Ruff' }))
    expect(other).toMatchObject({ code: 'conflict', sentence: expect.stringContaining('an id of its own') })
  })

  it('keep events of a trial once, whoever brings them and however often', async () => {
    const stove = newStove()
    await value(call('create', { act: act(), wanted: stove }))
    const trial = newStove({ kind: 'trial', aboutRevision: stove.revision })
    await value(call('create', { act: act(), wanted: trial }))
    const events = [{ id: fresh('event'), at: AT, body: '"lit"' }]
    for (const client of ['phone', 'phone', 'tablet'])
      await value(call('logEvents', { trial: trial.id, client, at: AT, events }))
    expect(await value(call('events', { trial: trial.id }))).toMatchObject([
      { body: '"lit"', client: 'phone' },
    ])
  })
})

describe('two clients at one document', () => {
  it('lose nothing of each other: the later one is told in a sentence', async () => {
    const other = clientOf(rig).call
    const stove = newStove()
    await value(call('create', { act: act('one'), wanted: stove }))
    const save = (client: string, text: string) => ({
      act: act(client),
      wanted: { document: stove.id, revision: fresh('revision'), base: stove.revision, text, note: client },
    })
    const answers = await Promise.all([call('save', save('one', 'a')), other('save', save('two', 'b'))])
    const refusals = answers.filter((answer) => !answer.ok)
    expect(refusals).toMatchObject([
      {
        refusal: {
          code: 'conflict',
          sentence: expect.stringMatching(/saved elsewhere.*Neither was overwritten/),
        },
      },
    ])
    const [winner] = answers.filter((answer) => answer.ok)
    expect((await value(call('open', { document: stove.id }))).document).toEqual(winner?.ok && winner.value)
    const direct = await rig.here('/api/save', post(save('three', 'c')))
    expect([direct.status, noAnswer(direct).refusal.code]).toEqual([409, 'conflict'])
    // Between a page and its maker: no line in the terminal.
    expect(rig.lines).toEqual([])
  })

  it('share no draft by chance, and a duplicated window is told', async () => {
    const stove = newStove()
    await value(call('create', { act: act(), wanted: stove }))
    const edit = (client: string, number: number, text: string) =>
      call('autosave', {
        document: stove.id,
        client,
        at: AT,
        base: stove.revision,
        number,
        text,
        label: 'edit',
      })
    await value(edit('one', 0, 'a'))
    await value(edit('two', 0, 'b'))
    await value(edit('one', 1, 'c'))
    expect(await refusal(edit('one', 1, 'd'))).toMatchObject({
      code: 'conflict',
      sentence: expect.stringContaining('duplicated tab'),
    })
    expect((await value(call('drafts', { document: stove.id }))).map(({ text }) => text)).toEqual(['b', 'c'])
  })
})

describe('the stream of changes', () => {
  it('says what changed, by this program or another, in order and once', async () => {
    const stream = await listen(0)
    const first = newStove({ name: 'One' })
    await value(call('create', { act: act(), wanted: first }))
    const event = await stream.next()
    expect([event.event, event.id]).toEqual(['changes', '1'])
    const changes = await value(readWatch('changes', event.data) as Answer<never>)
    expect(changes).toMatchObject({ sequence: 1, documents: [{ name: 'One' }] })
    await value(rig.workshop.create(act(), newStove({ name: 'Two' })))
    const second = await stream.next()
    expect(second.data).toContain('Two')
    expect(second.data).not.toContain('One')
    stream.leave()
  })

  it('goes on where a lost line ended', async () => {
    for (const name of ['One', 'Two', 'Three']) await value(rig.workshop.create(act(), newStove({ name })))
    const stream = await listen(0, { 'last-event-id': '2' })
    expect((await stream.next()).data).toMatch(/^(?!.*Two).*Three/)
    stream.leave()
  })

  it.each(['', 'x', '-1', '1.5', '99', '1e3'])('is refused from %j on', async (since) => {
    const got = await rig.here(`/api/watch?since=${since}`)
    expect([got.status, noAnswer(got).problems?.[0]?.field]).toEqual([400, 'since'])
  })

  it('ends when the bench closes, which does not wait for it', async () => {
    const stream = await listen(0)
    await rig.bench.close()
    await stream.ended
  })

  it('has room for many windows; the longest open one makes room for one more', async () => {
    const first = await listen(0)
    const others = await Promise.all(Array.from({ length: MOST_WATCHERS - 1 }, () => listen(0)))
    const last = await listen(0)
    await first.ended
    await value(rig.workshop.create(act(), newStove({ name: 'One' })))
    for (const stream of [...others, last]) {
      expect((await stream.next()).data).toContain('One')
      stream.leave()
    }
  })
})

describe('photos and archives', () => {
  it('go up and come down as they were', async () => {
    const { upload } = uploaderOf(rig)
    const stove = newStove()
    await value(call('create', { act: act(), wanted: stove }))
    const photo = {
      id: fresh('photo'),
      revision: fresh('revision'),
      name: 'Flämme 🔥',
      aboutDocument: stove.id,
    }
    const words = { act: act(), photo }
    const bytes = picture(200_000)
    const head = await value(upload('attach', words, bytes))
    expect(head).toMatchObject({ kind: 'photo', name: 'Flämme 🔥', aboutDocument: stove.id })
    expect(await value(upload('attach', words, bytes))).toEqual(head)
    const down = await fetch(new URL(`api/photo/${photo.id}`, rig.bench.address))
    expect(new Uint8Array(await down.arrayBuffer())).toEqual(bytes)
    expect(down.headers.get('content-type')).toBe('image/png')
    expect(down.headers.get('content-security-policy')).toContain('sandbox')
    const etag = down.headers.get('etag') ?? ''
    const again = await rig.here(`/api/photo/${photo.id}`, { headers: { 'if-none-match': etag } })
    expect([again.status, again.text]).toEqual([304, ''])

    const archive = await fetch(new URL('api/archive', rig.bench.address))
    expect(archive.headers.get('content-disposition')).toBe('attachment; filename="tinwright-2031-05-17.zip"')
    const zip = new Uint8Array(await archive.arrayBuffer())
    const empty = await openRig()
    const report = await value(uploaderOf(empty).upload('importArchive', { act: act() }, zip))
    expect(report).toMatchObject({ added: 2, photos: 1, strange: [] })
    expect((await value(empty.workshop.photo(photo.id))).bytes).toEqual(bytes)
    await empty.close()
  })

  it('are refused in a sentence where they are none', async () => {
    const { upload } = uploaderOf(rig)
    const stove = newStove()
    await value(call('create', { act: act(), wanted: stove }))
    const photo = { id: fresh('photo'), revision: fresh('revision'), name: 'Page', aboutDocument: stove.id }
    const page = new TextEncoder().encode('<script>alert(1)</script>')
    expect(await refusal(upload('attach', { act: act(), photo }, page))).toMatchObject({
      code: 'bad input',
      sentence: expect.stringContaining('no JPEG, PNG or WebP'),
    })
    expect(await refusal(upload('importArchive', { act: act() }, page))).toMatchObject({
      code: 'not a workshop',
    })
    const missing = await rig.here('/api/photo/nothing')
    expect([missing.status, noAnswer(missing).refusal.code]).toEqual([404, 'unknown'])
    const other = await rig.here(`/api/photo/${stove.id}`)
    expect([other.status, noAnswer(other).refusal.sentence]).toEqual([400, '“Redshank” is no photo.'])
  })
})

describe('the page', () => {
  it('is the same for every place in it, and asked about each time', async () => {
    for (const path of ['/', '/index.html', '/stoves/a%20b', '/pair/', '/deep/down/in']) {
      const got = await rig.here(path)
      expect([path, got.status, got.text]).toEqual([path, 200, PAGE])
      expect(got.headers['cache-control']).toBe('no-cache')
    }
    const worker = await rig.here('/sw.js')
    expect(worker.headers).toMatchObject({
      'cache-control': 'no-cache',
      'content-type': expect.stringContaining('javascript'),
    })
    const { etag = '' } = worker.headers
    expect((await rig.here('/sw.js', { headers: { 'if-none-match': etag } })).status).toBe(304)
  })

  it('has its hashed files kept for good, packed for those who take them so', async () => {
    const path = '/assets/bench-1a2b3c4d.js'
    const plain = await rig.here(path)
    expect(plain.headers['cache-control']).toBe('public, max-age=31536000, immutable')
    expect(plain.headers['content-encoding']).toBeUndefined()
    const url = new URL(path, rig.bench.address)
    const packed = await fetch(url, { headers: { 'accept-encoding': 'gzip' } })
    expect(packed.headers.get('content-encoding')).toBe('gzip')
    expect(await packed.text()).toBe(plain.text)
    const refused = await rig.here(path, { headers: { 'accept-encoding': 'gzip;q=0, br' } })
    expect(refused.text).toBe(plain.text)
  })

  it('answers HEAD with no body', async () => {
    const got = await rig.here('/', { method: 'HEAD' })
    expect([got.status, got.text]).toEqual([200, ''])
  })

  it('lets nothing run but its own files', async () => {
    const policy = (await rig.here('/')).headers['content-security-policy']
    const rules = new Map(
      String(policy)
        .split('; ')
        .map((rule) => [rule.split(' ')[0], rule.split(' ').slice(1)]),
    )
    expect(rules.get('default-src')).toEqual(["'none'"])
    expect(rules.get('script-src')).toEqual(["'self'", "'wasm-unsafe-eval'"])
    expect(rules.get('style-src')).toEqual(["'self'"])
    expect(rules.get('frame-ancestors')).toEqual(["'none'"])
    expect(rules.get('connect-src')).toEqual(["'self'"])
  })
})

describe('a fault of the program', () => {
  it('is told without its inside, and written down for whoever can mend it', async () => {
    const workshop = {
      ...rig.workshop,
      list: () => Promise.reject(new Error('the secret inside')),
    }
    const broken = await openRig({ workshop })
    const got = await broken.here('/api/list', post({}))
    expect([got.status, noAnswer(got).refusal.code]).toEqual([500, 'broken'])
    expect(got.text).not.toContain('secret')
    expect(got.headers['content-security-policy']).toContain("default-src 'none'")
    expect(broken.lines).toEqual([expect.stringContaining('the secret inside')])
    await broken.close()
  })
})

describe('the port', () => {
  it('is the next free one when the wanted one is in use, for all addresses alike', async () => {
    const taken = createServer()
    taken.listen(0, '127.0.0.1')
    await once(taken, 'listening')
    const { port } = taken.address() as { readonly port: number }
    const next = await openRig({ port })
    expect(next.bench.port).toBeGreaterThan(port)
    expect(next.bench.port).toBeLessThanOrEqual(port + 20)
    expect(next.bench.houseOrigins[0]).toMatch(new RegExp(`:${next.bench.port}$`))
    expect((await next.there('/pair')).status).toBe(200)
    await next.close()
    taken.close()
  })
})
