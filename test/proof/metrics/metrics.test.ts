import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { randomStream } from '#basis/random.ts'
import { measuredTrial } from '#proof/compare/measured.ts'
import { trialCautions } from '#proof/metrics/cautions.ts'
import { evaluateTrial } from '#proof/metrics/evaluate.ts'
import { expression } from '#proof/metrics/expression.ts'
import { FORMULAS } from '#proof/metrics/formulas.ts'
import { inputsOf } from '#proof/metrics/inputs.ts'
import { propagate } from '#proof/metrics/propagate.ts'
import { metricsOf, type Worked } from '#proof/metrics/worked.ts'
import { readTrial } from '#proof/trial/read.ts'
import drawn from '#reference/uncertaintyNumpy.json' with { type: 'json' }
import examples from '#reference/waterBoilingExamples.json' with { type: 'json' }
import { seriesTrials } from '../compare/seriesTrials.ts'
import { waterBoilingTrial } from '../trial/waterBoiling.ts'

const trialOf = (file: object) => orThrow(readTrial(JSON.stringify(file)))
const trial = trialOf(waterBoilingTrial())
const metrics = metricsOf(trial)
const row = (phase: number, key: string): Worked => {
  const found = metrics.phases[phase]?.rows.find((one) => one.key === key)
  if (found === undefined) throw new Error(`No ${key}`)
  return found
}

/** To every digit that the example gives. */
const exactly = (value: number, expected: number): void => {
  const [, decimals = ''] = String(expected).split('.')
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(0.5001 * 10 ** -decimals.length)
}

// Constructed examples, not published ones: they prove the arithmetic. test/reference/waterBoilingExamples.json.
describe('the worked examples, exactly', () => {
  const high = examples.high_power_1_sea_level.outputs
  it.each([
    ['fuelBurnt', high.fuel_burned_moist_g],
    ['EHV', high.EHV_kJ_kg],
    ['dryFuel', high.dry_fuel_equiv_fcd_g],
    ['dryFuelFixed', high.fcd_WBT3_style_g],
    ['vapour', high.water_vaporised_g],
    ['usefulHeat', high.useful_heat_kJ],
    ['efficiency', high.thermal_eff_char_credited],
    ['efficiencyNoChar', high.thermal_eff_no_char_credit],
    ['burningRate', high.burning_rate_g_min],
    ['firepower', high.firepower_W],
    ['usefulPower', high.useful_power_W],
    ['waterBoiled', high.effective_water_boiled_g],
    ['specificFuel', high.SC_g_per_L],
    ['specificFuelT', high.SC_T_g_per_L],
    ['specificEnergyT', high.SE_T_kJ_per_L],
    ['timeToBoilT', high.t_boil_T_min],
    ['charYield', high.char_mass_productivity],
    ['charEnergyYield', high.char_energy_productivity],
    ['isoEfficiencyNoChar', examples.iso19867_1_style.example_from_ex1.eta_no_char],
    ['isoEfficiency', examples.iso19867_1_style.example_from_ex1.eta_char],
  ])('high power: %s', (key, expected) => exactly(row(0, key).value, expected))

  const simmer = examples.simmer_45min.outputs
  it.each([
    ['dryFuel', simmer.fsd_g],
    ['efficiency', simmer.thermal_eff],
    ['burningRate', simmer.burning_rate_g_min],
    ['firepower', simmer.firepower_W],
  ])('simmer: %s', (key, expected) => exactly(row(1, key).value, expected))

  it('simmer: specific consumption, and turndown', () => {
    exactly(row(1, 'specificFuel').value / 1000, simmer.SC_s_g_per_g)
    // The example divides figures that it has rounded: 4372.04 / 2210.06, then down to 1.97824.
    expect(metrics.turndown?.value).toBeCloseTo(high.firepower_W / simmer.firepower_W, 5)
    expect(Math.abs((metrics.turndown?.value ?? 0) - simmer.turn_down_vs_ex1)).toBeLessThan(1e-5)
  })

  it('shows by how much the older form of the dry fuel differs', () => {
    expect(row(0, 'dryFuelGap').value).toBeCloseTo(294 - 283.592, 3)
  })
})

it('uncertainty agrees with 100 000 draws of all readings, within 2 %', () => {
  const inputs = inputsOf(trial)
  const stream = randomStream(19_867)
  const sums = new Map<string, { sum: number; squares: number }>()
  const found = propagate(inputs, (readings) => evaluateTrial(trial, readings))
  const draws = 100_000
  for (let n = 0; n < draws; n++) {
    // Even between their limits, as a display that rounds leaves them.
    const readings = new Map(
      inputs.map(({ id, value, u }) => [id, value + u * Math.sqrt(3) * stream.between(-1, 1)]),
    )
    for (const [key, value] of evaluateTrial(trial, readings)) {
      const from = value - (found.get(key)?.value as number)
      const all = sums.get(key) ?? { sum: 0, squares: 0 }
      all.sum += from
      all.squares += from * from
      sums.set(key, all)
    }
  }
  expect(sums.size).toBeGreaterThan(40)
  for (const [key, { sum, squares }] of sums) {
    const sd = Math.sqrt((squares - (sum * sum) / draws) / (draws - 1))
    const { u = 0, value = 0 } = found.get(key) ?? {}
    const none = 1e-9 * Math.max(1, Math.abs(value))
    if (sd < none) expect(u).toBeLessThan(none)
    else expect(Math.abs(u / sd - 1), key).toBeLessThan(0.02)
  }
})

