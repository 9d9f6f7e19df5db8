import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { JsonValue } from '#stove/document/json.ts'
import type { ShelfFile } from '#stove/document/shelf.ts'
import {
  formatShelfItem,
  readBitItem,
  readCanItem,
  readFuelItem,
  readPotItem,
} from '#stove/document/shelfItem.ts'
import { canValue, draftOf, EMPTY_CAN, fieldOfProblem } from '#web/shelf/canDraft.ts'
import { fitSquares } from '#web/shelf/fits.ts'
import { shelfOf } from '#web/shelf/shelfOf.ts'

const file = JSON.parse(readFileSync('examples/shelf.json', 'utf8')) as ShelfFile
const cans = Object.entries(file.cans) as unknown as readonly (readonly [string, JsonValue])[]

describe('a can in its form', () => {
  it.each(cans)('goes in and comes out the same: %s', (name, value) => {
    const out = canValue(draftOf(name, value))
    expect(out).toEqual(value)
    expect(readCanItem(out, name)).toEqual(readCanItem(value, name))
  })

  // 266 mm over π is 84.67 mm, a millimetre of tape 0.32 mm across.
  it.each([
    ['266 mm round', '84.7 mm ± 0.3 mm'],
    ['10 1/2 in round', '84.9 mm ± 0.3 mm'],
    ['266 mm ± 3 mm round', '84.7 mm ± 1.0 mm'],
    ['266 round', '266 round'],
    ['84.6 mm', '84.6 mm'],
  ])('reads a tape laid round it: %s', (typed, kept) => {
    expect(
      canValue({ ...EMPTY_CAN, name: 'tin', bodyDiameter: typed, height: '266 mm round' }),
    ).toMatchObject({
      bodyDiameter: kept,
      height: '266 mm round',
    })
  })

  it('keeps what the form does not show', () => {
    const beads = [{ from: '62 mm', to: '86 mm' }]
    expect(canValue(draftOf('tin', { code: '404x700', beads, endWall: '0.3 mm' }))).toEqual({
      code: '404x700',
      beads,
      endWall: '0.3 mm',
    })
  })

  it('says at which field something is wrong', () => {
    const fields = (draft: Partial<typeof EMPTY_CAN>): readonly (string | null)[] => {
      const read = readCanItem(canValue({ ...EMPTY_CAN, ...draft }), 'can')
      return read.ok ? [] : read.problems.map(({ field }) => fieldOfProblem(field))
    }
    expect(fields({ seamDiameter: '87', height: '115 mm' })).toEqual(['seamDiameter'])
    expect(fields({ code: '40x700' })).toEqual(['code'])
    expect(fields({ code: '404x700', top: { end: 'friction', opening: '' } })).toEqual(['top.opening'])
    expect(fields({ height: '115 mm' })).toEqual([null])
    expect(fields({ code: '404x700' })).toEqual([])
  })
})

describe('what else lies on a shelf', () => {
  it('reads bits, step drills, fuels and pots, and says what is wrong with them at their own fields', () => {
    expect(readBitItem('5/8 in')).toMatchObject({ ok: true, value: [{ name: '5/8 in' }] })
    expect(readBitItem({ step: ['6 mm', '8 mm'] })).toMatchObject({
      ok: true,
      value: [{ name: '6 mm step' }, { name: '8 mm step' }],
    })
    expect(readBitItem('6')).toMatchObject({ ok: false })
    expect(readPotItem({ diameter: '120 mm' })).toMatchObject({ ok: true, value: { diameter: 0.12 } })
    expect(readPotItem({ diameter: '120' })).toMatchObject({ ok: false, problems: [{ field: 'diameter' }] })
    expect(readFuelItem({ kind: 'twigs', moisture: '14 %' })).toMatchObject({
      ok: true,
      value: { kind: 'twigs', moisture: 0.14 },
    })
    expect(readFuelItem({ kind: 'twigs', moisture: '14' })).toMatchObject({
      ok: false,
      problems: [{ field: 'moisture' }],
    })
    expect(readFuelItem({ kind: 'twigs', level: '50 mm' })).toMatchObject({ ok: false })
    expect(readFuelItem({})).toMatchObject({ ok: false })
  })

  it('writes each thing as a shelf file would', () => {
    expect(formatShelfItem('bit', '6 mm')).toBe('"6 mm"\n')
    expect(JSON.parse(formatShelfItem('can', { height: '90 mm', code: '404x700' }))).toEqual({
      code: '404x700',
      height: '90 mm',
    })
    expect(Object.keys(JSON.parse(formatShelfItem('can', { height: '90 mm', code: '404x700' })))).toEqual([
      'code',
      'height',
    ])
  })

  it('makes a shelf of what reads, and tells two cans of one name apart', () => {
    const shelf = shelfOf([
      { kind: 'can', name: 'tin', value: { code: '404x700' } },
      { kind: 'can', name: 'tin', value: { code: '307x409' } },
      { kind: 'can', name: 'spoilt', value: { code: 'x' } },
      { kind: 'bit', name: '6 mm', value: '6 mm' },
      { kind: 'bit', name: 'spoilt', value: null },
    ])
    expect([...shelf.cans].map(([name, { code }]) => [name, code])).toEqual([
      ['tin', '404x700'],
      ['tin 2', '307x409'],
    ])
    expect(shelf.bits.map(({ name }) => name)).toEqual(['6 mm'])
  })
})

describe('the squares of the fits', () => {
  const shelf = shelfOf(cans.map(([name, value]) => ({ kind: 'can' as const, name, value })))
  const squares = fitSquares(shelf.cans)

  it('holds every can with every other and none with itself', () => {
    expect(squares).toHaveLength(shelf.cans.size)
    for (const [r, row] of squares.entries())
      for (const [c, square] of row.entries()) {
        if (r === c) expect(square).toBeNull()
        else expect(square?.sentence).toMatch(/^(With the top of .* cut out: )?.+\.$/)
      }
  })

  it('opens a can that is closed, for it takes nothing else in', () => {
    const at = (inner: string, outer: string) =>
      squares.flat().find((one) => one?.inner === inner && one.outer === outer)
    expect(at('tall tomato can', 'coffee can')).toMatchObject({ cutOpen: true, fit: { kind: 'drops in' } })
    expect(at('tall tomato can', 'bean can')?.cutOpen).toBe(false)
  })
})
