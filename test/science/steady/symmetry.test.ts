import { describe, expect, test } from 'vitest'
import type { Degrees, Metres } from '#basis/units.ts'
import type { Opening, Part, Stove } from '#stove/model.ts'
import { planOf } from '../draft/frozenNetwork.ts'
import { dampered, layouts } from '../layouts.ts'
import { predictionOf } from './prediction.ts'

const eachOpening = (stove: Stove, change: (opening: Opening) => Opening): Map<string, Part> =>
  new Map(
    [...stove.parts].map(([name, part]) => [
      name,
      { ...part, openings: new Map([...part.openings].map(([key, opening]) => [key, change(opening)])) },
    ]),
  )

/** Seen in a mirror: every bearing runs the other way, and the vanes turn the other way. */
const mirrored = (stove: Stove): Stove => {
  const back = (bearing: Degrees): Degrees => -bearing as Degrees
  const parts = eachOpening(stove, (opening) => {
    switch (opening.kind) {
      case 'row':
        return {
          ...opening,
          bearing: back(opening.bearing),
          // Position 1 stays first; the others are counted the other way round.
          leftOut: opening.leftOut.map((position) => (position === 1 ? 1 : opening.count + 2 - position)),
        }
      case 'pattern':
        return { ...opening, holes: opening.holes.map((hole) => ({ ...hole, bearing: back(hole.bearing) })) }
      case 'bore':
        return opening
      case 'vanes':
        return {
          ...opening,
          bearing: back(opening.bearing),
          hand: opening.hand === 'clockwise' ? 'anticlockwise' : 'clockwise',
        }
    }
  })
  return { ...stove, parts, assembly: stove.assembly.map((p) => ({ ...p, turned: back(p.turned) })) }
}

/** The whole stove turned about its axis. */
const turnedBy = (stove: Stove, by: number): Stove => ({
  ...stove,
  assembly: stove.assembly.map((p) => ({ ...p, turned: (p.turned + by) as Degrees })),
})

const chosen: readonly (readonly [string, Stove])[] = [
  ...[
    'two walls with a pot stand',
    'concentrator of slits bent to vanes',
    'intake with a hole left out on the wind side',
    'single wall with a chimney riser',
  ].map((name) => [name, (layouts[name] as (typeof layouts)[string])()] as const),
  ['damper turned by 7°', dampered(7)],
]

describe.each(chosen)('%s', (_, stove) => {
  const { halfway } = predictionOf(stove)

  test.each([
    ['in a mirror', mirrored(stove)],
    ['turned by 73°', turnedBy(stove, 73)],
  ])('%s burns alike', (_how, other) => {
    const after = predictionOf(other).halfway
    expect(after.firepower / halfway.firepower).toBeCloseTo(1, 9)
    expect(after.passages.map(({ massFlow }) => massFlow)).toEqual(
      halfway.passages.map(({ massFlow }) => expect.closeTo(massFlow, 12)),
    )
  })
})

/** Every length of the stove multiplied, its tin as well. */
const scaled = (stove: Stove, k: number): Stove => {
  const walk = (value: unknown, key: string): unknown => {
    if (typeof value === 'number') {
      const noLength = ['count', 'bearing', 'angle', 'turned', 'leftOut', 'moisture', 'sideSeam']
      return noLength.includes(key) ? value : value * k
    }
    if (Array.isArray(value)) return value.map((item) => walk(item, key))
    if (value instanceof Map) return new Map([...value].map(([name, inner]) => [name, walk(inner, '')]))
    if (value === null || typeof value !== 'object') return value
    return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, walk(inner, name)]))
  }
  return walk(stove, '') as Stove
}

describe('a stove and its enlargement', () => {
  test.each(Object.entries(layouts))('%s: the same passages, areas as the square', (_, build) => {
    const stove = build()
    // Tin on tin has an absolute tolerance, so the factor stays near one.
    const k = 1.2
    const small = planOf(stove)
    const large = planOf(scaled(stove, k))
    const shape = (links: typeof small.links, by: number) =>
      links.map(({ kind, opening, from, to, area, hydraulicDiameter, height }) => ({
        kind,
        opening,
        from,
        to,
        area: expect.closeTo(area * by ** 2, 9),
        hydraulicDiameter: expect.closeTo(hydraulicDiameter * by, 6),
        height: expect.closeTo(height * by, 6),
      }))
    expect(large.links).toMatchObject(shape(small.links, k))
    expect(large.bed.depth as Metres).toBeCloseTo(small.bed.depth * k, 9)
    expect(large.nodes).toHaveLength(small.nodes.length)
  })
})
