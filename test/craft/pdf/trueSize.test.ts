import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import type { PaperName } from '#craft/sheet/paper.ts'
import { templatesPdf } from '#craft/templates.ts'
import reference from '#reference/wrapLength.json' with { type: 'json' }
import type { RowOpening, Stove } from '#stove/model.ts'
import { needs } from '../../outsideProgram.ts'
import { fonts } from '../fonts.ts'
import { bareShell, largeStove, pocketStove, riserStove, round, row, testStoves } from '../stoves.ts'
import { type ReadCircle, type ReadPage, type ReadPoint, readPdf } from './mutool.ts'

/** True size as readers of others measure it. The bar: 0.05 mm. */
const TRUE = 0.05

const folder = mkdtempSync(join(tmpdir(), 'tinwright-true-size-'))
afterAll(() => rmSync(folder, { recursive: true }))

const PAPERS: readonly PaperName[] = ['A4', 'Letter']

const write = async (stove: Stove, paper: PaperName): Promise<string> => {
  const { pdf } = await templatesPdf(stove, { paper, date: '2031-05-17', version: '0.1.0', fonts })
  const path = join(folder, `${stove.name.replaceAll(/\W/g, '-')}-${paper}.pdf`)
  writeFileSync(path, pdf)
  return path
}

const near = (value: number, wanted: number): boolean => Math.abs(value - wanted) <= TRUE

const expectNear = (value: number, wanted: number): void => {
  expect(Math.abs(value - wanted), `${value} for ${wanted}`).toBeLessThanOrEqual(TRUE)
}

/** Holes of one size on a page, black circles only. */
const holes = ({ circles }: ReadPage, diameter: number): readonly ReadCircle[] =>
  circles.filter((circle) => circle.grey === 0 && near(circle.diameter, diameter))

/** Circles gathered into level rows, each from the left. */
const levels = (circles: readonly ReadCircle[]): readonly (readonly ReadCircle[])[] => {
  const rows = new Map<string, ReadCircle[]>()
  for (const circle of circles) {
    const key = circle.centre.y.toFixed(2)
    rows.set(key, [...(rows.get(key) ?? []), circle])
  }
  return [...rows.values()].map((row) => row.toSorted((a, b) => a.centre.x - b.centre.x))
}

const distance = (a: ReadPoint, b: ReadPoint): number => Math.hypot(a.x - b.x, a.y - b.y)

describe('a page measured by MuPDF', () => {
  it('has the exact size of its paper', async (context) => {
    needs(context, 'mutool')
    for (const [paper, sides] of [
      ['A4', reference.sheets.A4_mm],
      ['Letter', reference.sheets.Letter_mm],
    ] as const) {
      for (const make of testStoves) {
        for (const { width, height } of readPdf(await write(make(), paper))) {
          const [short = 0, long = 0] = [width, height].toSorted((a, b) => a - b)
          expect(short).toBeCloseTo(sides[0] as number, 3)
          expect(long).toBeCloseTo(sides[1] as number, 3)
        }
      }
    }
  })

  it('bears a bar of 100 mm and one of 4 in each way', async (context) => {
    needs(context, 'mutool')
    for (const paper of PAPERS) {
      for (const make of testStoves) {
        for (const { lines } of readPdf(await write(make(), paper))) {
          const level = lines
            .filter(({ from, to }) => near(from.y, to.y))
            .map(({ from, to }) => Math.abs(to.x - from.x))
          const upright = lines
            .filter(({ from, to }) => near(from.x, to.x))
            .map(({ from, to }) => Math.abs(to.y - from.y))
          for (const lengths of [level, upright]) {
            expect(lengths.some((length) => near(length, 100))).toBe(true)
            expect(lengths.some((length) => near(length, 4 * 25.4))).toBe(true)
          }
        }
      }
    }
  })
})

interface RowCase {
  readonly stove: () => Stove
  readonly what: string
  /** As the stove says it [mm]. */
  readonly diameter: number
  readonly count: number
  readonly drilled: number
  /** All the way round [mm]. */
  readonly round: number
}

