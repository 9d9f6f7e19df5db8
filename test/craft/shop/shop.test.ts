import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { fromMillimetres } from '#basis/units.ts'
import { cansToFind } from '#craft/shop/cans.ts'
import { cutsOf } from '#craft/shop/cuts.ts'
import { drillSchedule } from '#craft/shop/drilling.ts'
import { type ShopList, shopList } from '#craft/shop/list.ts'
import { bitFor, bitText, makingOf, openingsIn } from '#craft/shop/making.ts'
import { bitSwaps, wantedBits } from '#craft/shop/swap.ts'
import { readStove } from '#stove/document/read.ts'
import { readShelf } from '#stove/document/shelf.ts'
import type { Can, Shelf, Stove } from '#stove/model.ts'
import { holeCount, openingArea } from '#stove/opening/area.ts'
import { exampleNamed, shelfExample, stoveExamples } from '../../stove/document/examples.ts'
import { everyLayout } from '../everyLayout.ts'
import { anyStove } from '../randomStoves.ts'
import { testStoves } from '../stoves.ts'

const shelf = orThrow(readShelf(shelfExample.text))
const examples = stoveExamples.map(({ name, text }) => ({ name, stove: orThrow(readStove(text)) }))
const named = (name: string): Stove => orThrow(readStove(exampleNamed(name).text))
const without = (...names: readonly string[]): Shelf => ({
  ...shelf,
  bits: shelf.bits.filter(({ name }) => !names.includes(name.replace(' step', ''))),
})
const listOf = (stove: Stove, given: Shelf | null = shelf): ShopList =>
  shopList(stove, { shelf: given, outlook: null, whatIf: [] })

/** What must hold of the shop list of every stove there is. */
const isWhole = (stove: Stove): void => {
  const { drilling, cuts, cans, tin } = listOf(stove)
  for (const { part, opening, what } of openingsIn(stove)) {
    const bit = bitFor(what)
    const jobs = drilling
      .filter(({ purpose }) => purpose === 'hole')
      .flatMap((job) => job.holes.map((holes) => ({ ...holes, diameter: job.diameter })))
      .filter((holes) => holes.part === part && holes.opening === opening)
    expect(jobs.length, `${part}, ${opening}`).toBe(bit === null ? 0 : 1)
    if (bit !== null) {
      expect(jobs[0]?.count).toBe(holeCount(what))
      expect(Math.abs((jobs[0]?.diameter ?? 0) - bit.diameter)).toBeLessThan(6e-5)
    }
    // Drilled feet first, then the snips: two cuts; all else in one.
    const cutOf = cuts.filter((cut) => cut.part === part && cut.opening === opening)
    expect(cutOf.length, `${part}, ${opening}`).toBe(makingOf(what) === 'foot and snips' ? 2 : 1)
  }
  for (const { count, holes } of drilling) expect(holes.reduce((sum, one) => sum + one.count, 0)).toBe(count)
  // Each bit once, pilot first, then from small to large.
  const bits = drilling.map(({ bit, purpose }) => `${purpose} ${bit}`)
  expect(new Set(bits).size).toBe(bits.length)
  const sizes = drilling.filter(({ purpose }) => purpose === 'hole').map(({ diameter }) => diameter)
  expect(sizes).toEqual([...sizes].sort((a, b) => a - b))
  expect(drilling.slice(1).every(({ purpose }) => purpose === 'hole')).toBe(true)
  expect(cans.length + tin.length).toBe(stove.parts.size)
  expect(JSON.stringify(listOf(stove))).not.toMatch(/undefined|NaN|Infinity/)
}

describe('every opening is cut once and drilled with one bit', () => {
  test.each(examples)('$name', ({ stove }) => isWhole(stove))
  test.each(testStoves.map((make) => make()))('$name', isWhole)
  test('100 random stoves of every layout', () => {
    for (const stove of everyLayout(100)) isWhole(stove)
  })
  test('any stove', () => {
    fc.assert(fc.property(anyStove, isWhole), { numRuns: 100 })
  })
})

