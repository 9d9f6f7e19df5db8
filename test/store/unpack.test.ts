import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { Refused } from '#store/answer.ts'
import { folderNames, slug } from '#store/archive/names.ts'
import { inOrder } from '#store/archive/order.ts'
import { unpack } from '#store/archive/unpack.ts'

const limits = { packed: 1_000_000, unpacked: 5_000_000, files: 20 }

const refusal = (work: () => unknown) => {
  try {
    work()
  } catch (error) {
    if (error instanceof Refused) return error.refusal
    throw error
  }
  throw new Error('was not refused')
}

describe('unpacking', () => {
  it('gives the files of an archive, packed or not', () => {
    const noise = Uint8Array.from({ length: 100_000 }, (_, n) => (n * 7919) % 251)
    const files = unpack(zipSync({ a: strToU8('text'), 'b/c': [noise, { level: 0 }], 'b/d': noise }), limits)
    expect([...files.keys()]).toEqual(['a', 'b/c', 'b/d'])
    expect(files.get('b/c')).toEqual(noise)
    expect(files.get('b/d')).toEqual(noise)
  })

  it('stops a bomb when it swells, not when it has', () => {
    const bomb = zipSync({ bomb: [new Uint8Array(200_000_000), { level: 9 }] })
    expect(bomb.length).toBeLessThan(limits.packed)
    expect(refusal(() => unpack(bomb, limits))).toEqual({
      code: 'too large',
      sentence: 'The archive is too large: unpacked it is more than 5 MB. Nothing was changed.',
    })
  })

  it('does not believe an archive that makes itself small', () => {
    const bomb = zipSync({ bomb: [new Uint8Array(20_000_000), { level: 9 }] })
    const view = new DataView(bomb.buffer, bomb.byteOffset, bomb.byteLength)
    // The size before packing, as the local header states it: APPNOTE 4.3.7, offset 22.
    view.setUint32(22, 10, true)
    expect(refusal(() => unpack(bomb, limits)).code).toBe('too large')
  })

  it('takes neither too many files nor too large an archive', () => {
    const many = Object.fromEntries(Array.from({ length: 21 }, (_, n) => [`f${n}`, strToU8('x')]))
    expect(refusal(() => unpack(zipSync(many), limits)).sentence).toContain('more than 20 files')
    expect(refusal(() => unpack(new Uint8Array(1_000_001), limits)).code).toBe('too large')
  })

  it('refuses what is cut short anywhere, and spoilt streams', () => {
    const archive = zipSync({ a: strToU8('text'.repeat(1000)), b: strToU8('more'.repeat(1000)) })
    const ends = Array.from({ length: archive.length - 2 }, (_, n) => n + 2)
    for (const end of ends)
      expect(refusal(() => unpack(archive.subarray(0, end), limits)).code).toBe('damaged')
    const spoilt = Uint8Array.from(archive)
    spoilt.fill(0xff, 40, 60)
    expect(refusal(() => unpack(spoilt, limits)).code).toBe('damaged')
  })
})

describe('names in an archive', () => {
  it('are folders on any system', () => {
    expect(slug('Élan “No. 2” / ½')).toBe('elan-no-2-1-2')
    expect(slug('木')).toBe('')
    expect(slug('x'.repeat(99))).toHaveLength(40)
    const folder = folderNames()
    expect(['CON', 'Heron', 'heron', '木', '../..'].map((name) => folder('stove', name))).toEqual([
      'stoves/con-2',
      'stoves/heron',
      'stoves/heron-2',
      'stoves/stove',
      'stoves/stove-2',
    ])
  })
})

describe('an order', () => {
  const needs = ({ after }: { readonly after: readonly string[] }) => after
  it('puts what is needed first, and finds circles and doubles', () => {
    const things = [
      { id: 'c', after: ['b', 'a'] },
      { id: 'b', after: ['a', 'elsewhere'] },
      { id: 'a', after: [] },
    ]
    expect(inOrder(things, needs)?.map(({ id }) => id)).toEqual(['a', 'b', 'c'])
    expect(inOrder([...things, { id: 'a', after: [] }], needs)).toBeNull()
    expect(inOrder([{ id: 'a', after: ['a'] }], needs)).toBeNull()
  })

  it('copes with a long chain handed in backwards', () => {
    const chain = Array.from({ length: 50_000 }, (_, n) => ({
      id: `${n}`,
      after: n === 0 ? [] : [`${n - 1}`],
    }))
    expect(inOrder(chain.toReversed(), needs)?.map(({ id }) => id)).toEqual(chain.map(({ id }) => id))
  })
})