const ROWS: readonly RowCase[] = [
  {
    stove: pocketStove,
    what: 'secondary of the fuel can',
    diameter: 5,
    count: 18,
    drilled: 18,
    round: Math.PI * 72.9,
  },
  {
    stove: riserStove,
    what: 'secondary of the body',
    diameter: 6,
    count: 24,
    drilled: 24,
    round: Math.PI * 98.7,
  },
  {
    stove: largeStove,
    what: 'intake of the shell',
    diameter: 22.2,
    count: 14,
    drilled: 14,
    round: Math.PI * 165.2,
  },
  {
    stove: largeStove,
    what: 'preheat row of the shell',
    diameter: 9.5,
    count: 24,
    drilled: 21,
    round: Math.PI * 165.2,
  },
  {
    stove: largeStove,
    what: 'secondary of the fuel can',
    diameter: 8,
    count: 32,
    drilled: 32,
    round: Math.PI * 154.5,
  },
]

describe('a row of holes measured by MuPDF', () => {
  it.for(ROWS)(
    '$what: diameters and hole to hole',
    async ({ stove, diameter, count, drilled, round: length }, context) => {
      needs(context, 'mutool')
      for (const paper of PAPERS) {
        let pairs = 0
        let seen = 0
        for (const page of readPdf(await write(stove(), paper))) {
          for (const row of levels(holes(page, diameter))) {
            seen += row.length
            for (const circle of row) {
              expectNear(circle.diameter, diameter)
              expectNear(circle.oval, 0)
            }
            for (const [index, circle] of row.slice(1).entries()) {
              const before = row[index] as ReadCircle
              const steps = Math.round(distance(before.centre, circle.centre) / (length / count))
              expect(steps).toBeGreaterThan(0)
              expectNear(distance(before.centre, circle.centre), (steps * length) / count)
              pairs += 1
            }
          }
        }
        // In overlaps a hole shows twice; nothing may be missing.
        expect(seen).toBeGreaterThanOrEqual(drilled)
        expect(pairs).toBeGreaterThanOrEqual(drilled - 4)
      }
    },
  )
})

/** A wrap 400 mm long: a body of 400 mm over π, less one thickness of paper. */
const BODY_400 = 400 / Math.PI - 0.1

/** High enough that no two pieces of its wrap share a page. */
const tall = (body: number, intake: RowOpening): Stove =>
  bareShell(body, { intake, high: row(round(5), 6, 100) })

const WRAPS = [
  {
    what: 'a wrap of 519 mm',
    stove: () => tall(165.1, row(round(22.2), 14, 30)),
    diameter: 22.2,
    count: 14,
    body: 165.1,
  },
  {
    what: 'a wrap of 400 mm',
    stove: () => tall(BODY_400, row(round(15), 11, 30)),
    diameter: 15,
    count: 11,
    body: BODY_400,
  },
]

describe('pieces laid together by their ringed crosses, measured by MuPDF', () => {
  /** Registration rings are 3.2 mm across and drawn with the finest pen. */
  const rings = ({ circles }: ReadPage): readonly ReadCircle[] =>
    circles.filter(({ diameter, pen }) => near(diameter, 3.2) && pen < 0.16)

  it.for(WRAPS)(
    'put the holes of $what where they belong',
    async ({ stove, diameter, count, body }, context) => {
      needs(context, 'mutool')
      for (const paper of PAPERS) {
        const pages = readPdf(await write(stove(), paper))
        const pieces = pages.filter((page) => holes(page, diameter).length > 0)
        expect(pieces.length).toBeGreaterThan(1)
        const assembled: ReadPoint[] = []
        let shift: ReadPoint = { x: 0, y: 0 }
        let last: ReadPage | null = null
        for (const page of pieces) {
          if (last !== null) {
            const rightmost = rings(last)
              .toSorted((a, b) => b.centre.x - a.centre.x)
              .slice(0, 2)
            const leftmost = rings(page)
              .toSorted((a, b) => a.centre.x - b.centre.x)
              .slice(0, 2)
            const high = (list: readonly ReadCircle[]): ReadPoint =>
              (list.toSorted((a, b) => a.centre.y - b.centre.y)[0] as ReadCircle).centre
            const [on, under] = [high(leftmost), high(rightmost)]
            shift = { x: shift.x + under.x - on.x, y: shift.y + under.y - on.y }
          }
          for (const { centre } of holes(page, diameter)) {
            const place = { x: centre.x + shift.x, y: centre.y + shift.y }
            const twin = assembled.find((other) => distance(other, place) < 5)
            if (twin === undefined) assembled.push(place)
            else expectNear(distance(twin, place), 0)
          }
          last = page
        }
        const across = assembled.toSorted((a, b) => a.x - b.x)
        expect(across).toHaveLength(count)
        const pitch = (Math.PI * (body + 0.1)) / count
        for (const [index, place] of across.entries())
          expectNear(distance(across[0] as ReadPoint, place), index * pitch)
      }
    },
  )
})

