import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lowestNesting, type Piece } from '#stove/fit/nesting.ts'
import { type Solid, type SolidRing, upsideDown } from '#stove/fit/solid.ts'

/**
 * An oracle that shares nothing with the search: solids on a grid of whole units, lowered one unit at a time
 * until a filled cell meets a filled cell, over every order and every way up.
 */
const cells = ({ rings }: Solid, base: number): ReadonlySet<string> => {
  const filled = new Set<string>()
  for (const { inner, outer, bottom, top } of rings)
    for (let r = inner; r < outer; r += 1)
      for (let z = bottom; z < top; z += 1) filled.add(`${r},${z + base}`)
  return filled
}

const overlaps = (one: ReadonlySet<string>, other: ReadonlySet<string>): boolean => {
  for (const cell of one) if (other.has(cell)) return true
  return false
}

const lowered = (solid: Solid, standing: ReadonlySet<string>, from: number): number => {
  let base = from
  while (base > 0 && !overlaps(cells(solid, base - 1), standing)) base -= 1
  return base
}

const bruteForce = (
  pieces: readonly Piece[],
  standing: ReadonlySet<string> = new Set(),
  height = 0,
): number => {
  if (pieces.length === 0) return height
  let best = Number.POSITIVE_INFINITY
  for (const [index, piece] of pieces.entries())
    for (const solid of piece.ways) {
      const base = lowered(solid, standing, height)
      const rest = pieces.filter((_, other) => other !== index)
      const heap = new Set([...standing, ...cells(solid, base)])
      best = Math.min(best, bruteForce(rest, heap, Math.max(height, base + solid.height)))
    }
  return best
}

const bothWays = (name: string, rings: readonly SolidRing[], height: number): Piece => ({
  name,
  ways: [{ rings, height }, upsideDown({ rings, height })],
})

/** A cup, tube, closed can or cup with a ledge and a foot, all in whole units, wall and floor 1 thick. */
const anyPiece: fc.Arbitrary<Piece> = fc
  .record({
    radius: fc.integer({ min: 3, max: 8 }),
    height: fc.integer({ min: 2, max: 9 }),
    floor: fc.option(fc.integer({ min: 0, max: 1 }), { nil: null }),
    roof: fc.boolean(),
    lip: fc.boolean(),
    ledge: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ radius, height, floor, roof, lip, ledge }) => {
    const rings: SolidRing[] = [{ inner: radius - 1, outer: radius, bottom: 0, top: height }]
    if (floor !== null) rings.push({ inner: 0, outer: radius, bottom: floor, top: floor + 1 })
    if (roof) rings.push({ inner: 0, outer: radius, bottom: height - 1, top: height })
    if (lip) rings.push({ inner: radius - 1, outer: radius + 1, bottom: height - 1, top: height })
    if (ledge > 0) rings.push({ inner: radius - 1 - ledge, outer: radius, bottom: height - 1, top: height })
    return bothWays('piece', rings, height)
  })

describe('lowestNesting', () => {
  test('finds what trying everything finds, for up to four pieces', () => {
    fc.assert(
      fc.property(fc.array(anyPiece, { minLength: 1, maxLength: 4 }), (pieces) => {
        expect(lowestNesting(pieces)?.height).toBe(bruteForce(pieces))
      }),
      { numRuns: 60 },
    )
  })

  test('says truly where each piece stands: no tin runs through tin, and each fell as far as it could', () => {
    fc.assert(
      fc.property(fc.array(anyPiece, { minLength: 1, maxLength: 6 }), (pieces) => {
        const nesting = lowestNesting(pieces)!
        expect(nesting.order.map(({ piece }) => piece).toSorted((a, b) => a - b)).toEqual([...pieces.keys()])
        let standing: ReadonlySet<string> = new Set()
        for (const { piece, way, base } of nesting.order) {
          const solid = pieces[piece]!.ways[way]!
          expect(overlaps(cells(solid, base), standing)).toBe(false)
          expect(base === 0 || overlaps(cells(solid, base - 1), standing)).toBe(true)
          standing = new Set([...standing, ...cells(solid, base)])
        }
        const tops = nesting.order.map(({ piece, way, base }) => base + pieces[piece]!.ways[way]!.height)
        expect(Math.max(...tops)).toBe(nesting.height)
      }),
    )
  })

  test('gives the same answer every time', () => {
    fc.assert(
      fc.property(fc.array(anyPiece, { minLength: 1, maxLength: 5 }), (pieces) => {
        expect(lowestNesting(pieces)).toEqual(lowestNesting(pieces))
      }),
    )
  })

  test('turns nothing over that need not be', () => {
    const cup = (radius: number, height: number): Piece =>
      bothWays(
        'cup',
        [
          { inner: radius - 1, outer: radius, bottom: 0, top: height },
          { inner: 0, outer: radius, bottom: 0, top: 1 },
        ],
        height,
      )
    const nesting = lowestNesting([cup(9, 10), cup(7, 9), cup(5, 8)])!
    expect(nesting.height).toBe(10)
    expect(nesting.order.every(({ way }) => way === 0)).toBe(true)
  })

  test('answers nothing where nothing is lower than asked for', () => {
    const block: Piece = {
      name: 'block',
      ways: [{ rings: [{ inner: 0, outer: 5, bottom: 0, top: 7 }], height: 7 }],
    }
    expect(lowestNesting([block, block], 14)).toBeNull()
    expect(lowestNesting([block, block], 14.1)?.height).toBe(14)
  })
})
