import published from '#reference/publishedFronts.json' with { type: 'json' }
import type { SampledRun } from '#science/bands/bands.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { charYield, type Front, frontModel } from '#science/fire/front.ts'
import { airPerFuel } from '#science/fire/source.ts'
import { lowerHeatingValue, lowerHeatingValueAsFired } from '#science/fuel/composition.ts'
import { type Fuel, fuelTable } from '#science/fuel/table.ts'
import type { BandRow, CheckSet } from '../row.ts'
import { bandOf, sampled, scaledBand } from './sampling.ts'

const AMBIENT = 293.15
/** Superficial air velocity of a natural draught's front, and of the best gas [m/s]. */
const SLOW = 0.03
const BEST = 0.09
/** Ø100 mm [m]. */
const BED = 0.1
/** Volume of a mole of ideal gas at 0 °C and 101325 Pa [m³/mol]. */
const NORMAL_MOLAR_VOLUME = 0.022413969545

const fuelNamed = (key: string): Fuel => {
  const fuel = fuelTable.get(key)
  if (fuel === undefined) throw new Error(`${key} is not in the fuel table`)
  return fuel
}

/** Dry gas of a front: volume shares [1], heating values [J/Nm³], and its heat for each kilogram of dry fuel [J/kg]. */
const dryGas = ({ moles }: Front) => {
  const total = moles.CO + moles.CO2 + moles.H2 + moles.CH4 + moles.N2 + moles.Ar
  // Heats of combustion of JANAF [J/mol], lower and with the water's 44.0 kJ/mol [bib:chase1998].
  const lower = moles.CO * 282_995 + moles.H2 * 241_826 + moles.CH4 * 802_301
  const higher = moles.CO * 282_995 + moles.H2 * 285_830 + moles.CH4 * 890_309
  const volume = total * NORMAL_MOLAR_VOLUME
  return { total, lower: lower / volume, higher: higher / volume, heat: lower }
}

const KEYS = ['lower', 'higher', 'CO', 'CO2', 'H2', 'CH4', 'coldGas', 'char', 'temperature', 'power'] as const
type Key = (typeof KEYS)[number]

const { closure } = published
const fuelRate = closure.fuel_g_min / 60_000

const run = (fuel: Fuel, coefficients: Coefficients): SampledRun<Key> => {
  const { moisture } = fuel
  const closed = frontModel(fuel, moisture, AMBIENT, coefficients, BED).close(
    airPerFuel(SLOW, moisture, coefficients),
    AMBIENT,
  )
  if (!closed.ok) return { outcome: closed.reason, figures: {} }
  const { front } = closed
  const gas = dryGas(front)
  const asFired = lowerHeatingValueAsFired(
    lowerHeatingValue(fuel.higherHeatingValue, fuel.analysis.H),
    moisture,
  )
  return {
    outcome: 'glows',
    figures: {
      lower: gas.lower / 1e6,
      higher: gas.higher / 1e6,
      CO: (100 * front.moles.CO) / gas.total,
      CO2: (100 * front.moles.CO2) / gas.total,
      H2: (100 * front.moles.H2) / gas.total,
      CH4: (100 * front.moles.CH4) / gas.total,
      coldGas: (100 * gas.heat * (1 - moisture)) / asFired,
      char: 100 * front.char,
      temperature: front.temperature - 273.15,
      // Gas and char both burnt, as in a stove whose fan goes on after the front; only what leaves through the wall is lost.
      power: (fuelRate * (asFired - (1 - moisture) * front.loss)) / 1000,
    },
  }
}

const bandsOf = (key: string) => {
  const fuel = fuelNamed(key)
  return sampled(KEYS, (coefficients) => run(fuel, coefficients))
}

const pelletFront = 'our front of 6 mm pellets, slow as in a natural draught (0.03 m/s), bed Ø100 mm'
const chipFront = 'our front of air-dry chips, slow as in a natural draught (0.03 m/s), bed Ø100 mm'

const charAt = (name: string, pieces: number, moisture: number, low: number): BandRow => ({
  check: name,
  published: low,
  ours: scaledBand(
    bandOf(
      sampled(['char'], (coefficients) => ({
        outcome: 'glows',
        figures: { char: charYield(pieces, moisture, BED, coefficients) },
      })),
      'char',
    ),
    100,
  ),
  unit: '% of dry fuel',
  stove: 'char of our front, in a natural draught, bed Ø100 mm',
  source: 'James, Yuan & Boyette 2016, wood chips, blown [bib:james2016]',
})

const rowsOf = (quantity: string, unit: string) => {
  const row = published.rows.find(([name]) => name === quantity)
  if (row === undefined) throw new Error(`${quantity} was not published`)
  const [, , low, high, source] = row as [string, string, number, number, string]
  return { published: low === high ? low : ([low, high] as const), unit, source }
}