describe('discs measured by MuPDF', () => {
  it('have their outline, bore and holes at their radii', async (context) => {
    needs(context, 'mutool')
    for (const paper of PAPERS) {
      const pages = readPdf(await write(pocketStove(), paper))
      const page = pages.find(({ circles }) => circles.some(({ diameter }) => near(diameter, 82)))
      const outline = page?.circles.find(({ diameter }) => near(diameter, 82))
      if (page === undefined || outline === undefined) throw new Error('no concentrator')
      const bore = page.circles.find(({ diameter }) => near(diameter, 26))
      expectNear(distance(bore?.centre ?? { x: 0, y: 0 }, outline.centre), 0)
      const screws = holes(page, 3.2).filter(({ pen }) => pen > 0.16)
      expect(screws).toHaveLength(4)
      for (const { centre } of screws) expectNear(distance(centre, outline.centre), 37)
      const angles = screws
        .map(
          ({ centre }) =>
            (Math.atan2(centre.y - outline.centre.y, centre.x - outline.centre.x) * 180) / Math.PI,
        )
        .toSorted((a, b) => a - b)
      for (const [index, angle] of angles.slice(1).entries())
        expect(angle - (angles[index] as number)).toBeCloseTo(90, 1)
    }
  })
})

describe('a page drawn by Poppler', () => {
  /** Dots per millimetre of the drawing. */
  const RESOLUTION = 1200
  const DOT = 25.4 / RESOLUTION

  /** Longest unbroken run of ink in any row of a grey picture (PGM, binary) [mm]. */
  const longestRun = (pgm: Buffer): number => {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.toString('latin1', 0, 64))
    if (head === null) throw new Error('not a grey picture')
    const [width, height, start] = [Number(head[1]), Number(head[2]), head[0].length]
    let longest = 0
    for (let y = 0; y < height; y += 1) {
      let run = 0
      for (let x = 0; x < width; x += 1) {
        run = (pgm[start + y * width + x] ?? 255) < 128 ? run + 1 : 0
        if (run > longest) longest = run
      }
    }
    return longest * DOT
  }

  it('shows the foot’s longer bar 4 in long, the shorter one 100 mm', async (context) => {
    needs(context, 'pdftoppm')
    for (const paper of PAPERS) {
      const path = await write(pocketStove(), paper)
      const dots = (mm: number): string => String(Math.round(mm / DOT))
      const [, pageHeight] = paper === 'A4' ? reference.sheets.A4_mm : reference.sheets.Letter_mm
      // The bars of page 1, upright: the mm bar 43.5 mm above the foot of the page, the inch bar 1 mm lower.
      const strip = (name: string, fromFoot: number, tall: number): number => {
        const out = join(folder, name)
        const window = [
          '-x',
          '0',
          '-y',
          dots((pageHeight as number) - fromFoot),
          '-W',
          dots(120),
          '-H',
          dots(tall),
        ]
        execFileSync('pdftoppm', [
          '-r',
          String(RESOLUTION),
          '-gray',
          '-f',
          '1',
          '-l',
          '1',
          '-singlefile',
          ...window,
          path,
          out,
        ])
        return longestRun(readFileSync(`${out}.pgm`))
      }
      // Ink reaches half a tick's width, 0.07 mm, beyond the length at either end.
      expectNear(strip(`mm-${paper}`, 43.8, 0.6) - 0.14, 100)
      expectNear(strip(`in-${paper}`, 42.8, 0.6) - 0.14, 101.6)
    }
  })
})
