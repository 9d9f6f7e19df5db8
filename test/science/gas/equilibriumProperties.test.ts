import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { MOLAR_GAS_CONSTANT, STANDARD_PRESSURE } from '#basis/constants.ts'
import {
  type Atoms,
  type Equilibrium,
  type EquilibriumOutcome,
  equilibriumAt,
  equilibriumAtEnthalpy,
} from '#science/gas/equilibrium.ts'
import {
  EQUILIBRIUM_SPECIES,
  type EquilibriumSpecies,
  equilibriumRecords,
} from '#science/gas/equilibriumData.ts'
import { condensedRecords } from '#science/gas/speciesData.ts'
import { ELEMENTS, molarEnthalpy, molarGibbs } from '#science/gas/thermo.ts'

const settled = (outcome: EquilibriumOutcome): Equilibrium => {
  if (!outcome.ok) throw new Error(outcome.sentence)
  return outcome
}

/** Nothing, a share, a trace, or a whole number: whole numbers meet the exact ratios where traces alone are left over. */
const amount = fc.oneof(
  fc.constant(0),
  fc.double({ min: 0.01, max: 1, noNaN: true }),
  fc.double({ min: -12, max: 0, noNaN: true }).map((power) => 10 ** power),
  fc.integer({ min: 1, max: 8 }),
)
const mixtures = fc
  .record({ C: amount, H: amount, O: amount, N: amount, Ar: amount })
  .filter((atoms) => ELEMENTS.some((element) => atoms[element] > 0))
const temperatures = fc.double({ min: 200, max: 3500, noNaN: true })
/** Off the ends of the range, where a rounding of the enthalpy puts the answer outside. */
const inside = fc.double({ min: 201, max: 3499, noNaN: true })
const pressures = fc.double({ min: 3, max: 6, noNaN: true }).map((power) => 10 ** power)

/** Reactions that span all there are; graphite by what CO and CO2 say of it. */
const reactions: readonly Readonly<Partial<Record<EquilibriumSpecies | 'graphite', number>>>[] = [
  { CO2: -2, CO: 2, O2: 1 },
  { H2O: -2, H2: 2, O2: 1 },
  { CH4: -1, O2: -2, CO2: 1, H2O: 2 },
  { OH: -2, O2: 1, H2: 1 },
  { H: -2, H2: 1 },
  { O: -2, O2: 1 },
  { NO: -2, N2: 1, O2: 1 },
  { H2O: -1, OH: 1, H: 1 },
  { CO: -2, CO2: 1, graphite: 1 },
  { CH4: -1, H2: 2, graphite: 1 },
]

/** Gibbs energy that a reaction sets free, over R T; null where a species is absent or all but gone [1]. */
const drive = (
  { temperature, pressure, moles, gasMoles }: Equilibrium,
  reaction: (typeof reactions)[number],
): number | null => {
  let sum = 0
  for (const [name, count] of Object.entries(reaction) as [keyof typeof reaction, number][]) {
    const record = name === 'graphite' ? condensedRecords.graphite : equilibriumRecords[name]
    sum += (count * molarGibbs(record, temperature)) / (MOLAR_GAS_CONSTANT * temperature)
    if (name === 'graphite') continue
    if (moles[name] < 1e-290) return null
    sum += count * Math.log(((moles[name] / gasMoles) * pressure) / STANDARD_PRESSURE)
  }
  return sum
}

