import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { orThrow, problemSentence } from '#basis/problem.ts'
import { type Fraction, fraction, metres } from '#basis/units.ts'
import { type ChargedFuel, chargeFuel } from '#science/fuel/charge.ts'
import { lowerHeatingValue, lowerHeatingValueAsFired } from '#science/fuel/composition.ts'
import { type Fuel, fuelTable } from '#science/fuel/table.ts'
import type { FuelCharge, OwnFuel } from '#stove/model.ts'
import { block, rod } from './pieces.ts'

const chargeOf = (kind: string, more: Partial<FuelCharge> = {}): FuelCharge => ({
  kind,
  moisture: null,
  level: metres(0.08),
  ...more,
})

const charged = (kind: string, width: number, more: Partial<FuelCharge> = {}): ChargedFuel =>
  orThrow(chargeFuel(chargeOf(kind, more), width))

const tableRow = (kind: string): Fuel => {
  const fuel = fuelTable.get(kind)
  if (fuel === undefined) throw new Error(`${kind} is not in the table`)
  return fuel
}

const own = (measured: Partial<OwnFuel>): OwnFuel => ({
  name: 'mine',
  moisture: null,
  bulk: null,
  pieces: null,
  pieceDensity: null,
  ...measured,
})

const kinds = [...fuelTable.keys()]
const anyKind = fc.constantFrom(...kinds)
const anyWidth = fc.double({ min: 0.05, max: 0.25, noNaN: true })
const share = (most: number): fc.Arbitrary<Fraction> =>
  fc.double({ min: 0, max: most, noNaN: true }).map(fraction)
const properties = <T>(check: fc.IProperty<T>): void => fc.assert(check, { seed: 53, numRuns: 300 })

describe('a fuel of the table, tipped in', () => {
  test.each(kinds)('%s in the vessel it was weighed in is the row of the table', (kind) => {
    const row = tableRow(kind)
    const fuel = charged(kind, row.vesselDiameter)
    expect(fuel).toMatchObject({
      key: row.key,
      label: row.label,
      moisture: row.moisture,
      pieceDiameter: row.pieceDiameter,
      pieceDensity: row.pieceDensity,
      packing: 'tipped',
      fines: 0,
      resistanceFactor: 1,
    })
    expect(fuel.bulkDensity).toBeCloseTo(row.bulkDensity, 9)
    expect(fuel.voidFraction).toBeCloseTo(row.voidFraction, 12)
  })

  // By hand: ball of equal volume of 6 × 15 mm (1.5·36·15)^(1/3) = 9.3217 mm; 90/9.3217 = 9.6549, 167/9.3217 = 17.9152;
  // void 0.373 + 1.703/(10.2659)² = 0.38916 and 0.373 + 1.703/(18.5262)² = 0.37796;
  // solid ratio 0.61084/0.62204 = 0.98199; 650 · 0.98199 = 638.3 kg/m³; void 1 − 638.3/1200 = 0.4681.
  test('pellets in a can of 90 mm by hand', () => {
    const fuel = charged('pellets-6mm', 0.09)
    expect(fuel.bulkDensity).toBeCloseTo(638.3, 1)
    expect(fuel.voidFraction).toBeCloseTo(0.4681, 4)
  })

  test('the narrower the can, the looser it lies, in weight and in void alike', () => {
    properties(
      fc.property(anyKind, anyWidth, (kind, width) => {
        const [wide, narrow] = [charged(kind, width), charged(kind, 0.95 * width)]
        expect(narrow.voidFraction).toBeGreaterThan(wide.voidFraction)
        expect(narrow.bulkDensity).toBeLessThan(wide.bulkDensity)
        expect(narrow.bulkDensity / (1 - narrow.voidFraction)).toBeCloseTo(
          wide.bulkDensity / (1 - wide.voidFraction),
          6,
        )
      }),
    )
  })

  test('wetter, it weighs more, has the same dry wood and the same void, and less heat a kilogram', () => {
    properties(
      fc.property(anyKind, anyWidth, share(0.5), (kind, width, moisture) => {
        const [drier, wetter] = [
          charged(kind, width, { moisture }),
          charged(kind, width, { moisture: fraction(moisture + 0.05) }),
        ]
        const dry = (fuel: ChargedFuel): number => fuel.bulkDensity * (1 - fuel.moisture)
        const heat = (fuel: ChargedFuel): number =>
          lowerHeatingValueAsFired(lowerHeatingValue(fuel.higherHeatingValue, fuel.analysis.H), fuel.moisture)
        expect(wetter.bulkDensity).toBeGreaterThan(drier.bulkDensity)
        expect(dry(wetter) / dry(drier)).toBeCloseTo(1, 9)
        expect(wetter.voidFraction).toBeCloseTo(drier.voidFraction, 12)
        expect(heat(wetter)).toBeLessThan(heat(drier))
      }),
    )
  })

  test('more fines, more resistance, and nothing else', () => {
    properties(
      fc.property(anyKind, anyWidth, share(0.19), (kind, width, fines) => {
        const [less, more] = [
          charged(kind, width, { fines }),
          charged(kind, width, { fines: fraction(fines + 0.01) }),
        ]
        expect(more.resistance.viscous).toBeGreaterThan(less.resistance.viscous)
        expect(more.resistance.inertial).toBeGreaterThan(less.resistance.inertial)
        expect(more.resistance.viscous / less.resistance.viscous).toBeCloseTo(
          more.resistanceFactor / less.resistanceFactor,
          9,
        )
        expect(more.voidFraction).toBe(less.voidFraction)
      }),
    )
  })
})

