import { medianCoefficients } from '#science/coefficients.ts'
import { type Front, frontModel } from '#science/fire/front.ts'
import { airPerFuel } from '#science/fire/source.ts'
import { fuelTable } from '#science/fuel/table.ts'
import { type Figure, figurePage } from './kit/page.ts'
import type { Point, Series } from './kit/panel.ts'
import { celsius, steps } from './stoves.ts'

const AMBIENT = 293.15
const BED = 0.1
const SLOW = 0.03
/** Volume of a mole of ideal gas at 0 °C and 101325 Pa [m³/mol]. */
const NORMAL_MOLAR_VOLUME = 0.022413969545

const fuel = fuelTable.get('wood-chips')

const frontAt = (moisture: number, air: number): Front | null => {
  if (fuel === undefined) throw new Error('no chips in the fuel table')
  const outcome = frontModel(fuel, moisture, AMBIENT, medianCoefficients, BED).close(air, AMBIENT)
  return outcome.ok ? outcome.front : null
}

const dryShare = (front: Front, species: 'CO' | 'CO2' | 'H2' | 'CH4'): number => {
  const { CO, CO2, H2, CH4, N2, Ar } = front.moles
  return (100 * front.moles[species]) / (CO + CO2 + H2 + CH4 + N2 + Ar)
}

/** Lower heating value of the dry gas, without tar [MJ/Nm³]. */
const gasHeat = ({ moles }: Front): number => {
  const total = moles.CO + moles.CO2 + moles.H2 + moles.CH4 + moles.N2 + moles.Ar
  const heat = moles.CO * 282_995 + moles.H2 * 241_826 + moles.CH4 * 802_301
  return heat / (total * NORMAL_MOLAR_VOLUME) / 1e6
}

const airs = steps(0.8, 3, 45)
const moistures = [0, 0.1, 0.2, 0.3]

/** Temperature and gas of the front against the air it gets and the water in the fuel. */
export const frontFigure = (): Figure => {
  const against = (moisture: number, of: (front: Front) => number): Point[] =>
    airs.map((air) => {
      const front = frontAt(moisture, air)
      return [air, front === null ? Number.NaN : of(front)]
    })
  const temperature: Series[] = moistures.map((moisture) => ({
    points: against(moisture, ({ temperature: T }) => celsius(T)),
    tone: moisture === 0.1 ? 'ember' : moisture > 0.1 ? 'cool' : 'ink',
    width: moisture === 0.1 ? 2.8 : 1.8,
    label: `${100 * moisture} %`,
  }))
  const gases: Series[] = (
    [
      ['CO', 'ember'],
      ['CO2', 'muted'],
      ['H2', 'cool'],
      ['CH4', 'fuel'],
    ] as const
  ).map(([species, tone]) => ({
    points: against(0.1, (front) => dryShare(front, species)),
    tone,
    label: species.replace('2', '₂').replace('4', '₄'),
  }))
  const wet = steps(0, 0.4, 41)
  const own = (of: (front: Front) => number): Point[] =>
    wet.map((moisture) => {
      const front = frontAt(moisture, airPerFuel(SLOW, moisture, medianCoefficients))
      return [100 * moisture, front === null ? Number.NaN : of(front)]
    })
  const heat = own(gasHeat)
  const wanted: Point[] = wet.map((m) => [100 * m, airPerFuel(SLOW, m, medianCoefficients)])
  const x = { label: 'kg of air a kg of dry fuel', from: 0.5, to: 3, ticks: 5 }
  const usual = medianCoefficients.airPerFuelSlow
  return figurePage({
    title: 'The front settles what the gas is',
    lead: 'A front that gets more air runs hotter and its gas poorer. Water in the fuel cools it, so wet fuel takes more air for every kilogram, and gives a weaker gas.',
    rows: [
      [
        {
          heading: 'Front, °C, by moisture',
          x,
          y: { label: '', from: 200, to: 1600, ticks: 7 },
          series: temperature,
          rules: [{ axis: 'x', at: usual, dash: true }],
        },
        {
          heading: 'Dry gas at 10 % moisture, vol %',
          x,
          y: { label: '', from: 0, to: 40, ticks: 4 },
          series: gases,
          rules: [{ axis: 'x', at: usual, dash: true }],
        },
      ],
      [
        {
          heading: 'Air that the model lets the front take, kg/kg',
          x: { label: 'moisture of the fuel, % wet basis', from: 0, to: 40 },
          y: { label: '', from: 0, to: 3, ticks: 3 },
          height: 130,
          series: [{ points: wanted, tone: 'cool' }],
        },
        {
          heading: 'Heating value of the dry gas then, MJ/Nm³',
          x: { label: 'moisture of the fuel, % wet basis', from: 0, to: 40 },
          y: { label: '', from: 0, to: 6, ticks: 3 },
          height: 130,
          series: [{ points: heat, tone: 'ember' }],
        },
      ],
    ],
    foot: 'Dashed: 1.5, where a natural draught’s front runs by the literature. Air-dry softwood chips, bed Ø100 mm, air of 20 °C, 5 % of the heat lost through the wall; char, tar and methane by correlation, the rest by balances of atoms and heat and the water-gas shift. Char yield is held while the air changes.',
  })
}