const front: CheckSet = {
  title: 'gas, char and heat of the front',
  source: 'see each row',
  standing: 'measurement',
  note: 'Our 5–95 % band from 64 sets of the coefficient table. Most of these stoves were blown by a fan; ours draws by itself.',
  rows: () => {
    const pellets = bandsOf('pellets-6mm')
    const chips = bandsOf('wood-chips')
    return [
      {
        check: 'gas of pellets, lower heating value',
        ...rowsOf('lower heating value of the dry gas', 'MJ/Nm³'),
        ours: bandOf(pellets, 'lower'),
        stove: pelletFront,
      },
      {
        check: 'gas of pellets, cold-gas efficiency',
        published: published.coldGasEfficiency,
        unit: '%',
        source: published.coldGasSource,
        ours: bandOf(pellets, 'coldGas'),
        stove: `${pelletFront}; dry gas without tar`,
      },
      {
        check: 'char of pellets, blown',
        published: published.blownChar,
        unit: '% of dry fuel',
        source: published.coldGasSource,
        ours: bandOf(pellets, 'char'),
        stove: pelletFront,
      },
      {
        check: 'gas of chips, higher heating value',
        ...rowsOf('higher heating value of the dry gas', 'MJ/Nm³'),
        ours: bandOf(chips, 'higher'),
        stove: chipFront,
      },
      charAt('char of 7 mm chips, blown', 0.007, 0.1, 12.2),
      charAt('char of 30 mm chips, blown', 0.03, 0.1, 21.8),
      charAt('char at 22 % moisture, blown', 0.01, 0.22, 9.9),
      {
        check: 'power of 12 g of fuel a minute',
        published: closure.power_kW,
        unit: 'kW',
        source: closure.reference,
        ours: bandOf(pellets, 'power'),
        stove: `${pelletFront}; all the heat of gas and char but what the front loses through the wall; our pellets are of wood, theirs of farm residues`,
      },
    ]
  },
}

const closureArithmetic: CheckSet = {
  title: 'the same stove’s fuel flux and usable heat',
  source: closure.reference,
  standing: 'proof of code',
  note: 'Arithmetic: 0.2 % of a flux of three digits.',
  rows: () => [
    {
      check: '12 g a minute on Ø100 mm',
      published: closure.flux_kg_m2s,
      ours: fuelRate / ((Math.PI / 4) * (closure.bedDiameter_mm / 1000) ** 2),
      unit: 'kg/(m² s)',
      allowed: { share: 2e-3 },
    },
    {
      check: '12 g a minute at 15 MJ/kg',
      published: closure.power_kW,
      ours: fuelRate * closure.usable_MJ_kg * 1000,
      unit: 'kW',
      allowed: { share: 1e-3 },
    },
  ],
}

const remembered: CheckSet = {
  title: 'gas and temperature of the front as remembered',
  source: 'from memory, low velocity',
  standing: 'from memory',
  note: 'Bands of plausibility.',
  rows: () => {
    const pellets = bandsOf('pellets-6mm')
    return (['CO', 'CO2', 'H2', 'CH4'] as const)
      .map((species) => ({
        check: `${species} in the dry gas`,
        ...rowsOf(species, 'vol %'),
        ours: bandOf(pellets, species),
        stove: pelletFront,
      }))
      .concat([
        {
          check: 'temperature of the front',
          ...rowsOf('front temperature', '°C'),
          ours: bandOf(pellets, 'temperature'),
          stove: pelletFront,
        },
      ])
  },
}

const given: CheckSet = {
  title: 'what the front was told',
  source: 'the coefficient table',
  standing: 'given',
  note: 'These numbers set a coefficient; that they come out again proves nothing but that they went in.',
  rows: () => {
    const told = sampled(['best', 'char', 'size', 'moisture'], (coefficients) => ({
      outcome: 'glows',
      figures: {
        best: airPerFuel(BEST, 0.1, coefficients),
        char: 100 * charYield(0.01, 0.1, BED, coefficients),
        size: charYield(0.03, 0.1, BED, coefficients) / charYield(0.007, 0.1, BED, coefficients),
        moisture: charYield(0.01, 0.22, BED, coefficients) / charYield(0.01, 0.1, BED, coefficients),
      },
    }))
    const row = (
      check: string,
      key: 'best' | 'char' | 'size' | 'moisture',
    ): Pick<BandRow, 'check' | 'ours' | 'stove'> => ({
      check,
      ours: bandOf(told, key),
      stove: 'coefficients alone',
    })
    return [
      {
        ...row('air for a kilogram of dry fuel at 0.09 m/s', 'best'),
        published: 1.8,
        unit: 'kg/kg',
        source: 'Mehta & Richards 2017 [bib:mehta2017]',
      },
      {
        ...row('char in a natural draught', 'char'),
        published: [20, 25],
        unit: '% of dry fuel',
        source: 'Reed & Larson 1996 [bib:reed1996]',
      },
      {
        ...row('char of 30 mm chips over that of 7 mm chips', 'size'),
        published: 21.8 / 12.2,
        unit: '',
        source: 'James, Yuan & Boyette 2016, blown [bib:james2016]',
      },
      {
        ...row('char at 22 % moisture over that at 10 %', 'moisture'),
        published: 9.9 / 12,
        unit: '',
        source: 'James, Yuan & Boyette 2016, blown [bib:james2016]',
      },
    ]
  },
}

export const frontSets: readonly CheckSet[] = [front, closureArithmetic, remembered, given]
