import { describe, expect, test } from 'vitest'
import { planDraught } from '#science/draft/build.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import { layouts } from '../layouts.ts'
import { notFinite, predictionOf } from './prediction.ts'

/** Every layout that section 4 of the design names, and which of ours stand for it. */
const named: Readonly<Record<string, readonly string[]>> = {
  'two-wall stove with pot stand': ['two walls with a pot stand'],
  'two-wall stove without pot stand': ['two walls without a pot stand'],
  'single wall with a chimney riser': ['single wall with a chimney riser'],
  'with damper': ['with a damper half shut'],
  'concentrator with plain bore': ['two walls with a pot stand'],
  'concentrator with slit vanes': ['concentrator of slits bent to vanes'],
  'lid ring that holds the fuel can': ['lid ring that holds the fuel can, concentrator on the ring'],
  'perforated floor': ['two walls with a pot stand'],
  'open floor': ['open floor with a raised grate'],
  'raised grate': ['open floor with a raised grate', 'perforated floor with a raised grate over it'],
  'intake with a hole left out on the wind side': ['intake with a hole left out on the wind side'],
  'several rows at different heights': ['two intake rows and two secondary rows'],
  'square-topped openings': ['square-topped windows', 'square windows'],
  'slit openings': ['slits along the axis', 'slits round the wall'],
}

test('every layout the design names is here', () => {
  for (const names of Object.values(named)) for (const name of names) expect(layouts).toHaveProperty([name])
})

describe.each(Object.entries(layouts))('%s', (_, build) => {
  const stove = build()

  test('burns, every number a number, mass and energy closed', () => {
    const prediction = predictionOf(stove)
    expect(notFinite(prediction)).toEqual([])
    const { air, balance, firepower, temperature, fuelRate } = prediction.halfway
    expect(balance.mass).toBeLessThanOrEqual(1e-9)
    expect(Math.abs(balance.energy)).toBeLessThanOrEqual(1e-6)
    expect(air.primary).toBeGreaterThan(0)
    expect(air.secondary).toBeGreaterThan(0)
    // A can-sized stove: a candle to a camp fire.
    expect(firepower).toBeGreaterThan(100)
    expect(firepower).toBeLessThan(8000)
    // Never more than all the fuel there is, nor hotter than gas burns.
    expect(firepower).toBeLessThan(fuelRate * prediction.fuel.lowerHeatingValue)
    expect(temperature.flame).toBeGreaterThan(500)
    expect(temperature.flame).toBeLessThan(2300)
  })

  test('every drilled row is a passage between two spaces, the intake from the open air', () => {
    const outcome = planDraught(stove)
    if (!outcome.ok) throw new Error(outcome.reason.sentence)
    const { links, nodes } = outcome.plan
    for (const [part, { openings, role }] of stove.parts) {
      // A damper only covers; a lid ring's hole is filled by the can that hangs in it.
      if (role === 'damper' || role === 'lid ring') continue
      for (const [key, { duty }] of openings) {
        const passages = links.filter((link) => link.part === part && link.opening === key)
        expect(passages, `${key} in ${part}`).not.toEqual([])
        for (const { from, to, area } of passages) {
          expect(from).not.toBe(to)
          expect(area).toBeGreaterThan(0)
          if (duty === 'intake') expect(from).toBe(OUTSIDE)
          if (duty === 'secondary') expect(nodes[to]?.space).toBe('flame')
          if (duty === 'primary' && from !== OUTSIDE) expect(nodes[from]?.space).toBe('air')
        }
      }
    }
  })
})