describe('the order of cuts', () => {
  const orderOf = (stove: Stove, part: string): readonly string[] =>
    cutsOf(stove).flatMap((cut) => (cut.part === part ? [cut.what] : []))

  test('a can is drilled while an end is on, then its windows, then the end goes, last it is cut down', () => {
    const what = orderOf(named('redshank'), 'pot stand')
    const at = (words: RegExp): number => what.findIndex((text) => words.test(text))
    expect(at(/^cut the top out/)).toBe(0)
    expect(at(/^drill 10 holes/)).toBeGreaterThan(at(/^cut the top out/))
    expect(at(/^drill the round feet/)).toBeLessThan(at(/^cut 6 windows/))
    expect(at(/^cut 6 windows/)).toBeLessThan(at(/^cut the bottom out/))
    expect(at(/^cut the bottom out/)).toBeLessThan(
      at(/^trim the top until the can is 88 mm \(3 7\/16 in\) high/),
    )
  })

  test('where the bottom is cut off, the line that heights count from is struck first', () => {
    const what = orderOf(named('greylag'), 'fuel can')
    expect(
      what.findIndex((text) => /^strike a line all round, 150 mm \(5 7\/8 in\) below the top/.test(text)),
    ).toBe(1)
    expect(what.at(-1)).toMatch(/^trim the bottom/)
  })

  test('a disc is opened while there is tin to clamp, and its vanes are bent last', () => {
    expect(
      orderOf(named('redshank'), 'concentrator').map((text) => text.split(' ').slice(0, 3).join(' ')),
    ).toEqual(['cut the bore', 'cut the disc', 'chisel 8 vanes'])
  })
})

describe('the drill schedule', () => {
  test('pilots what is wider than 4.5 mm and nothing else, with a small bit of the shelf', () => {
    const [pilot] = drillSchedule(named('redshank'), shelf)
    expect(pilot).toMatchObject({ purpose: 'pilot', bit: '3 mm', owned: true })
    // 11 intake, 18 secondary, 10 breathers, 6 feet; not the 19 of 4 mm.
    expect(pilot?.count).toBe(11 + 18 + 10 + 6)
    expect(drillSchedule(named('redshank'), without('3 mm'))[0]?.bit).toBe('4 mm')
  })

  test('takes a step drill above 13 mm, without a block in its way', () => {
    const jobs = drillSchedule(named('heron'), shelf)
    const wide = jobs.filter(({ diameter }) => diameter > 0.013)
    expect(wide.length).toBeGreaterThan(0)
    for (const { tool, holes } of wide) {
      expect(tool).toBe('step drill')
      for (const { held } of holes) expect(held).toContain('No block here')
    }
  })

  test('says what goes into the can, and that it passes the ring it has to pass', () => {
    const intake = drillSchedule(named('redshank'), shelf).find(({ bit }) => bit === '12 mm')
    // The ring of the lever lid is 86.2 mm: 4 mm of play leave 82.2 mm.
    expect(intake?.holes[0]?.held).toContain('through its open top, up to 81 mm (3 3/16 in) thick')
  })

  test('without a shelf, nobody says what is owned', () => {
    expect(drillSchedule(named('heron'), null).every(({ owned }) => owned === null)).toBe(true)
    expect(listOf(named('heron'), null).missing).toBeNull()
  })
})

describe('cans', () => {
  test('two of one size are told as two, and each gets a can of its own from the shelf', () => {
    const { sizes, cans } = listOf(named('greylag'))
    expect(sizes.find(({ size }) => size.startsWith('502x608'))).toMatchObject({
      count: 2,
      parts: ['fuel can', 'pot stand'],
    })
    expect(cans.map(({ fromShelf }) => fromShelf)).toEqual([null, 'coffee can', 'second coffee can'])
  })

  test('a trimmed can is bought at its full height, in both systems', () => {
    const stand = cansToFind(named('redshank'), shelf).find(({ part }) => part === 'pot stand')
    expect(stand?.boughtHeight).toBeCloseTo(0.1190625, 9)
    expect(stand?.measure.join(' ')).toContain('at least 119.1 mm (4 11/16 in) high as bought')
    expect(stand?.fromShelf).toBe('peach can')
  })

  test('no can of the shelf is taken whose end is not what is asked for', () => {
    const whole = new Map(shelf.cans)
    whole.set('lever-lid tin', { ...(whole.get('lever-lid tin') as Can), top: { kind: 'open' } })
    expect(cansToFind(named('redshank'), { ...shelf, cans: whole })[0]?.fromShelf).toBeNull()
  })
})

