import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Box, boxesMeet, circleMeetsBox, liesIn, shapeBox } from '#craft/box.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import type { Shape } from '#craft/drawing.ts'
import { dxfDrawing } from '#craft/dxf/write.ts'
import { flatPatterns } from '#craft/flat/pattern.ts'
import { type LooseSheet, looseSheet } from '#craft/sheet/looseSheet.ts'
import { svgDrawing } from '#craft/svg/write.ts'
import { templateDrawings } from '#craft/templates.ts'
import { inkBoxes } from '../inkBoxes.ts'
import { everyFormStove } from '../randomStoves.ts'
import { textsOf } from '../shapes.ts'
import { pocketStove, testStoves } from '../stoves.ts'

const ISSUE = { date: '2031-05-17', version: '0.1.0' }

/** Every test stove and sixty of any kind; always the same ones. */
const STOVES = [...testStoves.map((make) => make()), ...fc.sample(everyFormStove, { numRuns: 60, seed: 517 })]

const SHEETS: readonly LooseSheet[] = STOVES.flatMap((stove) =>
  flatPatterns(stove).map((drawing) => looseSheet(drawing, { stove: stove.name, ...ISSUE })),
)

const overSheets = (check: (sheet: LooseSheet) => void): void => {
  for (const [index, sheet] of SHEETS.entries()) {
    try {
      check(sheet)
    } catch (error) {
      throw new Error(`Sheet ${index} (${sheet.title}): ${error}`, { cause: error })
    }
  }
}

/** What a word must not lie on: a hole, or the edges of an opening that is cut. */
const isOn = (shape: Shape, box: Box): boolean => {
  if (shape.layer !== 'drill' && shape.layer !== 'cut') return false
  if (shape.kind === 'circle')
    // The outline of a disc goes round its words.
    return circleMeetsBox(shape.centre, shape.radius, box) && shape.radius < 30
  if (shape.kind !== 'polyline' || shape.points.length !== 4 || !shape.closed) return false
  const own = shapeBox(shape)
  // A rectangle that stands askew does not fill its box: only level ones are held to it.
  const isLevel = shape.points.every(
    ({ x }) => Math.min(Math.abs(x - own.left), Math.abs(x - own.right)) < 1e-6,
  )
  return isLevel && boxesMeet(own, box)
}

describe('a drawing in a file of its own', () => {
  it('has no word on another, on a hole, or beyond the edge', () => {
    overSheets(({ width, height, shapes }) => {
      const paper = { left: 0, bottom: 0, right: width, top: height }
      const words = textsOf(shapes).map((text) => ({ text, boxes: inkBoxes(text) }))
      for (const [index, { text, boxes }] of words.entries()) {
        for (const box of boxes) if (!liesIn(box, paper)) expect.fail(`“${text.text}” beyond the edge`)
        for (const other of words.slice(index + 1))
          if (boxes.some((box) => other.boxes.some((one) => boxesMeet(box, one))))
            expect.fail(`“${text.text}” on “${other.text.text}”`)
        for (const shape of shapes)
          if (boxes.some((box) => isOn(shape, box))) expect.fail(`“${text.text}” on a hole`)
      }
    })
  })

  it('keeps everything that is drawn within its size', () => {
    overSheets(({ width, height, shapes }) => {
      for (const shape of shapes)
        expect(liesIn(shapeBox(shape), { left: 0, bottom: 0, right: width, top: height })).toBe(true)
    })
  })

  it('carries the cautions, how to check it and whose it is, drawn and as words', () => {
    overSheets(({ shapes, words }) => {
      const drawn = textsOf(shapes)
        .map(({ text }) => text)
        .join(' ')
      for (const text of [drawn, words.join(' ')]) {
        for (const caution of MAKING_CAUTIONS) expect(text).toContain(caution)
        expect(text).toContain('each is 100 mm long, the line beside it 4 in')
        expect(text).toContain('2031-05-17 · Tinwright 0.1.0')
      }
      const bars = shapes.flatMap((shape) =>
        shape.kind === 'line'
          ? [[Math.abs(shape.to.x - shape.from.x), Math.abs(shape.to.y - shape.from.y)] as const]
          : [],
      )
      expect(bars.some(([x, y]) => Math.abs(x - 100) < 1e-9 && y === 0)).toBe(true)
      expect(bars.some(([x, y]) => Math.abs(y - 100) < 1e-9 && x === 0)).toBe(true)
    })
  })

  it('carries the cautions in the comments of a DXF and the description of an SVG', () => {
    const [sheet] = SHEETS
    if (sheet === undefined) throw new Error('a sheet')
    const dxf = dxfDrawing(sheet)
    const comments = dxf.slice(0, dxf.indexOf('SECTION'))
    const description = /<desc[^>]*>([^<]*)</.exec(svgDrawing(sheet))?.[1]
    for (const caution of MAKING_CAUTIONS) {
      expect(comments).toContain(caution)
      expect(description).toContain(caution)
    }
  })
})

describe('the files of a stove', () => {
  it.each(['svg', 'dxf'] as const)('are the same to the byte for the same stove and day, as %s', (format) => {
    for (const make of testStoves)
      expect(templateDrawings(make(), format, ISSUE)).toEqual(templateDrawings(make(), format, ISSUE))
    const [one, other] = ['2031-05-17', '2031-05-18'].map(
      (date) => templateDrawings(pocketStove(), format, { ...ISSUE, date })[0]?.text,
    )
    expect(one).not.toBe(other)
  })

  it('hold nothing but ASCII as DXF, whatever a name holds, and no line that could be read as a code', () => {
    const stove = { ...pocketStove(), name: 'Žďár 鍋 %%c 100%%\n  0\nEOF' }
    for (const { text } of templateDrawings(stove, 'dxf', ISSUE)) {
      expect(/^[\x20-\x7e\r\n]*$/.test(text)).toBe(true)
      // An end of file where it belongs and nowhere else.
      expect(text.match(/\r\nEOF\r\n/g)).toHaveLength(1)
      expect(text).toContain('\\U+017D')
    }
  })

  it('are well-formed SVG, whatever a name holds', () => {
    const stove = { ...pocketStove(), name: '<script>&"\'' }
    for (const { text } of templateDrawings(stove, 'svg', ISSUE)) {
      expect(text).not.toContain('<script>')
      expect(text).toContain('&lt;script&gt;&amp;')
    }
  })
})
