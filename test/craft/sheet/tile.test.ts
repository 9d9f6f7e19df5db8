import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { OVERLAP, tileSide } from '#craft/sheet/tile.ts'

const keeps = fc.array(
  fc
    .record({
      from: fc.double({ min: 0, max: 700, noNaN: true }),
      width: fc.double({ min: 2, max: 40, noNaN: true }),
    })
    .map(({ from, width }) => ({ from, to: from + width, cost: 100, whole: true })),
  { maxLength: 40 },
)

describe('cutting a side into tiles', () => {
  const cases = fc.record({
    length: fc.double({ min: 20, max: 800, noNaN: true }),
    tile: fc.double({ min: 150, max: 270, noNaN: true }),
    keeps,
  })

  it('covers it, tile by tile, none too long, neighbours overlapping by 10 mm or more', () => {
    fc.assert(
      fc.property(cases, ({ length, tile, keeps }) => {
        const { tiles, joins } = tileSide(length, tile, keeps)
        expect(tiles[0]?.from).toBe(0)
        expect(tiles.at(-1)?.to).toBe(length)
        expect(joins).toHaveLength(tiles.length - 1)
        for (const [index, { from, to }] of tiles.entries()) {
          expect(to - from).toBeLessThanOrEqual(tile + 1e-9)
          const next = tiles[index + 1]
          if (next === undefined) continue
          expect(to - next.from).toBeGreaterThanOrEqual(OVERLAP - 1e-9)
          expect(joins[index]).toBeGreaterThan(next.from)
          expect(joins[index]).toBeLessThan(to)
        }
      }),
    )
  })

  it('shows every hole whole on some tile', () => {
    fc.assert(
      fc.property(cases, ({ length, tile, keeps }) => {
        const inside = keeps.filter(({ to }) => to <= length)
        const { tiles } = tileSide(length, tile, inside)
        for (const hole of inside)
          expect(tiles.some(({ from, to }) => from <= hole.from && to >= hole.to)).toBe(true)
      }),
    )
  })

  it('takes no more tiles than it must where nothing is in the way', () => {
    expect(tileSide(350, 180, []).tiles).toHaveLength(2)
    expect(tileSide(350.5, 180, []).tiles).toHaveLength(3)
    expect(tileSide(180, 180, []).tiles).toHaveLength(1)
  })

  it('joins in the gap between holes where there is one', () => {
    const holes = Array.from({ length: 30 }, (_, index) => ({
      from: index * 10,
      to: index * 10 + 7.5,
      cost: 100,
      whole: true,
    }))
    const { joins } = tileSide(300, 180, [...holes, { from: 130, to: 170, cost: 1, whole: false }])
    for (const join of joins) expect(holes.some(({ from, to }) => from < join && to > join)).toBe(false)
  })
})