describe('a bit that is not on the shelf', () => {
  const swaps = bitSwaps(named('redshank'), without('4 mm'))

  test('is offered as the next smaller and the next larger, with as many holes and with the same area', () => {
    expect(swaps.map(({ instead, manner, rows }) => [instead.name, manner, rows[0]?.to])).toEqual([
      ['3 mm', 'same count', 19],
      // 19 × 16 / 9 = 33.8
      ['3 mm', 'same area', 34],
      ['5 mm', 'same count', 19],
      // 19 × 16 / 25 = 12.2
      ['5 mm', 'same area', 12],
    ])
    expect(swaps.map(({ areaChange }) => Number(areaChange.toFixed(4)))).toEqual([
      -0.4375, 0.0066, 0.5625, -0.0132,
    ])
  })

  test('each swap is a whole stove with that bit and nothing else changed', () => {
    const planned = named('redshank')
    for (const { stove, rows, instead } of swaps) {
      const floor = stove.parts.get('fuel can')?.openings.get('floor')
      expect(floor).toMatchObject({ diameter: instead.diameter })
      expect(floor === undefined ? 0 : holeCount(floor)).toBe(rows[0]?.to)
      for (const { part, opening, what } of openingsIn(planned))
        if (opening !== 'floor') expect(stove.parts.get(part)?.openings.get(opening)).toEqual(what)
    }
  })

  test('no other count is offered that parts a row from the damper over it', () => {
    const intake = bitSwaps(named('redshank'), without('12 mm'))
    expect(intake.length).toBeGreaterThan(0)
    expect(intake.every(({ manner }) => manner === 'same count')).toBe(true)
  })

  test('keeps the place that stays whole, where another count is offered', () => {
    const heron = bitSwaps(named('heron'), without('14 mm'))
    for (const { stove } of heron) {
      const intake = stove.parts.get('fuel can')?.openings.get('intake')
      expect(intake?.kind === 'row' ? intake.leftOut.length : 0).toBe(1)
    }
  })

  test('whatever the shelf, the same area lies nearer the planned than the same count', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...examples),
        fc.array(fc.integer({ min: 2, max: 40 }), { minLength: 1, maxLength: 6 }),
        ({ stove }, sizes) => {
          const bits = sizes.map((size) => ({ name: `${size / 2} mm`, diameter: fromMillimetres(size / 2) }))
          const all = bitSwaps(stove, { bits, cans: new Map() })
          for (const one of all) {
            const planned = one.rows.reduce((sum, { part, opening }) => {
              const what = stove.parts.get(part)?.openings.get(opening)
              return sum + (what === undefined ? 0 : openingArea(what))
            }, 0)
            const now = one.rows.reduce((sum, { part, opening }) => {
              const what = one.stove.parts.get(part)?.openings.get(opening)
              return sum + (what === undefined ? 0 : openingArea(what))
            }, 0)
            expect(one.areaChange).toBeCloseTo(now / planned - 1, 12)
            const plain = all.find(
              (other) =>
                other.manner === 'same count' &&
                other.instead.name === one.instead.name &&
                other.wanted.diameter === one.wanted.diameter,
            )
            if (one.manner === 'same area')
              expect(Math.abs(one.areaChange)).toBeLessThan(Math.abs(plain?.areaChange ?? 0))
          }
        },
      ),
      { numRuns: 40 },
    )
  })
})

test('every bit that is wanted is named once', () => {
  for (const { stove } of examples) {
    const sizes = wantedBits(stove).map(({ diameter }) => diameter)
    expect(new Set(sizes).size).toBe(sizes.length)
  }
})

test('a bit is named in both systems', () => {
  expect(bitText({ name: '4 mm', diameter: fromMillimetres(4) })).toBe('4 mm (5/32 in)')
  expect(bitText({ name: '5/8 in', diameter: fromMillimetres(15.875) })).toBe('5/8 in (15.9 mm)')
  expect(bitText({ name: '14 mm step', diameter: fromMillimetres(14) })).toBe('14 mm (35/64 in) step')
  expect(bitText({ name: '#7', diameter: fromMillimetres(5.105) })).toMatch(/^#7, 5\.1 mm \(/)
})

test('fasteners come from fixing holes, from bands, and from what stands off', () => {
  const what = (stove: Stove): readonly string[] =>
    listOf(stove).fasteners.map(({ count, what, where }) => `${count} ${what} ${where}`)
  expect(what(named('heron')).join()).toMatch(
    /3 M3 \(#4\) screws with nuts.*never galvanised.*“grate screws” on “fuel can”/,
  )
  expect(what(named('greylag')).join()).toMatch(/3 M4 \(#8\) screws/)
  expect(what(named('redshank')).join()).toMatch(/through the overlap of “damper”/)
  // The seat of the lid ring holds a can, not a screw.
  expect(what(named('greylag'))).toHaveLength(1)
})

test('the time is the sum of its lines, and more holes take longer', () => {
  const { time } = listOf(named('redshank'))
  expect(time.least).toBeCloseTo(
    time.lines.reduce((sum, { least }) => sum + least, 0),
    9,
  )
  expect(time.most).toBeGreaterThan(time.least)
  expect(time.basis).toContain('no source')
  expect(listOf(named('greylag')).time.lines.find(({ what }) => what === 'holes drilled')?.count).toBe(
    3 + 20 + 27 + 12,
  )
})

test('the cautions travel with the list as data', () => {
  expect(listOf(named('redshank')).cautions.join(' ')).toContain('carbon monoxide')
})

test('rates and orders that have no source say so', () => {
  for (const file of ['time', 'cuts', 'finishing', 'drilling'])
    expect(readFileSync(new URL(`../../../src/craft/shop/${file}.ts`, import.meta.url), 'utf8')).toMatch(
      /[Cc]ommon practice, no source/,
    )
})
