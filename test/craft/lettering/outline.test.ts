import { describe, expect, it } from 'vitest'
import { openOutlines } from '#craft/lettering/outline.ts'
import { readPathData } from '#craft/svg/pathData.ts'
import { fontWidth, openFont } from '../fontMetrics.ts'
import { fonts } from '../fonts.ts'

const outlines = openOutlines(fonts)
const SAID = 'Ø 12.7 mm (1/2 in), Ärger'

/** Where a path reaches; handles of curves lie outside it by little. */
const reach = (d: string): { readonly x: readonly number[]; readonly y: readonly number[] } => {
  const numbers = readPathData(d).flatMap(([, ...points]) => points)
  return { x: numbers.filter((_, i) => i % 2 === 0), y: numbers.filter((_, i) => i % 2 === 1) }
}

describe('text as outlines', () => {
  it.each(['regular', 'semibold'] as const)('%s: moves the pen as the font says', (weight) => {
    const { unitsPerEm, capHeight } = openFont(weight)
    // A capital height of 3 and more is set semibold, one below it regular.
    const size = weight === 'regular' ? 2 : 4
    const em = (size * unitsPerEm) / capHeight
    expect(outlines.width(SAID, em, weight)).toBeCloseTo(fontWidth(SAID, size), 6)
  })

  it('stands where it is put, and as high as a capital is', () => {
    const { x, y } = reach(outlines.path('H', 100, 'semibold', 40, 300))
    const { unitsPerEm, capHeight } = openFont('semibold')
    expect(Math.max(...y)).toBeCloseTo(300, 1)
    // What a font says of its capitals is rounded.
    expect(Math.abs(300 - Math.min(...y) - (100 * capHeight) / unitsPerEm)).toBeLessThan(1)
    expect(Math.min(...x)).toBeGreaterThan(40)
    expect(Math.max(...x)).toBeLessThan(40 + outlines.width('H', 100, 'semibold'))
  })

  it('goes on where the letter before ends', () => {
    const width = outlines.width('a', 100, 'regular')
    expect(outlines.path('aa', 100, 'regular', 0, 0)).toBe(
      outlines.path('a', 100, 'regular', 0, 0) + outlines.path('a', 100, 'regular', width, 0),
    )
  })

  it('draws a question mark for a letter that no font has, and tells it', () => {
    const own = openOutlines(fonts)
    expect(own.path('火', 20, 'regular', 0, 0)).toBe(own.path('?', 20, 'regular', 0, 0))
    expect(own.missing()).toEqual(['火'])
  })
})
