import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { bodyInside } from '#stove/can/ends.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { formatShelfFile, formatStoveFile } from '#stove/document/format.ts'
import { readStove, readStoveDocument } from '#stove/document/read.ts'
import { readShelf } from '#stove/document/shelf.ts'
import type { CanPart, CanRole, DiscPart, Duty, Opening, Stove } from '#stove/model.ts'
import { openingArea } from '#stove/opening/area.ts'
import { shelfExample, stoveExamples } from './examples.ts'

const stoves = stoveExamples.map(({ name, text }) => ({ name, text, stove: orThrow(readStove(text)) }))

const can = (stove: Stove, role: CanRole): CanPart | undefined =>
  [...stove.parts.values()].find((part): part is CanPart => part.form === 'can' && part.role === role)

const concentrator = (stove: Stove): DiscPart | undefined =>
  [...stove.parts.values()].find(
    (part): part is DiscPart => part.form === 'disc' && part.role === 'concentrator',
  )

/** All openings of one duty, dampers apart: a damper lets through what another wall has let in. */
const openings = (stove: Stove, duty: Duty): readonly Opening[] =>
  [...stove.parts.values()]
    .filter(({ form }) => form !== 'band')
    .flatMap((part) => [...part.openings.values()].filter((opening) => opening.duty === duty))

const area = (some: readonly Opening[]): number => some.reduce((sum, one) => sum + openingArea(one), 0)

test('there are three: two of two walls, one of them with vanes and damper, and one of one wall with a riser', () => {
  expect(stoves).toHaveLength(3)
  expect(stoves.filter(({ stove }) => can(stove, 'shell') !== undefined)).toHaveLength(2)
  expect(stoves.filter(({ stove }) => can(stove, 'riser') !== undefined)).toHaveLength(1)
  expect(
    stoves.filter(({ stove }) => [...stove.parts.values()].some(({ form }) => form === 'band')),
  ).toHaveLength(1)
})

describe.each(stoves)('$name', ({ text, stove }) => {
  // The rules of examples/README.md for a first design on natural draught.
  test('has hole areas a natural draught can feed', () => {
    const inside = bodyInside((can(stove, 'fuel can') as CanPart).can).value
    const bed = (Math.PI / 4) * inside ** 2
    const floor = area(openings(stove, 'primary').filter(({ kind }) => kind === 'pattern'))
    const secondary = area(openings(stove, 'secondary'))
    // With one wall, the low row feeds the floor and nothing else; it is called primary.
    const wallRows = [...openings(stove, 'intake'), ...openings(stove, 'primary')]
    const intake = area(wallRows.filter(({ kind }) => kind === 'row'))
    const passage = openings(stove, 'passage')
    expect(secondary / bed).toBeGreaterThan(0.11)
    expect(secondary / bed).toBeLessThan(0.15)
    expect(secondary / floor).toBeGreaterThan(2.5)
    expect(secondary / floor).toBeLessThan(3.5)
    expect(intake / (floor + secondary)).toBeGreaterThan(1)
    expect(area(openings(stove, 'outlet')) / area(passage)).toBeGreaterThan(1)
    const bore = passage.find(({ kind }) => kind === 'bore')
    const share = bore?.kind === 'bore' ? bore.diameter / inside : Number.NaN
    expect(share).toBeGreaterThan(0.35)
    expect(share).toBeLessThan(0.5)
  })

  test('has a gap of 5 to 10 mm between two walls, in the worst case of their tolerances', () => {
    const shell = can(stove, 'shell')
    if (shell === undefined) return
    const { value, tolerance } = (can(stove, 'fuel can') as CanPart).can.bodyDiameter
    const room = bodyInside(shell.can)
    const gap = (sign: 1 | -1) => (room.value + sign * room.tolerance - value + sign * tolerance) / 2
    expect(gap(-1)).toBeGreaterThan(0.005)
    expect(gap(1)).toBeLessThan(0.01)
  })

  test('hangs its fuel can by the seam, which the body clears, in the worst case', () => {
    const placement = stove.assembly.find(({ place }) => place === 'hangs in')
    if (placement === undefined) return
    const host = stove.parts.get(placement.host as string)
    const fuelCan = (can(stove, 'fuel can') as CanPart).can
    const seat = [...(host?.openings.values() ?? [])].find(({ kind }) => kind === 'bore')
    const opening =
      host?.form === 'can' && host.can.top.kind === 'friction'
        ? host.can.top.opening
        : { value: seat?.kind === 'bore' ? seat.diameter : Number.NaN, tolerance: 0 }
    expect(fuelCan.seamDiameter.value - fuelCan.seamDiameter.tolerance).toBeGreaterThan(
      opening.value + opening.tolerance,
    )
    expect(fuelCan.bodyDiameter.value + fuelCan.bodyDiameter.tolerance).toBeLessThan(
      opening.value - opening.tolerance,
    )
  })

  test('has a concentrator that cannot fall into the fuel can', () => {
    const { value, tolerance } = (concentrator(stove) as DiscPart).diameter
    const rim = (can(stove, 'fuel can') as CanPart).can.seamDiameter
    expect(value - tolerance).toBeGreaterThan(rim.value + rim.tolerance)
  })

  test('fills its fuel at least 8 mm below the secondary holes', () => {
    const part = can(stove, 'fuel can') as CanPart
    const ring = [...part.openings.values()].find(({ duty }) => duty === 'secondary')
    const grate = stove.assembly.find(({ part: name }) => {
      const disc = stove.parts.get(name)
      return disc?.form === 'disc' && disc.role === 'grate'
    })
    const floor = grate?.raised ?? (part.can.bottom.kind === 'plain' ? part.can.bottom.countersink : 0)
    if (ring?.kind !== 'row' || ring.hole.shape !== 'round') throw new Error('no secondary ring')
    expect(ring.height - ring.hole.diameter / 2 - (floor + stove.fuel.level)).toBeGreaterThan(0.008)
  })

  test('fits, stands and can be drilled: the checks find nothing worse than a note', () => {
    const findings = checkStove(stove, orThrow(readShelf(shelfExample.text)))
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([])
  })

  test('is written as the house writes stove files', () => {
    expect(formatStoveFile(orThrow(readStoveDocument(text)).file)).toBe(text)
  })
})

test('the shelf has a step drill by its steps, cans by code and by measure', () => {
  const shelf = orThrow(readShelf(shelfExample.text))
  expect(shelf.bits.filter(({ name }) => name.endsWith(' step'))).toHaveLength(8)
  expect(shelf.bits.find(({ name }) => name === '5/8 in')?.diameter).toBeCloseTo(0.015875, 12)
  expect(shelf.cans.get('juice can')?.seamDiameter.value).toBeCloseTo(0.10795, 12)
  expect(shelf.cans.get('lever-lid tin')?.top).toMatchObject({ kind: 'friction' })
  expect(shelf.cans.get('juice can')?.top).toMatchObject({ kind: 'plain' })
  expect(formatShelfFile(JSON.parse(shelfExample.text))).toBe(shelfExample.text)
})
