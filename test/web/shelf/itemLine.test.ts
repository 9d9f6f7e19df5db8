import { describe, expect, it } from 'vitest'
import type { Units } from '#web/settings/settings.ts'
import { lineOf } from '#web/shelf/itemLine.ts'

const bit = (name: string, value: unknown, units: Units): string =>
  lineOf({ kind: 'bit', name, value: value as string }, units).words

describe('a row of the shelf', () => {
  it.each<readonly [string, string, Units, string]>([
    ['5/8 in', '5/8 in', 'both', '15.9 mm'],
    ['5/8 in', '5/8 in', 'mm', '15.9 mm'],
    ['5/8 in', '5/8 in', 'in', ''],
    ['6 mm', '6 mm', 'both', '15/64 in'],
    ['6 mm', '6 mm', 'mm', ''],
    ['6 mm', '6 mm', 'in', '15/64 in'],
    ['#7', '#7', 'both', '5.1 mm, 13/64 in'],
    ['good one', '6 mm', 'both', '6 mm (15/64 in)'],
    ['6 mm', '8 mm', 'both', '8 mm (5/16 in)'],
  ])('says of the bit %s (%s) in %s what its name does not: “%s”', (name, value, units, words) => {
    expect(bit(name, value, units)).toBe(words)
  })

  it('says every step of a step drill', () => {
    expect(bit('step drill', { step: ['4 mm', '6 mm', '8 mm'] }, 'mm')).toBe('4 mm, 6 mm, 8 mm')
  })

  it('says why a thing does not read', () => {
    expect(lineOf({ kind: 'pot', name: 'mug', value: { diameter: '12' } }, 'both')).toMatchObject({
      ok: false,
    })
    expect(lineOf({ kind: 'pot', name: 'mug', value: null }, 'both').words).toMatch(/does not read/)
  })
})