// Source: a program of its own, test/reference/generators/uncertainty_numpy.py.
it.each(Object.entries(drawn.spreads))(
  'uncertainty of %s as 400 000 draws in NumPy have it, within 2 %%',
  (name, spreads) => {
    const burn = seriesTrials.find((one) => one.name === name)
    if (burn === undefined) throw new Error(`No ${name}`)
    const { metrics: found } = measuredTrial(burn)
    for (const [key, sd] of Object.entries(spreads))
      expect(Math.abs((found.get(`high power/${key}`)?.u as number) / sd - 1), key).toBeLessThan(0.02)
  },
)

describe('correlation of one reading that enters twice', () => {
  it('a thermometer that reads high does not warm the water', () => {
    const warm = waterBoilingTrial()
    warm.instruments.thermometer = { resolution: '0.1 K', accuracy: '20 K' }
    const found = metricsOf(trialOf(warm)).phases[0]?.rows.find(({ key }) => key === 'usefulHeat')
    expect(found?.u).toBeCloseTo(row(0, 'usefulHeat').u, 6)
  })

  it('a scale that shows 3 % too much leaves efficiency as it is', () => {
    const heavy = waterBoilingTrial()
    heavy.instruments.scale = { resolution: '1 g', accuracy: '3 %' }
    const found = metricsOf(trialOf(heavy)).phases[0]?.rows.find(({ key }) => key === 'efficiency')
    expect(found?.u).toBeCloseTo(row(0, 'efficiency').u, 9)
  })
})

describe('how it was worked out', () => {
  /** An evaluator of its own: the language's. */
  const workedOut = (text: string): number =>
    Number(new Function(`return ${text.replaceAll('·', '*').replaceAll('−', '-')}`)())

  it('the numbers in every formula come to the value that stands beside them', () => {
    const rows = [...metrics.phases.flatMap((phase) => phase.rows), metrics.turndown as Worked]
    expect(rows.length).toBeGreaterThan(40)
    for (const { key, numbers, value } of rows)
      expect({ key, value: workedOut(numbers) / value }).toEqual({ key, value: expect.closeTo(1, 3) })
  })

  it('in the symbols of the phase, with the largest source of doubt first', () => {
    expect(row(0, 'efficiency').formula).toBe('1000·Q_c / (f_cd·LHV)')
    expect(row(0, 'efficiency').numbers).toBe('1000·1010.88 / (283.592·18500)')
    expect(row(1, 'burningRate').symbol).toBe('r_sb')
    const { contributions } = row(0, 'efficiency')
    expect(contributions[0]?.share).toBeGreaterThan(contributions[1]?.share ?? 1)
    expect(contributions.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
  })

  it('no key of a formula is unknown, and each is worked out before it is asked for', () => {
    for (const kind of ['high power', 'simmer'] as const) {
      const known = new Set([
        'fi',
        'ff',
        'c',
        'P',
        'Pi',
        'Pf',
        'Ti',
        'Tf',
        'Ta',
        'Tb',
        'ti',
        'tf',
        'tb',
        'm',
        'L',
        'Lc',
      ])
      for (const { key, formula } of FORMULAS.filter(({ phases }) => phases.includes(kind))) {
        expect(formula.keys.filter((one) => !known.has(one))).toEqual([])
        known.add(key)
      }
    }
  })

  it('says what cannot be had, and why', () => {
    const file = waterBoilingTrial()
    const [first] = file.phases as unknown as [Record<string, unknown>]
    delete first.char
    delete first.boil
    file.events = []
    const [phase] = metricsOf(trialOf(file)).phases
    expect(phase?.missing).toContainEqual({
      key: 'efficiency',
      name: 'thermal efficiency, char counted as left',
      reason: 'the char was not weighed',
    })
    expect(phase?.missing.find(({ key }) => key === 'timeToBoil')?.reason).toBe('nobody noted when it boiled')
    expect(phase?.rows.map(({ key }) => key)).toContain('efficiencyNoChar')
    expect(trialCautions(trialOf(file), metricsOf(trialOf(file))).join(' ')).toContain('Char was not weighed')
  })

  it('moisture from the oven: a sample of 50 g that comes out at 45 g', () => {
    const file = waterBoilingTrial()
    const dried = { ...file, fuel: { ...file.fuel, moisture: { before: '50 g', after: '45 g' } } }
    const found = metricsOf(trialOf(dried)).phases[0]?.terms.find(({ key }) => key === 'm')
    expect(found?.value).toBeCloseTo(0.1, 12)
    // By hand: u(m) = √((1/50)² + (45/50²)²)·0.5/√3.
    expect(found?.u).toBeCloseTo(Math.hypot(1 / 50, 45 / 2500) * (0.5 / Math.sqrt(3)), 6)
  })
})

describe('formulas as text', () => {
  it.each([
    ['1 + 2·3', 7],
    ['(1 + 2)·3', 9],
    ['8 / 4 / 2', 1],
    ['5 − 3 − 1', 1],
    ['1.5·{a} − {b}', -1],
  ])('%s', (text, expected) => {
    expect(expression(text).value((key) => ({ a: 2, b: 4 })[key] as number)).toBe(expected)
  })
  it.each(['1 +', '(1', '1)', '{a', '2 ^ 3', ''])('%s is none', (text) => {
    expect(() => expression(text)).toThrow(Error)
  })
})