describe('sticks stood upright', () => {
  test('half as much again of them go into the can, and they still let more air through', () => {
    const [tipped, upright] = [charged('twigs', 0.09), charged('twigs', 0.09, { packing: 'upright' })]
    expect(upright.bulkDensity / tipped.bulkDensity).toBeGreaterThan(1.3)
    expect(upright.resistance.viscous / tipped.resistance.viscous).toBeLessThan(0.75)
    expect(upright.resistance.inertial / tipped.resistance.inertial).toBeLessThan(0.6)
    expect(upright.cautions).toContain(
      'Sticks stood by hand are taken to fill 55 % of the can: weigh a filling to know.',
    )
  })

  test('a weighed filling says how tight they stand', () => {
    const bulk = { density: 0.7 * 575, vesselDiameter: metres(0.09) }
    const tight = charged('twigs', 0.09, { packing: 'upright', own: own({ bulk }) })
    expect(tight.voidFraction).toBeCloseTo(0.3, 12)
    expect(tight.resistance.viscous).toBeGreaterThan(
      charged('twigs', 0.09, { packing: 'upright' }).resistance.viscous,
    )
    expect(tight.cautions).toEqual([])
  })

  test('longer than the filling is high, they make one layer', () => {
    const at = (length: number): number =>
      charged('twigs', 0.09, { packing: 'upright', own: own({ pieces: rod(10, length) }) }).resistance
        .inertial
    expect(at(80)).toBeCloseTo(at(120), 12)
    expect(at(40)).toBeCloseTo(2 * at(80), 9)
  })
})

describe('an own fuel', () => {
  test('with the numbers of the table is the fuel of the table, in any can', () => {
    properties(
      fc.property(anyKind, anyWidth, (kind, width) => {
        const { bulkDensity, vesselDiameter, moisture, pieces, pieceDensity } = tableRow(kind)
        const mine = own({
          bulk: { density: bulkDensity, vesselDiameter: metres(vesselDiameter) },
          moisture: fraction(moisture),
          pieces,
          pieceDensity,
        })
        expect(charged(kind, width, { own: mine })).toEqual({ ...charged(kind, width), label: 'mine' })
      }),
    )
  })

  test('of which only some was measured takes the rest from the one it is like', () => {
    const fuel = charged('twigs', 0.1, { own: own({ pieces: rod(6, 30) }) })
    expect(fuel).toMatchObject({ key: 'twigs', label: 'mine', moisture: 0.14, pieceDensity: 575 })
    expect(fuel.pieceDiameter).toBeCloseTo((3 * 6 * 30) / 66 / 1000, 12)
    expect(fuel.bulkDensity).toBeCloseTo(230, 9)
  })

  test('weighed in this very can is as heavy as it was weighed', () => {
    const bulk = { density: 212, vesselDiameter: metres(0.0842) }
    expect(charged('wood-chips', 0.0842, { own: own({ bulk }) }).bulkDensity).toBeCloseTo(212, 9)
    expect(charged('wood-chips', 0.12, { own: own({ bulk }) }).bulkDensity).toBeGreaterThan(212)
  })

  test('weighed damp and burnt dry, it is lighter by the water', () => {
    const mine = own({
      bulk: { density: 250, vesselDiameter: metres(0.1) },
      moisture: fraction(0.2),
    })
    const fuel = charged('twigs', 0.1, { own: mine, moisture: fraction(0.1) })
    expect(fuel.bulkDensity).toBeCloseTo((250 * 0.8) / 0.9, 9)
    // Twigs of the table have 575 kg/m³ at 14 %; dry 494.5.
    expect(fuel.voidFraction).toBeCloseTo(1 - (250 * 0.8) / 494.5, 12)
  })

  test('of denser wood, as its weighed pieces show, leaves more air for the same filling', () => {
    const bulk = { density: 300, vesselDiameter: metres(0.1) }
    const plain = charged('twigs', 0.1, { own: own({ bulk }) })
    const dense = charged('twigs', 0.1, { own: own({ bulk, pieceDensity: 900 }) })
    expect(dense.voidFraction).toBeCloseTo(2 / 3, 12)
    expect(plain.voidFraction).toBeLessThan(dense.voidFraction)
    expect(plain.resistance.viscous).toBeGreaterThan(dense.resistance.viscous)
  })
})

