import { describe, expect, test } from 'vitest'
import { fromMillimetres as mm, toMillimetres } from '#basis/units.ts'
import reference from '#reference/canFits.json' with { type: 'json' }
import { canFromCode, measuredCan } from '#stove/can/fromCode.ts'
import { fitCans, fitDisc, fitMatrix, fitRing } from '#stove/fit/fit.ts'
import type { Clearance } from '#stove/fit/fitKind.ts'
import type { Can, CanEnd } from '#stove/model.ts'
import { cup, measured } from './sampleCans.ts'

const open = { top: { kind: 'open' } } as const
const inMillimetres = (clearance: Clearance | null) =>
  clearance === null
    ? null
    : [clearance.least, clearance.nominal, clearance.most].map((play) =>
        Number(toMillimetres(play).toFixed(4)),
      )

describe('fitCans', () => {
  test('603 in 610: the outsides leave the published gap', () => {
    const { radialGap_mm } = reference.rows[0]!
    const gap = (canFromCode('610x708').seamDiameter.value - canFromCode('603x700').seamDiameter.value) / 2
    expect(toMillimetres(gap as never)).toBeCloseTo(radialGap_mm, 3)
  })

  test('603 in 610: drops in with what the outer’s seam and wall leave of that gap', () => {
    // inside of 610: 168.275 − 2 × 1.35 − 2 × 0.27 = 165.035; less 157.1625 is 7.8725.
    // 610 is good to ±(0.5 + 0.5), 603 over its seam to ±0.5: ±1.5.
    const fit = fitCans(canFromCode('603x700'), canFromCode('610x708', open))
    expect(fit).toMatchObject({ kind: 'drops in', certain: true, through: 'top' })
    expect(inMillimetres(fit.clearance)).toEqual([6.3725, 7.8725, 9.3725])
    expect(fit.sentence).toBe(
      '603x700 drops into 610x708 with 6.4 mm (1/4 in) to 9.4 mm (3/8 in) of play on the diameter.',
    )
  })

  test('the other way round it goes over the outside with the same play', () => {
    const fit = fitCans(canFromCode('610x708', open), canFromCode('603x700'))
    expect(fit).toMatchObject({ kind: 'goes over the outside', certain: true })
    expect(inMillimetres(fit.clearance)).toEqual([6.3725, 7.8725, 9.3725])
  })

  test('little play slides', () => {
    // 99.6 inside, 98.8 outside: 0.8 mm, less than 1.5 % of 99.6.
    const fit = fitCans(cup(98.8, 90), cup(100, 90))
    expect(fit).toMatchObject({ kind: 'slides in', certain: true })
    expect(inMillimetres(fit.clearance)).toEqual([0.8, 0.8, 0.8])
  })

  test('tolerance that reaches past nothing takes the certainty away, and the sentence says what may happen', () => {
    // 99.6 ± 0.5 less 98.8 ± 0.5: from −0.2 to 1.8 mm.
    const loose = (across: number): Can => cup(across, 90, 0.2, { bodyDiameter: measured(across, 0.5) })
    const fit = fitCans(loose(98.8), loose(100), { innerName: 'bean can', outerName: 'soup can' })
    expect(fit).toMatchObject({
      kind: 'slides in',
      certain: false,
      atTightest: 'sits on the rim',
      atLoosest: 'drops in',
    })
    expect(fit.sentence).toBe(
      'bean can slides into soup can with anything from 0.2 mm (0.008 in) too wide to 1.8 mm (5/64 in) of play on the diameter; as ' +
        'loosely as the two are measured it may also sit on the rim, or drop in. Measure both to be sure.',
    )
  })

  describe('a seam against a ledge', () => {
    const lipped = (top: CanEnd): Can =>
      measuredCan({
        seamDiameter: measured(90),
        bodyDiameter: measured(87),
        height: measured(110),
        bottom: { kind: 'drawn' },
        top,
      })
    const ledged = (opening: number): Can =>
      measuredCan({
        seamDiameter: measured(108),
        bodyDiameter: measured(105),
        height: measured(120),
        top: { kind: 'pull-off', opening: measured(opening) },
      })

    test('snaps past when it is wider by less than 0.6 % of the opening', () => {
      // 90 over 89.6: 0.4 mm; 0.6 % of 89.6 is 0.54 mm.
      const fit = fitCans(lipped({ kind: 'open' }), ledged(89.6))
      expect(fit).toMatchObject({ kind: 'snaps on the lip', certain: true })
      expect(inMillimetres(fit.clearance)).toEqual([-0.4, -0.4, -0.4])
      expect(fit.sentence).toContain('the seam of')
    })

    test('the ledge snaps over it as well', () => {
      expect(fitCans(ledged(89.6), lipped({ kind: 'open' })).kind).toBe('snaps on the lip')
    })

    test('hangs by it when it is wider than that', () => {
      const fit = fitCans(lipped({ kind: 'open' }), ledged(88), { innerName: 'fuel can', outerName: 'shell' })
      expect(fit.kind).toBe('sits on the rim')
      expect(fit.sentence).toBe(
        'fuel can hangs in shell by its seam, which is 2 mm (5/64 in) wider than the opening.',
      )
    })

    test('stands on it when the body does not go in either', () => {
      const fit = fitCans(lipped({ kind: 'open' }), ledged(80), { innerName: 'fuel can', outerName: 'shell' })
      expect(fit.sentence).toBe(
        'fuel can sits on the rim of shell: it is 10 mm (25/64 in) wider than the opening.',
      )
    })

    test('a body that does not clear the opening cannot snap, for want of a lip', () => {
      expect(fitCans(cup(90, 110), ledged(89.6)).kind).toBe('sits on the rim')
    })
  })

  test('bare edge on bare edge does not go', () => {
    const tube = cup(100, 80, 0.2, { bottom: { kind: 'cut' } })
    const fit = fitCans(tube, cup(100.1, 90))
    expect(fit).toMatchObject({ kind: 'does not go', certain: true })
    expect(fit.sentence).toContain('bare edge meets bare edge')
  })

  test('two closed cans: the smaller goes nowhere, the larger stands on the other', () => {
    const [small, large] = [canFromCode('300x407'), canFromCode('404x700')]
    expect(fitCans(small, large)).toMatchObject({ kind: 'does not go', clearance: null, certain: true })
    expect(fitCans(small, large).sentence).toContain('cut an end out first')
    expect(fitCans(large, small)).toMatchObject({ kind: 'sits on the rim', clearance: null, certain: true })
  })

  test('turns the outer can over for its open bottom, unless told which end', () => {
    const outer = canFromCode('404x700', { bottom: { kind: 'open' } })
    const inner = canFromCode('300x407')
    expect(fitCans(inner, outer)).toMatchObject({ kind: 'drops in', through: 'bottom' })
    expect(fitCans(inner, outer).sentence).toContain('through its bottom end')
    expect(fitCans(inner, outer, { through: 'top' }).kind).toBe('does not go')
  })

  test('names a can nobody named by its size', () => {
    expect(fitCans(cup(60, 80), cup(100, 90)).sentence).toMatch(
      /^the can of 60 mm \(2 3\/8 in\) by 80 mm \(3 1\/8 in\) drops into the can of 100 mm \(3 15\/16 in\) by 90 mm \(3 9\/16 in\)/,
    )
  })
})

