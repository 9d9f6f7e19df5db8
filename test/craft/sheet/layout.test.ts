import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Box, boxesMeet, circleMeetsBox, grow, liesIn, shapeBox } from '#craft/box.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import type { Drawing, Shape } from '#craft/drawing.ts'
import { flatPatterns } from '#craft/flat/pattern.ts'
import { moved } from '#craft/move.ts'
import { laySheets } from '#craft/sheet/layout.ts'
import { MARGIN, type PaperName, pageFrame } from '#craft/sheet/paper.ts'
import type { Piece, Sheet } from '#craft/sheet/sheet.ts'
import reference from '#reference/wrapLength.json' with { type: 'json' }
import type { Stove } from '#stove/model.ts'
import { inkBox, inkBoxes } from '../inkBoxes.ts'
import { anyStove, everyFormStove } from '../randomStoves.ts'
import { type Circle, circlesOf, textsOf } from '../shapes.ts'
import { testStoves } from '../stoves.ts'

const PAPERS: readonly PaperName[] = ['A4', 'Letter', 'A3']

const lay = (
  stove: Stove,
  paper: PaperName,
): { readonly drawings: readonly Drawing[]; readonly sheets: readonly Sheet[] } => {
  const drawings = flatPatterns(stove)
  return {
    drawings,
    sheets: laySheets(drawings, { paper, stove: stove.name, date: '2031-05-17', version: '0.1.0' }),
  }
}

interface Laid {
  readonly stove: Stove
  readonly paper: PaperName
  readonly drawings: readonly Drawing[]
  readonly sheets: readonly Sheet[]
}

/** Test stoves and some of any kind (always the same ones) on every paper; hundreds more on one paper each, in turn. */
const LAID: readonly Laid[] = [
  ...[
    ...testStoves.map((make) => make()),
    ...fc.sample(anyStove, { numRuns: 15, seed: 20310517 }),
    ...fc.sample(everyFormStove, { numRuns: 15, seed: 20310517 }),
  ].flatMap((stove) => PAPERS.map((paper) => ({ stove, paper, ...lay(stove, paper) }))),
  ...[
    ...fc.sample(anyStove, { numRuns: 250, seed: 517 }),
    ...fc.sample(everyFormStove, { numRuns: 250, seed: 517 }),
  ].map((stove, i) => {
    const paper = PAPERS[i % PAPERS.length] as PaperName
    return { stove, paper, ...lay(stove, paper) }
  }),
]

const overStoves = (check: (laid: Laid) => void): void => {
  for (const [index, laid] of LAID.entries()) {
    try {
      check(laid)
    } catch (error) {
      throw new Error(`Stove ${index} (${laid.stove.name}) on ${laid.paper}: ${error}`, { cause: error })
    }
  }
}

const onPage = ({ at, clip, shapes }: Piece): readonly Shape[] =>
  shapes.map((shape) => moved(shape, at.x - clip.left, at.y - clip.bottom))

const clipOnPage = ({ at, clip }: Piece): Box => ({
  left: at.x,
  bottom: at.y,
  right: at.x + clip.right - clip.left,
  top: at.y + clip.top - clip.bottom,
})

const within = (box: Box, clip: Box): Box => ({
  left: Math.max(box.left, clip.left),
  right: Math.min(box.right, clip.right),
  bottom: Math.max(box.bottom, clip.bottom),
  top: Math.min(box.top, clip.top),
})

const isHole = (shape: Shape): shape is Circle =>
  shape.kind === 'circle' && (shape.layer === 'drill' || shape.layer === 'cut')

