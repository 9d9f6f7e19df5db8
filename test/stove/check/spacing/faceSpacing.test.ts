import { describe, expect, test } from 'vitest'
import { contextOf } from '#stove/check/context.ts'
import { faceSpacing } from '#stove/check/spacing/faceSpacing.ts'
import type { CanEnd } from '#stove/model.ts'
import {
  bore,
  brief,
  canPart,
  disc,
  discPart,
  lone,
  type Openings,
  pullOff,
  rings,
  vanes,
} from '../stoves.ts'

const onDisc = (openings: Openings) =>
  faceSpacing(contextOf(disc(discPart('concentrator', 100, openings)), null))
const inFloor = (openings: Openings, bottom?: CanEnd) =>
  faceSpacing(contextOf(lone(canPart('fuel can', bottom === undefined ? {} : { bottom }, openings)), null))

describe('patterns', () => {
  test('between holes of a ring: the chord less a hole', () => {
    // Six on 12 mm are 12 mm apart: 6 mm holes leave 6, 7 mm leave 5, 9 mm leave 3 of 4.5.
    expect(onDisc({ p: rings('passage', 6, [[12, 6]], 'face') })).toEqual([])
    expect(brief(onDisc({ p: rings('passage', 7, [[12, 6]], 'face') }))).toEqual([
      'note spacing.pattern disc/p',
    ])
    expect(onDisc({ p: rings('passage', 9, [[12, 6]], 'face') })[0]?.severity).toBe('warn')
    expect(onDisc({ p: rings('passage', 12, [[12, 6]], 'face') })[0]?.severity).toBe('stop')
  })

  test('the bit that would do is half the pitch', () => {
    const fix = onDisc({ p: rings('passage', 9, [[12, 6]], 'face') })[0]?.fix
    expect(fix).toContain('6 mm')
    expect(fix).toContain('19 mm (3/4 in)')
  })

  test('to the edge of a disc', () => {
    // Radius 50 mm: holes of 6 mm want their middle within 41 mm.
    expect(onDisc({ p: rings('passage', 6, [[41, 6]], 'face') })).toEqual([])
    expect(brief(onDisc({ p: rings('passage', 6, [[43, 6]], 'face') }))).toEqual([
      'note spacing.disc-edge disc/p',
    ])
    expect(onDisc({ p: rings('passage', 6, [[45, 6]], 'face') })[0]?.severity).toBe('warn')
    expect(onDisc({ p: rings('passage', 6, [[48, 6]], 'face') })[0]?.severity).toBe('stop')
  })

  test('to the seam round a can’s end', () => {
    // Panel radius 49.8 − 0.2 = 49.6 mm: middle within 40.6 mm.
    expect(inFloor({ p: rings('primary', 6, [[40.5, 6]]) })).toEqual([])
    expect(inFloor({ p: rings('primary', 6, [[41, 6]]) })[0]?.sentence).toContain('to the seam')
  })

  test('where there is no tin', () => {
    expect(brief(inFloor({ p: rings('primary', 6, [[20, 6]]) }, { kind: 'open' }))).toEqual([
      'stop face.no-tin can/p',
    ])
    expect(brief(inFloor({ p: rings('primary', 6, [[20, 6]]) }, pullOff(80)))).toEqual([
      'stop face.no-tin can/p',
    ])
    // A ledge from 20 mm out: holes of 6 mm on 31 mm stand 8 mm clear of it and 15.6 mm inside the wall.
    expect(inFloor({ p: rings('primary', 6, [[31, 6]]) }, pullOff(40))).toEqual([])
  })
})

describe('bores and vanes', () => {
  test('a bore leaves a ring', () => {
    expect(onDisc({ b: bore(94) })).toEqual([])
    expect(brief(onDisc({ b: bore(95) }))).toEqual(['warn spacing.disc-edge disc/b'])
    expect(onDisc({ b: bore(95) })[0]?.fix).toContain('94 mm')
    expect(onDisc({ b: bore(100) })[0]?.severity).toBe('stop')
  })

  test('a bore may take the whole end of a can', () => {
    expect(inFloor({ b: bore(99, 'bottom') })).toEqual([])
    expect(inFloor({ b: bore(101, 'bottom') })[0]?.severity).toBe('stop')
  })

  test('vanes want three millimetres to each other', () => {
    // r sin 45° − w cos 45°: (14 − 9)/√2 = 3.54, (13 − 9)/√2 = 2.83, (9 − 9)/√2 = 0.
    expect(onDisc({ v: vanes(8, 14, 40, 9) })).toEqual([])
    expect(brief(onDisc({ v: vanes(8, 13, 40, 9) }))).toEqual(['warn spacing.pattern disc/v'])
    expect(onDisc({ v: vanes(8, 9, 40, 9) })[0]?.severity).toBe('stop')
    // Seven: 13 sin 51.43° − 9 cos 51.43° = 4.55.
    expect(onDisc({ v: vanes(8, 13, 40, 9) })[0]?.fix).toContain('Use 7 vanes')
  })

  test('vanes to the bore and to the edge', () => {
    expect(onDisc({ b: bore(22), v: vanes(8, 14, 40, 9) })).toEqual([])
    expect(brief(onDisc({ b: bore(24), v: vanes(8, 14, 40, 9) }))).toEqual([
      'warn spacing.face-openings disc/v',
    ])
    // Outer corner at √(46² + 9²) = 46.87 mm leaves 3.13, at √(46.5² + 9²) = 47.36 leaves 2.64.
    expect(onDisc({ v: vanes(8, 14, 46, 9) })).toEqual([])
    expect(brief(onDisc({ v: vanes(8, 14, 46.5, 9) }))).toEqual(['warn spacing.disc-edge disc/v'])
  })

  test('a pattern round a bore', () => {
    // Ring at 30 mm, holes of 6 mm: bore of 42 leaves 6, of 50 leaves 2 of the 3 wanted by either.
    expect(onDisc({ b: bore(42), p: rings('passage', 6, [[30, 8]], 'face') })).toEqual([])
    expect(brief(onDisc({ b: bore(50), p: rings('passage', 6, [[30, 8]], 'face') }))).toEqual([
      'warn spacing.face-openings disc/p',
    ])
  })
})
