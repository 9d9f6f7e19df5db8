import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frameHead, readFrame } from '#wire/frame.ts'

const framed = (words: unknown, bytes: Uint8Array): Uint8Array =>
  new Uint8Array([...frameHead(words), ...bytes])

describe('a frame', () => {
  it('comes apart as it was put together', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 2 }), fc.uint8Array(), (words, bytes) => {
        const read = readFrame(framed(words, bytes))
        if (!read.ok) throw new Error('refused')
        expect(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(read.value.words))).toEqual(
          JSON.parse(JSON.stringify(words)),
        )
        expect([...read.value.bytes]).toEqual([...bytes])
      }),
    )
  })

  it('is read where it lies in a larger piece of memory', () => {
    const whole = framed({ a: 1 }, new Uint8Array([7, 8]))
    const read = readFrame(new Uint8Array([9, 9, 9, ...whole]).subarray(3))
    expect(read.ok && [...read.value.bytes]).toEqual([7, 8])
  })

  it.each([
    ['nothing', []],
    ['three bytes', [0, 0, 0]],
    ['a length of four gigabytes', [255, 255, 255, 255, 1]],
    ['words that are cut short', [0, 0, 0, 9, 123, 125]],
  ])('is refused as %s', (_, bytes) => {
    expect(readFrame(new Uint8Array(bytes))).toMatchObject({
      ok: false,
      problems: [{ code: 'frame.broken' }],
    })
  })
})
