import fontkit from '@cantoo/fontkit'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { breakLines, shortened, textWidth, weightOf } from '#craft/lettering/measure.ts'
import { CAP_HEIGHT } from '#craft/lettering/sourceSans.ts'
import { fontWidth, openFont } from '../fontMetrics.ts'
import { fonts } from '../fonts.ts'

const WORDS = 'intake: 11 × Ø 12.7 mm (1/2 in), ±40° – “FRONT” can’s 3 ⁄ 64 ″'

describe('the width of text', () => {
  it('is that of the font’s own letters, in both weights', () => {
    for (const size of [2.1, 2.5, 3, 3.6]) {
      expect(textWidth(WORDS, size)).toBeCloseTo(fontWidth(WORDS, size), 9)
    }
  })

  it('knows both weights’ height of a capital', () => {
    for (const weight of ['regular', 'semibold'] as const) {
      const [file] = fonts[weight]
      const font = fontkit.create(file as Uint8Array)
      expect('capHeight' in font ? font.capHeight : null).toBe(CAP_HEIGHT)
    }
  })

  it('is a whole em for a letter that nobody knows, never too little', () => {
    expect(textWidth('鍋', 2.5)).toBeGreaterThan(textWidth('W', 2.5))
    expect(weightOf(2.5)).toBe('regular')
    expect(openFont('regular').hasGlyphForCodePoint('鍋'.codePointAt(0) ?? 0)).toBe(false)
  })
})

describe('breaking lines', () => {
  it('loses no word and keeps every line that can be within the width', () => {
    const words = fc.array(fc.stringMatching(/^[a-z0-9]{1,9}$/), { minLength: 1, maxLength: 40 })
    fc.assert(
      fc.property(words, fc.double({ min: 20, max: 120, noNaN: true }), (list, width) => {
        const lines = breakLines(list.join(' '), 2.5, width)
        expect(lines.join(' ')).toBe(list.join(' '))
        for (const line of lines)
          if (line.includes(' ')) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(width)
      }),
    )
  })

  it('shortens what must stay on one line', () => {
    const name = 'The stove of the whole allotment society and its many friends'
    expect(shortened(name, 2.5, 500)).toBe(name)
    const short = shortened(name, 2.5, 40)
    expect(short.endsWith('…')).toBe(true)
    expect(textWidth(short, 2.5)).toBeLessThanOrEqual(40)
  })
})
