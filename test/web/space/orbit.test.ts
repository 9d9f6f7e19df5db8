import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bearingOf, draggedBy, FIRST_ORBIT, keyed, turnedBy, zoomedBy } from '#web/space/orbit.ts'

describe('looking round a stove', () => {
  it('comes back to where it was: left and right, up and down, nearer and farther', () => {
    for (const [there, back] of [
      ['ArrowLeft', 'ArrowRight'],
      ['ArrowUp', 'ArrowDown'],
      ['+', '-'],
    ] as const) {
      const away = keyed(FIRST_ORBIT, there)
      expect(away).not.toEqual(FIRST_ORBIT)
      const home = keyed(away ?? FIRST_ORBIT, back)
      expect(home?.turn).toBeCloseTo(FIRST_ORBIT.turn, 12)
      expect(home?.tilt).toBeCloseTo(FIRST_ORBIT.tilt, 12)
      expect(home?.zoom).toBeCloseTo(FIRST_ORBIT.zoom, 12)
    }
    expect(keyed(turnedBy(FIRST_ORBIT, { turn: 1 }), 'Home')).toEqual(FIRST_ORBIT)
    expect(keyed(FIRST_ORBIT, 'a')).toBeNull()
  })

  it('never stands on its head, comes too near or gets lost, however it is dragged', () => {
    const gesture = fc.oneof(
      fc.tuple(
        fc.constant('drag' as const),
        fc.double({ min: -5000, max: 5000, noNaN: true }),
        fc.double({ min: -5000, max: 5000, noNaN: true }),
      ),
      fc.tuple(fc.constant('zoom' as const), fc.double({ min: 0.01, max: 100, noNaN: true }), fc.constant(0)),
    )
    fc.assert(
      fc.property(fc.array(gesture, { maxLength: 30 }), (gestures) => {
        let orbit = FIRST_ORBIT
        for (const [what, a, b] of gestures)
          orbit = what === 'drag' ? draggedBy(orbit, a, b, 300) : zoomedBy(orbit, a)
        expect(orbit.tilt).toBeLessThan(Math.PI / 2)
        expect(orbit.tilt).toBeGreaterThan(-Math.PI / 2)
        expect(orbit.zoom).toBeGreaterThanOrEqual(0.6)
        expect(orbit.zoom).toBeLessThanOrEqual(5)
        expect(bearingOf(orbit)).toBeGreaterThanOrEqual(0)
        expect(bearingOf(orbit)).toBeLessThanOrEqual(360)
      }),
    )
  })
})
