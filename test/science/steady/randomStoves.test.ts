import { describe, expect, test } from 'vitest'
import { randomStream } from '#basis/random.ts'
import { CAMPAIGN_SEED, PHYSICAL_REASONS, runCampaign } from '../campaign.ts'
import { randomCase } from '../randomStove.ts'

const STOVES = 2000

/**
 * Known failures: stoves whose iteration swings between two states next to extinction, gas leaving by the side holes in
 * a wind. One in a thousand; a row that starts to settle fails here until it is taken out.
 */
const KNOWN_UNSETTLED = [['not settled', [360, 1188]]]

describe(`${STOVES} random stoves, the first of the 100,000 of bench/randomStoves.ts`, () => {
  const campaign = runCampaign(STOVES)
  const { reasons } = campaign

  test('are predicted without a number that is none', () => {
    expect(campaign.notFinite).toEqual([])
  })

  test('close their mass to 1e-9 and their energy to 1e-6', () => {
    expect(campaign.massResidual).toBeLessThanOrEqual(1e-9)
    expect(campaign.energyResidual).toBeLessThanOrEqual(1e-6)
  })

  test('burn, or say a reason that a real stove can have', () => {
    for (const [code, { count, first }] of reasons)
      console.log(`${code}: ${count} of ${STOVES}, such as stove ${first.slice(0, 4).join(', ')}`)
    const unsolved = [...reasons].filter(([code]) => !PHYSICAL_REASONS.has(code))
    expect(unsolved.map(([code, { first }]) => [code, first])).toEqual(KNOWN_UNSETTLED)
  })

  test('burn for the most part', () => {
    expect((campaign.through + campaign.partWay) / STOVES).toBeGreaterThan(0.8)
  })

  test('come out the same every time', () => {
    const few = runCampaign(20)
    const again = runCampaign(20)
    expect(again).toEqual(few)
  })
})

describe('the generator', () => {
  test('draws every kind of part, opening, fuel and placement', () => {
    const seen = new Set<string>()
    for (let i = 0; i < 500; i++) {
      const { stove } = randomCase(randomStream(CAMPAIGN_SEED).fork(i))
      seen.add(`fuel ${stove.fuel.kind}`)
      for (const { place } of stove.assembly) seen.add(place)
      for (const part of stove.parts.values()) {
        seen.add(part.role)
        for (const opening of part.openings.values()) {
          seen.add(opening.kind)
          if (opening.kind === 'row') {
            seen.add(opening.hole.shape)
            if (opening.leftOut.length > 0) seen.add('left out')
          }
        }
      }
      seen.add(stove.potDiameter === null ? 'no pot' : 'pot')
    }
    for (const kind of [
      ...['shell', 'fuel can', 'riser', 'pot stand', 'concentrator', 'lid ring', 'grate', 'damper'],
      ...['row', 'pattern', 'bore', 'vanes', 'round', 'window', 'slit', 'left out', 'pot', 'no pot'],
      ...['on ground', 'stands in', 'hangs in', 'sits on', 'slips over'],
    ])
      expect(seen).toContain(kind)
    expect([...seen].filter((kind) => kind.startsWith('fuel ')).length).toBeGreaterThanOrEqual(6)
  })

  test('leaves tin between the holes of every row', () => {
    for (let i = 0; i < 300; i++) {
      const { stove } = randomCase(randomStream(CAMPAIGN_SEED).fork(i))
      for (const part of stove.parts.values()) {
        if (part.form !== 'can') continue
        for (const opening of part.openings.values()) {
          if (opening.kind !== 'row') continue
          const { hole } = opening
          const wide =
            hole.shape === 'round'
              ? hole.diameter
              : hole.shape === 'window' || hole.along === 'axis'
                ? hole.width
                : hole.length
          expect(opening.count * wide).toBeLessThan(Math.PI * part.can.bodyDiameter.value)
          expect(opening.height).toBeLessThan(part.can.height.value)
        }
      }
    }
  })
})
