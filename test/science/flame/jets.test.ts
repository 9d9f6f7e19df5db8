import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { flameCoefficients } from '#science/flame/coefficients.ts'
import {
  bestJetCount,
  type CrossStream,
  type JetRow,
  jetMixing,
  jetPenetration,
  momentumRatio,
} from '#science/flame/jets.ts'
import { outflowAngle, recirculates, swirlNumber, swirlWithBore } from '#science/flame/swirl.ts'

const constants = { jetPenetration: 1.25, jetSpacing: 2.5 }
const row: JetRow = {
  count: 12,
  diameter: 0.006,
  contraction: 0.62,
  flow: 6e-4,
  density: 0.9,
  viscosity: 2.3e-5,
}
const stream: CrossStream = { flow: 4e-4, density: 0.32, diameter: 0.09 }
const positive = fc.double({ min: 0.01, max: 10, noNaN: true })

describe('jets of secondary air', () => {
  test('momentum ratio is density times speed squared, over the same', () => {
    expect(momentumRatio(1.2, 2, 0.3, 1)).toBeCloseTo(16, 12)
  })

  test('the best number of holes goes as √J: n√2 holes for twice J, Holdeman', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 100, noNaN: true }), (ratio) => {
        expect(bestJetCount(2 * ratio, 2.5) / bestJetCount(ratio, 2.5)).toBeCloseTo(Math.SQRT2, 10)
      }),
    )
    // J = 50 and C = 2.5: 4π.
    expect(bestJetCount(50, 2.5)).toBeCloseTo(4 * Math.PI, 10)
  })

  test('reach grows with the hole and √J, and falls as the jets outweigh the gas', () => {
    fc.assert(
      fc.property(positive, positive, positive, positive, (d, ratio, gas, jet) => {
        const here = jetPenetration(d, ratio, gas, jet, 1.25)
        expect(jetPenetration(2 * d, ratio, gas, jet, 1.25)).toBeCloseTo(2 * here, 9)
        expect(jetPenetration(d, 4 * ratio, gas, jet, 1.25)).toBeCloseTo(2 * here, 9)
        expect(jetPenetration(d, ratio, gas, 2 * jet, 1.25)).toBeLessThan(here)
        expect(jetPenetration(d, ratio, gas, 0, 1.25)).toBeCloseTo(1.25 * d * Math.sqrt(ratio), 9)
      }),
    )
  })

  test('a row in a can: its speeds carry its mass, and the verdict follows from the reach', () => {
    const mixing = jetMixing(row, stream, constants)
    expect(mixing).not.toBeNull()
    if (mixing === null) return
    const area = row.count * (Math.PI / 4) * row.diameter ** 2 * row.contraction
    expect(mixing.jetSpeed * area * row.density).toBeCloseTo(row.flow, 12)
    expect(mixing.gasSpeed * (Math.PI / 4) * stream.diameter ** 2 * stream.density).toBeCloseTo(
      stream.flow,
      12,
    )
    expect(mixing.meet).toBe(mixing.penetration >= stream.diameter / 2)
  })

  test('a smaller can with the same row: the jets come nearer to meeting or the gas bends them more, never a step', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.04, max: 0.2, noNaN: true }), (diameter) => {
        const here = jetMixing(row, { ...stream, diameter }, constants)?.reach as number
        const next = jetMixing(row, { ...stream, diameter: diameter * 1.0001 }, constants)?.reach as number
        // √J goes as the can's area, the radius as its diameter: reach is proportional to the diameter.
        expect(next / here).toBeCloseTo(1.0001, 8)
      }),
    )
  })

  test('says when J or the jets’ Reynolds number is outside what was tested', () => {
    const fast = jetMixing({ ...row, flow: 3e-3 }, stream, constants)
    expect(fast?.momentumRatio).toBeGreaterThan(100)
    expect(fast?.outside.map(({ quantity }) => quantity)).toContain('J')
    expect(jetMixing(row, stream, constants)?.outside.map(({ quantity }) => quantity)).toContain('Re_j')
  })

  test('no jets, no gas, or a row that blows outward: nothing to say', () => {
    expect(jetMixing({ ...row, flow: 0 }, stream, constants)).toBeNull()
    expect(jetMixing({ ...row, flow: -1e-4 }, stream, constants)).toBeNull()
    expect(jetMixing(row, { ...stream, flow: 0 }, constants)).toBeNull()
  })
})

describe('swirl of bent vanes', () => {
  test('in a narrow ring it is tan θ', () => {
    for (const angle of [10, 30, 45, 60])
      expect(swirlNumber(1, angle)).toBeCloseTo(Math.tan((angle * Math.PI) / 180), 12)
  })

  test('grows with the angle and the hub, is none for straight flow', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        fc.double({ min: 1, max: 85, noNaN: true }),
        (k, angle) => {
          expect(swirlNumber(k, angle + 0.5)).toBeGreaterThan(swirlNumber(k, angle))
          expect(swirlNumber(k + 0.005, angle)).toBeGreaterThan(swirlNumber(k, angle))
          expect(swirlNumber(k, 0)).toBe(0)
        },
      ),
    )
  })

  test('an upright tongue does not turn the gas, a flat one sends it round', () => {
    expect(swirlNumber(0.3, outflowAngle(90))).toBeCloseTo(0, 12)
    expect(swirlNumber(0.3, outflowAngle(30))).toBeGreaterThan(swirlNumber(0.3, outflowAngle(60)))
  })

  test('a bore beside the vanes thins the swirl out, and only thins it', () => {
    fc.assert(
      fc.property(positive, positive, fc.double({ min: 5, max: 80, noNaN: true }), (vanes, bore, angle) => {
        const alone = swirlNumber(0.2, angle)
        expect(swirlWithBore(alone, angle, vanes, bore)).toBeLessThan(alone)
        expect(swirlWithBore(alone, angle, vanes, 0)).toBeCloseTo(alone, 12)
      }),
    )
  })

  test('recirculates above its threshold', () => {
    const { median } = flameCoefficients.swirlForRecirculation
    expect(recirculates(swirlNumber(0.25, 45), median)).toBe(true)
    expect(recirculates(swirlNumber(0.25, 20), median)).toBe(false)
  })
})
