import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { LAYERS, type Shape } from '#craft/drawing.ts'
import { dxfDrawing } from '#craft/dxf/write.ts'
import { flatPatterns } from '#craft/flat/pattern.ts'
import { writePdf } from '#craft/pdf/write.ts'
import { laySheets } from '#craft/sheet/layout.ts'
import { looseSheet } from '#craft/sheet/looseSheet.ts'
import type { PaperName } from '#craft/sheet/paper.ts'
import type { Sheet } from '#craft/sheet/sheet.ts'
import { svgDrawing } from '#craft/svg/write.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'
import { needs } from '../../outsideProgram.ts'
import { fonts } from '../fonts.ts'
import { everyFormStove } from '../randomStoves.ts'
import { bareShell, testStoves } from '../stoves.ts'
import { compare, type Facts, factsOf } from './facts.ts'
import type { Primitive, Spot } from './primitive.ts'
import { readDxf } from './readDxf.ts'
import { readPdfStrokes } from './readPdf.ts'

/**
 * Every hole centre, diameter, edge and cut of every drawing, read back by readers of others and compared with
 * places worked out from the stove alone, in space. The bar is 0.05 mm.
 */

/** On a machine that does other things besides [ms]. */
const SLOW = { timeout: 600_000 }

const ISSUE = { date: '2031-05-17', version: '0.1.0' }
const STOVES = 500
/** Always the same ones. */
const RANDOM = fc.sample(everyFormStove, { numRuns: STOVES, seed: 20310517 })

const examples = (['redshank', 'heron', 'greylag'] as const).map((name) =>
  orThrow(
    readStove(
      readFileSync(fileURLToPath(new URL(`../../../examples/${name}.stove.json`, import.meta.url)), 'utf8'),
    ),
  ),
)
/** With nothing but ends to cut out. */
const EMPTY = bareShell(90, {}, { bottom: { kind: 'open' }, top: { kind: 'open' } })
const OWN = [...examples, ...testStoves.map((make) => make()), EMPTY]
const ALL = [...OWN, ...RANDOM]

const folder = mkdtempSync(join(tmpdir(), 'tinwright-drawings-'))
afterAll(() => rmSync(folder, { recursive: true }))

interface Outside {
  readonly items: readonly Primitive[]
  readonly texts: readonly string[]
  readonly faults: readonly string[]
  readonly size: readonly [number, number]
  readonly version?: string
  readonly units?: number
  readonly metric?: number
  readonly linetypes?: Readonly<Record<string, string>>
}

interface Made {
  readonly stove: Stove
  readonly index: number
  readonly facts: Facts
  readonly svg: { readonly name: string; readonly text: string }
  readonly dxf: { readonly name: string; readonly text: string }
}

/** Words are half of what a reader has to read: so many stoves keep theirs. */
const WITH_WORDS = 50

/** Drawn once: what the writers make of a drawing is what is looked at here. */
const DRAWN = ALL.map((stove) => flatPatterns(stove))

const MADE: readonly Made[] = ALL.flatMap((stove, index) => {
  const facts = factsOf(stove)
  const drawings = DRAWN[index] ?? []
  if (drawings.length !== facts.length)
    throw new Error(`${stove.name}: ${drawings.length} drawings for ${facts.length}`)
  return drawings.map((drawing, at) => {
    const whole = looseSheet(drawing, { stove: stove.name, ...ISSUE })
    const sheet =
      index < WITH_WORDS
        ? whole
        : { ...whole, words: [], shapes: whole.shapes.filter(({ kind }) => kind !== 'text') }
    return {
      stove,
      index,
      facts: facts[at] as Facts,
      svg: { name: `${index}-${at}.svg`, text: svgDrawing(sheet) },
      dxf: { name: `${index}-${at}.dxf`, text: dxfDrawing(sheet) },
    }
  })
})

const compared = (made: Made, items: readonly Primitive[]): number => {
  try {
    return compare(made.facts, items)
  } catch (error) {
    throw new Error(`stove ${made.index} (${made.stove.name}), ${made.svg.name}: ${error}`, { cause: error })
  }
}

/** Openings there are in all: a comparison of nothing would pass too. */
const OPENINGS = 30 * RANDOM.length