describe('every mixture of C, H, O, N and Ar at 200–3500 K', () => {
  test('settles, holds its atoms to 1e-10 and leaves no reaction with anything to gain', () => {
    let compared = 0
    let sooty = 0
    fc.assert(
      fc.property(mixtures, temperatures, pressures, (atoms, temperature, pressure) => {
        const mixture = settled(equilibriumAt(temperature, pressure, atoms))
        if (mixture.carbonForms) sooty++
        for (const element of ELEMENTS) {
          const held =
            EQUILIBRIUM_SPECIES.reduce(
              (sum, name) => sum + equilibriumRecords[name].composition[element] * mixture.moles[name],
              0,
            ) + (element === 'C' ? mixture.graphite : 0)
          expect(Math.abs(held - atoms[element])).toBeLessThanOrEqual(1e-10 * atoms[element])
        }
        for (const name of EQUILIBRIUM_SPECIES) expect(mixture.moles[name]).toBeGreaterThanOrEqual(0)
        expect(Math.abs(mixture.residuals.moleFractions)).toBeLessThanOrEqual(1e-10)
        expect(mixture.heatCapacity).toBeGreaterThan(0)
        for (const reaction of reactions) {
          const gain = drive(mixture, reaction)
          if (gain === null) continue
          compared++
          // Without graphite there, making it must cost something.
          if ('graphite' in reaction && !mixture.carbonForms) expect(gain).toBeGreaterThan(-1e-8)
          else expect(Math.abs(gain)).toBeLessThan(1e-8)
        }
      }),
      { numRuns: 1500, seed: 20261125 },
    )
    expect(compared).toBeGreaterThan(5000)
    expect(sooty).toBeGreaterThan(200)
  })

  test('the enthalpy leads back to the temperature', () => {
    fc.assert(
      fc.property(mixtures, inside, pressures, (atoms, temperature, pressure) => {
        const { enthalpy } = settled(equilibriumAt(temperature, pressure, atoms))
        const back = settled(equilibriumAtEnthalpy(enthalpy, pressure, atoms))
        expect(Math.abs(back.temperature - temperature)).toBeLessThan(1e-5)
        expect(back.residuals.enthalpy).toBeLessThanOrEqual(1e-8)
      }),
      { numRuns: 150, seed: 20261125 },
    )
  })

  test('twice the atoms is twice of everything', () => {
    fc.assert(
      fc.property(mixtures, temperatures, (atoms, temperature) => {
        const one = settled(equilibriumAt(temperature, 101325, atoms))
        const twice = Object.fromEntries(ELEMENTS.map((e) => [e, 2 * atoms[e]])) as Atoms
        const two = settled(equilibriumAt(temperature, 101325, twice))
        expect(two.gasMoles).toBeCloseTo(2 * one.gasMoles, 9)
        expect(two.graphite).toBeCloseTo(2 * one.graphite, 9)
        expect(Math.abs(two.enthalpy / one.enthalpy - 2)).toBeLessThan(1e-9)
      }),
      { numRuns: 100, seed: 20261125 },
    )
  })
})

const woodGas: Atoms = { C: 0.3, H: 0.6, O: 0.75, N: 1.5, Ar: 0.01 }
const sooty: Atoms = { C: 1, H: 1.4, O: 0.6, N: 0.5 }

describe('as the temperature or the pressure changes', () => {
  test.each([
    ['wood gas with some air', woodGas],
    ['wood with too little air', sooty],
    ['stoichiometric', { C: 1, H: 4, O: 4, N: 15 }],
    ['graphite alone', { C: 1 }],
  ] as const)('the heat capacity is the slope of the enthalpy: %s', (_, atoms) => {
    for (const T of [350, 700, 950, 1300, 2100, 3300]) {
      const h = 0.02
      const at = (t: number): number => settled(equilibriumAt(t, 101325, atoms)).enthalpy
      const slope = (at(T + h) - at(T - h)) / (2 * h)
      expect(settled(equilibriumAt(T, 101325, atoms)).heatCapacity / slope).toBeCloseTo(1, 5)
    }
  })

  test('more pressure, fewer moles of gas (Le Chatelier)', () => {
    for (const atoms of [woodGas, sooty])
      for (const T of [700, 1000, 2500]) {
        const moles = [2e4, 1e5, 1e6].map((p) => settled(equilibriumAt(T, p, atoms)).gasMoles)
        expect(moles[0]).toBeGreaterThan(moles[1] as number)
        expect(moles[1]).toBeGreaterThan(moles[2] as number)
      }
  })

  test('carbon goes as the temperature rises, and is gone where there is oxygen enough', () => {
    const carbon = [700, 900, 1100].map((T) => settled(equilibriumAt(T, 101325, sooty)).graphite)
    expect(carbon[0]).toBeGreaterThan(carbon[1] as number)
    expect(carbon[1]).toBeGreaterThan(carbon[2] as number)
    expect(settled(equilibriumAt(1100, 101325, { C: 1, O: 1.1 })).carbonForms).toBe(false)
  })

  test('temperature and enthalpy change without a jump where the soot goes', () => {
    const atoms: Atoms = { ...sooty, O: 1.1 }
    let low = settled(equilibriumAt(900, 101325, atoms)).enthalpy
    let high = settled(equilibriumAt(1600, 101325, atoms)).enthalpy
    for (let i = 0; i < 50; i++) {
      const middle = (low + high) / 2
      if (settled(equilibriumAtEnthalpy(middle, 101325, atoms)).carbonForms) low = middle
      else high = middle
    }
    const [before, after] = [low, high].map((h) => settled(equilibriumAtEnthalpy(h, 101325, atoms)))
    expect(before?.carbonForms).toBe(true)
    expect(after?.carbonForms).toBe(false)
    expect(Math.abs((before?.temperature as number) - (after?.temperature as number))).toBeLessThan(1e-6)
    expect(before?.graphite).toBeLessThan(1e-6)
  })
})