describe('a page', () => {
  it('has the size of its paper (ISO 216, ASME Y14.1)', () => {
    for (const [paper, size] of [
      ['A4', reference.sheets.A4_mm],
      ['Letter', reference.sheets.Letter_mm],
    ] as const) {
      for (const sheet of lay(testStoves[0](), paper).sheets)
        expect([sheet.size.width, sheet.size.height].sort((a, b) => a - b)).toEqual(size)
    }
  })

  it('keeps everything out of the edge that printers cannot ink', () => {
    overStoves(({ sheets }) => {
      for (const { size, pieces, furniture } of sheets) {
        const inkable = {
          left: MARGIN,
          bottom: MARGIN,
          right: size.width - MARGIN,
          top: size.height - MARGIN,
        }
        const boxes = [
          ...pieces.map(clipOnPage),
          ...furniture.map((shape) => (shape.kind === 'text' ? inkBox(shape) : shapeBox(shape))),
        ]
        for (const box of boxes) expect(liesIn(box, grow(inkable, 0.01))).toBe(true)
      }
    })
  })

  it('keeps its drawings off each other, off its words and bars', () => {
    overStoves(({ sheets }) => {
      for (const { pieces, furniture } of sheets) {
        const clips = pieces.map(clipOnPage)
        for (const [index, clip] of clips.entries()) {
          for (const other of clips.slice(index + 1)) expect(boxesMeet(clip, other)).toBe(false)
          for (const shape of furniture)
            expect(boxesMeet(clip, shape.kind === 'text' ? inkBox(shape) : shapeBox(shape))).toBe(false)
        }
      }
    })
  })

  it('sets no text on other text or on a hole', () => {
    overStoves(({ sheets }) => {
      for (const { pieces, furniture } of sheets) {
        const shown = [
          ...textsOf(furniture).map((text) => ({ text, box: inkBox(text) })),
          ...pieces.flatMap((piece) =>
            textsOf(onPage(piece)).flatMap((text) =>
              inkBoxes(text).map((box) => ({ text, box: within(box, clipOnPage(piece)) })),
            ),
          ),
        ].filter(({ box }) => box.left < box.right && box.bottom < box.top)
        for (const [index, { text, box }] of shown.entries()) {
          for (const other of shown.slice(index + 1))
            if (text !== other.text && boxesMeet(box, other.box))
              expect.fail(`“${text.text}” on “${other.text.text}”`)
        }
        for (const piece of pieces) {
          const clip = clipOnPage(piece)
          const holes = onPage(piece).filter(isHole)
          // The outline of a disc goes round its text; a hole does not.
          const widest = Math.max(
            0,
            ...holes.flatMap(({ layer, radius }) => (layer === 'cut' ? [radius] : [])),
          )
          for (const { text, box } of shown) {
            for (const { centre, radius, layer } of holes) {
              const isOutline = layer === 'cut' && radius === widest
              if (!isOutline && boxesMeet(box, clip) && circleMeetsBox(centre, radius, box))
                expect.fail(`“${text.text}” on a hole of ${piece.title}`)
            }
          }
        }
      }
    })
  })

  it('carries the cautions, how to print, whose it is, and two bars of 100 mm, one each way', () => {
    overStoves(({ stove, sheets }) => {
      for (const [index, { furniture }] of sheets.entries()) {
        const words = textsOf(furniture)
          .map(({ text }) => text)
          .join(' ')
        for (const caution of MAKING_CAUTIONS) expect(words).toContain(caution)
        expect(words).toContain('Print at 100 %')
        expect(words).toContain('within 0.5 mm (1/64 in)')
        expect(words).toContain(stove.name)
        expect(words).toContain(`2031-05-17 · Tinwright 0.1.0 · page ${index + 1} of ${sheets.length}`)
        const bars = furniture.flatMap((shape) =>
          shape.kind === 'line' ? [{ x: shape.to.x - shape.from.x, y: shape.to.y - shape.from.y }] : [],
        )
        expect(bars).toContainEqual({ x: 100, y: 0 })
        expect(bars).toContainEqual({ x: 0, y: 100 })
      }
    })
  })
})

describe('a drawing on its pages', () => {
  const piecesOf = (sheets: readonly Sheet[], title: string): readonly Piece[] =>
    sheets.flatMap(({ pieces }) => pieces.filter((piece) => piece.title === title))

  it('is all there: every point of every line on some piece, every hole whole on one', () => {
    overStoves(({ paper, drawings, sheets }) => {
      const { field } = pageFrame(paper, 'portrait')
      for (const drawing of drawings) {
        const clips = piecesOf(sheets, drawing.title).map(({ clip }) => grow(clip, 1e-6))
        expect(clips.length).toBeGreaterThan(0)
        for (const shape of drawing.shapes) {
          if (shape.kind === 'line')
            for (let share = 0; share <= 1; share += 0.125) {
              const x = shape.from.x + share * (shape.to.x - shape.from.x)
              const y = shape.from.y + share * (shape.to.y - shape.from.y)
              expect(clips.some((clip) => liesIn({ left: x, right: x, bottom: y, top: y }, clip))).toBe(true)
            }
          if (isHole(shape) && 2 * shape.radius < field.right - field.left - 10)
            expect(clips.some((clip) => liesIn(shapeBox(shape), clip))).toBe(true)
        }
      }
    })
  })

  it('has the same holes and at least one ringed cross at the same place on neighbours that overlap', () => {
    overStoves(({ drawings, sheets }) => {
      for (const { title } of drawings) {
        const pieces = piecesOf(sheets, title)
        for (const [index, one] of pieces.entries()) {
          for (const other of pieces.slice(index + 1)) {
            const both = within(one.clip, other.clip)
            const sideBySide = both.right - both.left > 9.9 && both.top - both.bottom > 20
            const isCorner = both.right - both.left < 60 && both.top - both.bottom < 60
            if (!sideBySide || isCorner) continue
            const inBoth = (shapes: readonly Shape[], layer: Shape['layer']): readonly string[] =>
              circlesOf(shapes, layer)
                .filter((circle) => liesIn(shapeBox(circle), both))
                .map(({ centre, radius }) => `${centre.x} ${centre.y} ${radius}`)
                .sort()
            expect(inBoth(one.shapes, 'drill')).toEqual(inBoth(other.shapes, 'drill'))
            const marks = inBoth(one.shapes, 'dimension')
            expect(marks).toEqual(inBoth(other.shapes, 'dimension'))
            expect(marks.length).toBeGreaterThan(0)
          }
        }
      }
    })
  })

  it('names the piece and what to do with it', () => {
    const { sheets } = lay(testStoves[0](), 'A4')
    const words = sheets.map(({ furniture }) =>
      textsOf(furniture)
        .map(({ text }) => text)
        .join(' '),
    )
    expect(words.some((page) => page.includes('Wrap of shell, piece 1 of 2'))).toBe(true)
    expect(
      words.some((page) => page.includes('Cut along the dash-dot line on the left, lay over piece 1')),
    ).toBe(true)
    expect(sheets[0]?.label).toContain('Wrap of shell')
  })
})
