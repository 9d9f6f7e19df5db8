import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { BadInput } from '#basis/problem.ts'
import { loadPngPainter } from '#cli/png.ts'
import { cardsOf } from '#craft/card/cards.ts'
import { SMALLEST_SIZE } from '#craft/card/format.ts'
import { cardPng, type PngPainter, pngSize } from '#craft/card/png.ts'
import { CARD_CAUTIONS } from '#craft/caution.ts'
import { dualValues } from '#craft/page/dualValues.ts'
import { darkTheme } from '#craft/section/theme.ts'
import { readSvg } from '#craft/svg/read.ts'
import { anyStove, everyFormStove } from '../randomStoves.ts'
import { pocketStove, riserStove, testStoves } from '../stoves.ts'
import { decks, plainInput } from './decks.ts'
import { clashes, crosses, layoutFaults } from './layout.ts'

const tests = testStoves
  .map((make) => make())
  .map((stove) => ({ name: stove.name, made: cardsOf(plainInput(stove)) }))
const all = [...decks, ...tests]

/** Lines that belong together, whole again: a size may stand over two. */
const textOf = (lettered: readonly { readonly text: string }[]): string =>
  lettered
    .map(({ text }) => text)
    .join(' ')
    .replaceAll('\u00a0', ' ')

/** Sizes that stand in one unit only. */
const singles = (text: string): readonly string[] =>
  dualValues(text).flatMap((stretch) =>
    stretch.kind === 'dual'
      ? []
      : [...stretch.text.matchAll(/\d[\d./ ]*\s?(?:mm|cm|in|kW|Btu\/h|g|oz)\b/g)].map(String),
  )

describe('the measure of the layout', () => {
  it('sees a line through a box, past it and up to it', () => {
    const box = { left: 0, right: 10, top: 0, bottom: 10 }
    expect(
      crosses(
        [
          { x: -5, y: 5 },
          { x: 15, y: 5 },
        ],
        box,
      ),
    ).toBe(true)
    expect(
      crosses(
        [
          { x: 2, y: 2 },
          { x: 3, y: 3 },
        ],
        box,
      ),
    ).toBe(true)
    expect(
      crosses(
        [
          { x: -5, y: 5 },
          { x: 5, y: -6 },
        ],
        box,
      ),
    ).toBe(false)
    expect(
      crosses(
        [
          { x: -5, y: 11 },
          { x: 15, y: 11 },
        ],
        box,
      ),
    ).toBe(false)
  })
})

describe.each(all)('the cards of $name', ({ made }) => {
  it('come in both shapes, as large as they say', () => {
    for (const { shape, width, height, svg } of made.cards) {
      expect([width, height]).toEqual(shape === 'wide' ? [1920, 1080] : [1080, 1080])
      expect(svg).toContain(`viewBox="0 0 ${width} ${height}"`)
    }
  })

  it('keep their lettering on the card, apart, and off the lines of the picture', () => {
    expect(made.cards.flatMap(layoutFaults)).toEqual([])
  })

  it('letter every size so large that it is read 360 px wide', () => {
    for (const { lettered, width } of made.cards)
      for (const { text, em } of lettered)
        if (/\d/.test(text) && !/^(?:Tinwright|\d\/\d)/.test(text))
          expect(em / width, text).toBeGreaterThanOrEqual(SMALLEST_SIZE)
  })

  it('say every size in both units, which agree', () => {
    for (const { lettered } of made.cards) {
      expect(clashes(textOf(lettered))).toEqual([])
      expect(singles(textOf(lettered))).toEqual([])
    }
  })

  it('carry the caution and the day, each of them', () => {
    for (const { lettered } of made.cards) {
      const text = textOf(lettered)
      for (const line of CARD_CAUTIONS) expect(text).toContain(line)
      expect(text).toContain('Tinwright, 2031-05-17')
    }
  })

  it('are SVG that needs no font and fetches nothing, with a title and the sizes for who cannot see it', () => {
    for (const { svg, title } of made.cards) {
      const root = readSvg(svg)
      expect(root.name).toBe('svg')
      expect(svg).not.toMatch(/<text|<image|font-family|https?:(?!\/\/www\.w3\.org\/2000\/svg)/)
      expect(svg).toContain(`<title id="title">${title.replaceAll('&', '&amp;')}</title>`)
      expect(svg).toMatch(/<desc id="desc">[^<]{80,}<\/desc>/)
    }
  })
})

