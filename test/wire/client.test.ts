import { describe, expect, expectTypeOf, it } from 'vitest'
import type { Answer } from '#wire/answer.ts'
import { CALLS, type CallName, isCallName } from '#wire/calls.ts'
import { makeClient, makeUploader } from '#wire/client.ts'
import type { Draft } from '#wire/drafts.ts'
import { MAX_PHOTO, MAX_TEXT } from '#wire/limits.ts'

const at = '2031-05-17T14:05:00Z'
const draft = { document: 'stove-1', client: 'window', at, number: 0, base: null, text: '{}', label: 'begin' }
const act = { id: 'step-1', client: 'window', at }

/** A client whose server says one thing, and what it was sent. */
const saying = (reply: unknown) => {
  const sent: { name: CallName; body: unknown }[] = []
  const client = makeClient(async (name, body) => {
    sent.push({ name, body })
    return reply
  })
  return { client, sent }
}

describe('the client', () => {
  it('sends a call as it is asked for, and gives the answer as it came', async () => {
    const { client, sent } = saying({ ok: true, value: { number: 1 } })
    const answer = await client.call('autosave', draft)
    expectTypeOf(answer).toEqualTypeOf<Answer<Draft>>()
    expect(answer).toEqual({ ok: true, value: { number: 1 } })
    expect(sent).toEqual([{ name: 'autosave', body: draft }])
  })

  it('gives a refusal as the server said it', async () => {
    const said = { ok: false, refusal: { code: 'conflict', sentence: 'Another window has gone on.' } }
    expect(await saying(said).client.call('autosave', draft)).toEqual(said)
  })

  it('tells an unreachable server from one that is not ours', async () => {
    const cut = makeClient(() => Promise.reject(new TypeError('failed to fetch')))
    expect(await cut.call('about', {})).toMatchObject({ refusal: { code: 'unreachable' } })
    for (const reply of [null, '<html>', {}, { ok: true }, { ok: false }, { ok: false, refusal: 'no' }])
      expect(await saying(reply).client.call('about', {})).toMatchObject({ refusal: { code: 'broken' } })
  })

  const wrong: readonly [name: CallName, request: unknown, field: string, code: string][] = [
    ['open', {}, 'document', 'request.missing'],
    ['open', { document: '../etc/passwd' }, 'document', 'request.unusable'],
    ['open', { document: 7 }, 'document', 'request.wrong-type'],
    ['open', { document: 'a', more: 1 }, 'more', 'request.unknown-field'],
    [
      'open',
      JSON.parse('{ "document": "a", "__proto__": { "x": 1 } }'),
      '__proto__',
      'request.unknown-field',
    ],
    ['open', null, 'the request', 'request.wrong-type'],
    ['list', { kinds: ['boat'] }, 'kinds[0]', 'request.unknown-word'],
    ['autosave', { ...draft, number: -1 }, 'number', 'request.too-small'],
    ['autosave', { ...draft, number: 1.5 }, 'number', 'request.wrong-type'],
    ['autosave', { ...draft, at: '2031-05-17' }, 'at', 'request.unusable'],
    ['autosave', { ...draft, text: 'x'.repeat(MAX_TEXT + 1) }, 'text', 'request.too-large'],
    [
      'rename',
      { act: { ...act, extra: 1 }, document: 'a', version: 1, name: 'b' },
      'act.extra',
      'request.unknown-field',
    ],
    ['events', { trial: 'a', since: undefined }, 'since', 'request.missing'],
  ]
  it.each(wrong)('sends no %s of %j', async (name, request, field, code) => {
    const { client, sent } = saying({ ok: true, value: null })
    const answer = await client.call(name, request as never)
    expect(answer).toMatchObject({ ok: false, problems: [{ field, code }] })
    expect(answer).toMatchObject({
      refusal: { code: code === 'request.too-large' ? 'too large' : 'bad input' },
    })
    expect(sent).toEqual([])
  })

  it('tells of twenty wrong fields, not of ten thousand', async () => {
    const many = Object.fromEntries(Array.from({ length: 10_000 }, (_, n) => [`field${n}`, n]))
    const answer = await saying(null).client.call('about', many as never)
    expect(answer.ok ? [] : answer.problems).toHaveLength(20)
  })

  it('knows its calls by their own names only', () => {
    for (const name of Object.keys(CALLS)) expect(isCallName(name)).toBe(true)
    for (const name of ['constructor', 'toString', '__proto__', 'close', 'loadDemo'])
      expect(isCallName(name)).toBe(false)
  })
})

describe('the uploader', () => {
  const words = {
    act,
    photo: { id: 'photo-1', revision: 'revision-1', name: 'Flame', aboutDocument: 'trial-1' },
  }
  it('refuses a photo that is too large before a byte is sent', async () => {
    const uploader = makeUploader<number>(
      () => Promise.reject(new Error('sent')),
      (size) => size,
    )
    expect(await uploader.upload('attach', words, MAX_PHOTO + 100_000)).toMatchObject({
      refusal: { code: 'too large', sentence: expect.stringContaining('16.1 MB; allowed are 16.0 MB') },
    })
    expect(await uploader.upload('attach', words, MAX_PHOTO)).toMatchObject({
      refusal: { code: 'unreachable' },
    })
  })
})