describe('fitRing and fitDisc', () => {
  const can = canFromCode('300x407', {
    seamDiameter: measured(76.2, 0.2),
    bodyDiameter: measured(73.4, 0.2),
    bottom: { kind: 'drawn' },
    ...open,
  })

  test('a lid ring that holds a can by its seam', () => {
    // 75 ± 0.1 against a seam of 76.2 ± 0.2: 0.9 to 1.5 mm too wide, body 73.4 goes through.
    const fit = fitRing(can, { opening: measured(75, 0.1), name: 'the lid ring' })
    expect(fit).toMatchObject({ kind: 'sits on the rim', certain: true })
    expect(fit.sentence).toBe(
      '300x407 hangs in the lid ring by its seam, which is 0.9 mm (0.035 in) to 1.5 mm (0.059 in) wider than the opening.',
    )
  })

  test('a ring wide enough lets it drop through', () => {
    expect(fitRing(can, { opening: measured(80, 0.1) }).kind).toBe('drops in')
  })

  test('a ring narrower than the can’s mouth lies in the can', () => {
    // mouth 73.4 − 0.34 = 73.06
    const fit = fitRing(can, { opening: measured(30, 0.1), outside: measured(70, 0.2) })
    expect(fit.kind).toBe('goes over the outside')
  })

  test('a disc drops into a can or lies on its rim', () => {
    expect(fitDisc({ diameter: measured(70, 0.2) }, can).kind).toBe('drops in')
    expect(fitDisc({ diameter: measured(75, 0.2), name: 'concentrator' }, can)).toMatchObject({
      kind: 'sits on the rim',
      certain: true,
    })
  })
})

describe('fitMatrix', () => {
  test('has every ordered pair once, under the shelf’s names', () => {
    const shelf = new Map([
      ['beans', canFromCode('300x407', open)],
      ['tomatoes', canFromCode('401x411', open)],
      ['juice', canFromCode('404x700', open)],
    ])
    const matrix = fitMatrix(shelf)
    expect([...matrix.keys()]).toEqual([...shelf.keys()])
    for (const [inner, row] of matrix) {
      expect([...row.keys()]).toEqual([...shelf.keys()].filter((outer) => outer !== inner))
      for (const [outer, fit] of row) {
        expect(fit.sentence).toContain(inner)
        expect(fit.sentence).toContain(outer)
      }
    }
    expect(matrix.get('beans')?.get('juice')?.kind).toBe('drops in')
    expect(matrix.get('juice')?.get('beans')?.kind).toBe('goes over the outside')
    // mouth of the juice can 107.95 − 2.7 − 0.4 = 104.85, tomatoes 103.1875 over the seam: 1.66 mm
    expect(inMillimetres(matrix.get('tomatoes')!.get('juice')!.clearance)![1]).toBeCloseTo(1.6625, 4)
  })
})

test('a plain bottom is no mouth however the end is sunk', () => {
  const sunk = canFromCode('404x700', { top: { kind: 'plain', countersink: mm(6) } })
  expect(fitCans(canFromCode('211x300'), sunk).kind).toBe('does not go')
})