describe('what cannot be', () => {
  const bulk = (density: number) => ({ density, vesselDiameter: metres(0.09) })
  test.each<[string, FuelCharge, number, string, string]>([
    ['peat', chargeOf('peat'), 0.09, 'fuel.unknown', 'fuel.kind'],
    ['like peat', chargeOf('peat', { own: own({}) }), 0.09, 'fuel.unknown', 'fuel.own.like'],
    ['twigs in a tube', chargeOf('twigs'), 0.03, 'fuel.pieces-too-large', 'fuel.kind'],
    ['shells in a tube', chargeOf('groundnut-shell'), 0.017, 'fuel.pieces-too-large', 'fuel.kind'],
    [
      'logs',
      chargeOf('twigs', { own: own({ pieces: rod(80, 200) }) }),
      0.09,
      'fuel.pieces-too-large',
      'fuel.own.pieces',
    ],
    ['chips on end', chargeOf('wood-chips', { packing: 'upright' }), 0.09, 'fuel.not-sticks', 'fuel.packing'],
    [
      'blocks on end',
      chargeOf('twigs', { packing: 'upright', own: own({ pieces: block(30, 20, 5) }) }),
      0.09,
      'fuel.not-sticks',
      'fuel.packing',
    ],
    ['half dust', chargeOf('pellets-6mm', { fines: fraction(0.5) }), 0.09, 'fuel.fines', 'fuel.fines'],
    [
      'twigs like lead',
      chargeOf('twigs', { own: own({ bulk: bulk(560) }) }),
      0.09,
      'fuel.too-dense',
      'fuel.own.filling.weight',
    ],
    [
      'sticks denser than a honeycomb',
      chargeOf('twigs', { packing: 'upright', own: own({ bulk: bulk(0.92 * 575) }) }),
      0.09,
      'fuel.too-dense',
      'fuel.own.filling.weight',
    ],
    [
      'twigs like feathers',
      chargeOf('twigs', { own: own({ bulk: bulk(20) }) }),
      0.09,
      'fuel.too-loose',
      'fuel.own.filling.weight',
    ],
  ])('%s', (_, charge, width, code, field) => {
    const outcome = chargeFuel(charge, width)
    if (outcome.ok) throw new Error('was taken')
    expect(outcome.problems.map((problem) => [problem.code, problem.field])).toEqual([[code, field]])
    for (const problem of outcome.problems) {
      const sentence = problemSentence(problem)
      console.log(sentence)
      expect(sentence).toMatch(/[.?!]$/)
      expect(sentence).not.toMatch(/undefined|NaN|Infinity/)
    }
  })

  test('no charge makes nonsense: it is refused, or every number is finite and possible', () => {
    const anyOwn = fc.record({
      name: fc.constant('mine'),
      moisture: fc.option(share(0.6)),
      bulk: fc.option(
        fc.record({
          density: fc.double({ min: 30, max: 1500, noNaN: true }),
          vesselDiameter: fc.double({ min: 0.03, max: 0.4, noNaN: true }).map(metres),
        }),
      ),
      pieces: fc.option(
        fc.oneof(
          fc
            .tuple(
              fc.double({ min: 0.5, max: 600, noNaN: true }),
              fc.double({ min: 0.5, max: 600, noNaN: true }),
            )
            .map(([d, l]) => rod(d, l)),
          fc
            .array(fc.double({ min: 0.5, max: 600, noNaN: true }), { minLength: 3, maxLength: 3 })
            .map(([l, w, t]) => block(l as number, w as number, t as number)),
        ),
      ),
      pieceDensity: fc.option(fc.double({ min: 100, max: 1600, noNaN: true })),
    })
    let taken = 0
    properties(
      fc.property(
        anyKind,
        fc.option(anyOwn, { nil: undefined }),
        share(0.2),
        fc.constantFrom<'tipped' | 'upright'>('tipped', 'upright'),
        fc.option(share(0.6)),
        fc.double({ min: 0.025, max: 0.4, noNaN: true }),
        (kind, mine, fines, packing, moisture, width) => {
          const outcome = chargeFuel(
            chargeOf(kind, { fines, packing, moisture, ...(mine === undefined ? {} : { own: mine }) }),
            width,
          )
          if (!outcome.ok) return
          taken++
          const { voidFraction, bulkDensity, pieceDensity, resistance, pieceDiameter } = outcome.value
          for (const value of [
            bulkDensity,
            pieceDensity,
            pieceDiameter,
            resistance.viscous,
            resistance.inertial,
          ]) {
            expect(Number.isFinite(value)).toBe(true)
            expect(value).toBeGreaterThan(0)
          }
          expect(voidFraction).toBeGreaterThan(0.09)
          expect(voidFraction).toBeLessThanOrEqual(0.95)
        },
      ),
    )
    expect(taken).toBeGreaterThan(60)
  })
})