describe('every drawing as DXF, read by dxf-parser', SLOW, () => {
  it('has everything in its place', () => {
    let openings = 0
    for (const made of MADE) openings += compared(made, readDxf(made.dxf.text).items)
    expect(openings).toBeGreaterThan(OPENINGS)
  })

  it('says that it is R12 in millimetres, and how large it is', () => {
    for (const { dxf } of MADE.slice(0, 40)) {
      const { header } = readDxf(dxf.text)
      expect(header).toMatchObject({ $ACADVER: 'AC1009', $INSUNITS: 4, $MEASUREMENT: 1 })
      expect(header.$EXTMAX).toMatchObject({ x: expect.any(Number), y: expect.any(Number) })
    }
  })
})

describe('every drawing, read by Debian’s ezdxf and by Python’s XML reader', SLOW, () => {
  let read: Readonly<Record<string, Outside>> = {}

  beforeAll(() => {
    for (const { svg, dxf } of MADE) {
      writeFileSync(join(folder, svg.name), svg.text)
      writeFileSync(join(folder, dxf.name), dxf.text)
    }
  }, SLOW.timeout)

  const readAll = (): Readonly<Record<string, Outside>> => {
    if (Object.keys(read).length > 0) return read
    const script = fileURLToPath(new URL('readOutside.py', import.meta.url))
    const lines = execFileSync('/usr/bin/python3', [script, folder], { encoding: 'utf8', maxBuffer: 1 << 30 })
    read = Object.fromEntries(
      lines
        .trim()
        .split('\n')
        .map((line) => {
          const { name, ...outside } = JSON.parse(line) as Outside & { readonly name: string }
          return [name, outside]
        }),
    )
    return read
  }

  it('has everything in its place as DXF, and the audit finds nothing to mend', (context) => {
    needs(context, 'ezdxf')
    let openings = 0
    for (const made of MADE) {
      const outside = readAll()[made.dxf.name] as Outside
      expect(outside.faults).toEqual([])
      expect(outside).toMatchObject({ version: 'AC1009', units: 4, metric: 1 })
      expect(outside.linetypes).toMatchObject({ CUT: 'CONTINUOUS', FOLD: 'FOLD_LINE', MARK: 'MARK_LINE' })
      openings += compared(made, outside.items)
    }
    expect(openings).toBeGreaterThan(OPENINGS)
  })

  it('has everything in its place as SVG in millimetres', (context) => {
    needs(context, 'ezdxf')
    let openings = 0
    for (const made of MADE) openings += compared(made, (readAll()[made.svg.name] as Outside).items)
    expect(openings).toBeGreaterThan(OPENINGS)
  })

  it('is the same in both: as large, and with the same words', (context) => {
    needs(context, 'ezdxf')
    for (const { svg, dxf } of MADE) {
      const [one, other] = [readAll()[svg.name] as Outside, readAll()[dxf.name] as Outside]
      expect(one.size[0]).toBeCloseTo(other.size[0], 6)
      expect(one.size[1]).toBeCloseTo(other.size[1], 6)
      expect(one.texts.length).toBe(other.texts.length)
      expect(one.items.length).toBe(other.items.length)
    }
  })

  it('carries every caution as text that is drawn', (context) => {
    needs(context, 'ezdxf')
    const plain = (texts: readonly string[]): string =>
      texts.join(' ').replaceAll('“', '"').replaceAll('”', '"').replaceAll('’', "'")
    for (const { svg, dxf } of MADE.filter(({ index }) => index < WITH_WORDS))
      for (const { name } of [svg, dxf])
        for (const caution of MAKING_CAUTIONS)
          expect(plain((readAll()[name] as Outside).texts)).toContain(caution)
  })
})