describe.each(decks)('what the cards of $name say', ({ input, made }) => {
  it('names every opening and every can, in either shape', () => {
    for (const shape of input.shapes)
      for (const [name, part] of input.stove.parts) {
        const cards = made.cards.filter((card) => card.shape === shape && card.part === name)
        const text = cards.map(({ lettered }) => textOf(lettered)).join(' ')
        for (const opening of part.openings.keys()) expect(text).toContain(opening)
        if (part.form !== 'can') continue
        const whole = made.cards.filter((card) => card.shape === shape && card.part === null)
        expect(whole.map(({ lettered }) => textOf(lettered)).join(' ')).toContain(part.can.code ?? name)
      }
  })

  it('marks its figures as predicted, with their bands', () => {
    const figures = made.cards.filter(({ part, number }) => part === null && number > 1)
    expect(figures.map(({ shape }) => shape)).toEqual(input.shapes)
    for (const { lettered } of figures) {
      const text = textOf(lettered)
      expect(text).toContain('Predicted, not measured')
      expect(text).toMatch(/firepower \d\.\d+ kW \(\d+ Btu\/h\) likely \d\.\d+ to \d\.\d+ kW/)
      expect(text).toMatch(/wood gas for .* likely/)
      expect(text).toMatch(/1 L (?:boils in|does not boil)/)
    }
  })

  it('numbers what takes more than one card', () => {
    for (const { number, of, lettered } of made.cards)
      expect(lettered.some(({ text }) => text === `${number}/${of}`)).toBe(of > 1)
  })

  it('is the same for the same stove and day, and without figures where there is no burn', () => {
    const again = cardsOf(input)
    expect(again.cards.map(({ svg }) => svg)).toEqual(made.cards.map(({ svg }) => svg))
    expect(again.list).toBe(made.list)
    const cold = cardsOf({ ...input, burn: null, figures: null, date: '2031-05-18' })
    expect(cold.cards.map(({ svg }) => svg).join('')).not.toMatch(/Predicted|2031-05-17/)
    expect(cold.list).not.toContain('Predicted')
  })
})

describe('cards of 100 stoves drilled anyhow', () => {
  it('keep their lettering on the card, apart, off the lines, and in two units that agree', () => {
    fc.assert(
      fc.property(fc.oneof(anyStove, everyFormStove), (stove) => {
        for (const card of cardsOf(plainInput(stove)).cards) {
          expect(layoutFaults(card)).toEqual([])
          expect(clashes(textOf(card.lettered))).toEqual([])
          expect(singles(textOf(card.lettered))).toEqual([])
        }
      }),
      { numRuns: 100, seed: 4 },
    )
  })
})

describe('names as long as a stove file takes them', () => {
  it('stay on the card', () => {
    const riser = riserStove()
    const long = 'Wwwwwwwwwwwwwwwwwwwww wwwwwwwwwwwwwwwwwww'
    const parts = new Map([...riser.parts].map(([name, part], i) => [i === 0 ? long : name, part]))
    const assembly = riser.assembly.map((at) => ({
      ...at,
      part: parts.has(at.part) ? at.part : long,
      host: at.host === null || parts.has(at.host) ? at.host : long,
    }))
    const stove = { ...riser, name: `${long} ${long}`, parts, assembly }
    expect(cardsOf(plainInput(stove)).cards.flatMap(layoutFaults)).toEqual([])
  })
})

describe('a day that is none', () => {
  it('is refused', () => {
    const stove = pocketStove()
    expect(() => cardsOf({ ...plainInput(stove), date: '2031-02-29' })).toThrow(BadInput)
  })
})

describe('a letter that no font has', () => {
  it('is told', () => {
    const stove = pocketStove()
    expect(
      cardsOf({ ...plainInput({ ...stove, name: 'Stove 火' }), shapes: ['wide'] }).missingLetters,
    ).toEqual(['火'])
  })
})

describe('PNG of cards', () => {
  let paint: PngPainter
  beforeAll(async () => {
    paint = await loadPngPainter()
  })

  it.each(['wide', 'square'] as const)('%s: has the size of the card and is not blank', (shape) => {
    for (const { input } of decks.slice(0, 1))
      for (const theme of [input.theme, darkTheme]) {
        const [card] = cardsOf({ ...input, theme, shapes: [shape] }).cards
        if (card === undefined) throw new Error('no card')
        const bytes = cardPng(card, paint)
        expect(pngSize(bytes)).toEqual({ width: card.width, height: card.height })
        const blank = paint(card.svg.replace(/<path[^>]*\/>/g, ''))
        expect(bytes.length).toBeGreaterThan(4 * blank.length)
        expect(cardPng(card, paint)).toEqual(bytes)
      }
  })

  it('is refused where the painter gives something else', () => {
    const [card] = decks[0]?.made.cards ?? []
    if (card === undefined) throw new Error('no card')
    expect(() => cardPng(card, () => new Uint8Array(40))).toThrow('as no PNG')
    expect(() => cardPng({ ...card, width: 1000 }, paint)).toThrow('1920 by 1080 pixels, not 1000 by 1080')
  })
})