describe('without graphite', () => {
  test('a gas that makes no soot is the same', () => {
    const [may, mayNot] = [true, false].map((graphite) =>
      settled(equilibriumAt(1500, 101325, woodGas, { graphite })),
    )
    expect(may?.carbonForms).toBe(false)
    expect(mayNot?.moles.CO).toBeCloseTo(may?.moles.CO as number, 12)
  })

  test('one that would is a gas beyond the carbon that graphite would leave it', () => {
    // By the way CO and CO2 meet, not by the way the code looks for soot.
    const gas = settled(equilibriumAt(800, 101325, { C: 1, H: 4, O: 1 }, { graphite: false }))
    const gain = drive(gas, { CO: -2, CO2: 1, graphite: 1 }) as number
    expect(gas.graphite).toBe(0)
    expect(gain).toBeLessThan(-0.1)
  })

  test('more carbon than CO and CH4 can hold is refused', () => {
    const outcome = equilibriumAt(1200, 101325, { C: 3, H: 4, O: 1 }, { graphite: false })
    expect(outcome).toMatchObject({ ok: false, reason: 'carbon' })
  })
})

describe('the edges', () => {
  test('carbon alone is graphite and no gas', () => {
    const coal = settled(equilibriumAt(1000, 101325, { C: 2 }))
    expect(coal).toMatchObject({ graphite: 2, gasMoles: 0, carbonForms: true })
    expect(coal.enthalpy).toBeCloseTo(2 * molarEnthalpy(condensedRecords.graphite, 1000), 6)
    const heated = settled(equilibriumAtEnthalpy(coal.enthalpy, 101325, { C: 2 }))
    expect(heated.temperature).toBeCloseTo(1000, 6)
  })

  test('carbon in nitrogen stays beside it', () => {
    const mixture = settled(equilibriumAt(1000, 101325, { C: 1, N: 2 }))
    expect(mixture.graphite).toBe(1)
    expect(mixture.moles.N2).toBeCloseTo(1, 12)
  })

  test.each([
    ['no atoms', 1000, 101325, {}, 'atoms'],
    ['a negative amount', 1000, 101325, { C: -1, O: 2 }, 'atoms'],
    ['an amount that is no number', 1000, 101325, { C: Number.NaN, O: 2 }, 'atoms'],
    ['an endless amount', 1000, 101325, { O: Number.POSITIVE_INFINITY }, 'atoms'],
    ['too cold', 199, 101325, { O: 1 }, 'temperature'],
    ['too hot', 3501, 101325, { O: 1 }, 'temperature'],
    ['no temperature', Number.NaN, 101325, { O: 1 }, 'temperature'],
    ['no pressure', 1000, 0, { O: 1 }, 'pressure'],
    ['a pressure that is no number', 1000, Number.NaN, { O: 1 }, 'pressure'],
  ] as const)('%s is refused with a reason', (_, temperature, pressure, atoms, reason) => {
    expect(equilibriumAt(temperature, pressure, atoms)).toMatchObject({ ok: false, reason })
  })

  test.each([
    ['too little enthalpy', -1e9, 'cold'],
    ['too much', 1e9, 'hot'],
    ['none', Number.NaN, 'enthalpy'],
  ] as const)('%s is refused with a reason', (_, enthalpy, reason) => {
    expect(equilibriumAtEnthalpy(enthalpy, 101325, woodGas)).toMatchObject({ ok: false, reason })
  })
})