describe('every drawing as PDF, read by MuPDF', SLOW, () => {
  /** Only what is to be drilled and cut, so that five hundred stoves take seconds. */
  const bare = (sheet: Sheet): Sheet => ({
    ...sheet,
    furniture: [],
    pieces: sheet.pieces.map((piece) => ({
      ...piece,
      shapes: piece.shapes.filter(({ kind }) => kind !== 'text'),
    })),
  })

  const moved = (item: Primitive, x: number, y: number): Primitive => {
    const by = (spot: Spot): Spot => ({ x: spot.x + x, y: spot.y + y })
    switch (item.kind) {
      case 'circle':
        return { ...item, centre: by(item.centre) }
      case 'arc':
        return { ...item, centre: by(item.centre), ends: [by(item.ends[0]), by(item.ends[1])] }
      case 'path':
        return { ...item, points: item.points.map(by) }
    }
  }

  const spotsOf = (item: Primitive): readonly Spot[] =>
    item.kind === 'path' ? item.points : item.kind === 'arc' ? item.ends : [item.centre]

  const radiusOf = (item: Primitive): number | null => (item.kind === 'path' ? null : item.radius)

  /** Where pieces overlap both show the same: it counts once, and must be the same within a tenth of the bar. */
  const once = (items: readonly Primitive[]): readonly Primitive[] => {
    const kept: Primitive[] = []
    for (const item of items) {
      const spots = spotsOf(item)
      const twin = kept.some((other) => {
        if (other.kind !== item.kind || other.layer !== item.layer) return false
        if (radiusOf(other) !== null && Math.abs(Number(radiusOf(other)) - Number(radiusOf(item))) > 0.005)
          return false
        const others = spotsOf(other)
        return (
          others.length === spots.length &&
          spots.every(({ x, y }, index) => {
            const spot = others[index] as Spot
            return Math.abs(spot.x - x) < 0.005 && Math.abs(spot.y - y) < 0.005
          })
        )
      })
      if (!twin) kept.push(item)
    }
    return kept
  }

  /** The stoves' drawings as the pages show them, put together again by where each page says its pieces lie. */
  const readBack = async (
    stoves: readonly Stove[],
    from: number,
    paper: PaperName,
  ): Promise<readonly (readonly Primitive[])[]> => {
    const laid = stoves.map((stove, index) => {
      const drawings = DRAWN[from + index] ?? []
      return { drawings, sheets: laySheets(drawings, { paper, stove: stove.name, ...ISSUE }).map(bare) }
    })
    const sheets = laid.flatMap(({ sheets: all }) => all)
    const path = join(folder, `${stoves.length}-${paper}-${sheets.length}.pdf`)
    const { bytes } = await writePdf(sheets, { title: 'Bare', ...ISSUE, fonts })
    writeFileSync(path, bytes)
    const pages = readPdfStrokes(path)
    expect(pages).toHaveLength(sheets.length)
    let page = 0
    return laid.flatMap(({ drawings, sheets: own }) => {
      const found = new Map<string, Primitive[]>(drawings.map(({ title }) => [title, []]))
      const whole = new Map(drawings.map(({ title, shapes }) => [title, new Set(shapes)]))
      for (const { pieces } of own) {
        let strokes = pages[page] as readonly Primitive[]
        page += 1
        for (const { title, clip, at, shapes } of pieces) {
          const here = strokes.slice(0, shapes.length)
          strokes = strokes.slice(shapes.length)
          // In the order in which layers are laid on each other. Joins and their marks are the pieces' own.
          const drawn = LAYERS.flatMap((layer) => shapes.filter((shape) => shape.layer === layer))
          const own = here.filter((_, index) => whole.get(title)?.has(drawn[index] as Shape))
          found.get(title)?.push(...own.map((item) => moved(item, clip.left - at.x, clip.bottom - at.y)))
        }
        expect(strokes).toEqual([])
      }
      const piecesOf = (title: string): number =>
        own.reduce((sum, { pieces }) => sum + pieces.filter((piece) => piece.title === title).length, 0)
      return drawings.map(({ title }) => {
        const items = found.get(title) ?? []
        return piecesOf(title) > 1 ? once(items) : items
      })
    })
  }

  const check = async (stoves: readonly Stove[], from: number, paper: PaperName): Promise<number> => {
    const made = MADE.filter(({ index }) => index >= from && index < from + stoves.length)
    const drawings = await readBack(stoves, from, paper)
    expect(drawings).toHaveLength(made.length)
    return made.reduce((sum, each, index) => sum + compared(each, drawings[index] ?? []), 0)
  }

  it.for(['A4', 'Letter', 'A3'] as const)(
    'has everything of our own stoves in its place on %s',
    async (paper, context) => {
      needs(context, 'mutool')
      expect(await check(OWN, 0, paper)).toBeGreaterThan(600)
    },
  )

  it('has everything of the random stoves in its place on A4', {
    timeout: 600_000,
  }, async (context) => {
    needs(context, 'mutool')
    let openings = 0
    for (let from = OWN.length; from < ALL.length; from += 50)
      openings += await check(ALL.slice(from, from + 50), from, 'A4')
    expect(openings).toBeGreaterThan(OPENINGS)
  })
})
