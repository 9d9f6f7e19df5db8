import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { setupIn, siteIn, usualConditions, withFuelKind, withPot } from '#compose/conditions.ts'
import { plainSetup } from '#science/answers/burn/setup.ts'
import { example } from '../science/burn/firing.ts'

describe('conditions of a burn', () => {
  const stove = example('greylag')

  test('left as they are, ask for what the file says on a mild day', () => {
    expect(orThrow(setupIn(stove, usualConditions))).toEqual(plainSetup(stove))
  })

  test('give the air the pressure of its height', () => {
    // Standard atmosphere, US Standard Atmosphere 1976 table I: 89874.6 Pa at 1000 m geometric, 89876 at geopotential.
    expect(siteIn({ ...usualConditions, altitude: 1000 }).pressure).toBeCloseTo(89876, -1)
  })

  test('another fuel brings nothing of what was measured of the file’s own', () => {
    const other = orThrow(
      withFuelKind({ ...stove, fuel: { ...stove.fuel, fines: 0.1 as never } }, 'wood-chips'),
    )
    expect(other.fuel).toEqual({ kind: 'wood-chips', level: stove.fuel.level, moisture: null })
  })

  test('a fuel that is in no table is refused', () => {
    const refused = setupIn(stove, { ...usualConditions, fuel: 'coal' })
    expect(refused.ok).toBe(false)
  })

  test('a stove that is built for no pot is left alone by one', () => {
    const without = { ...stove, potDiameter: null }
    expect(withPot(without, 0.2)).toBe(without)
    expect(withPot(stove, 0.2).potDiameter).toBe(0.2)
    expect(orThrow(setupIn(without, { ...usualConditions, potDiameter: 0.2 })).wish.potDiameter).toBe(0.2)
  })
})
