import { formatQuantity } from '#basis/text/format.ts'
import type { AirPassage, BurnSummary } from './airState.ts'
import { celsius, fahrenheit, figure, flowText, temperatureText } from './wording.ts'

/** One answer beside the picture. */
export interface Answer {
  readonly caption: string
  readonly value: string
  /** The same in the other system of units; null where there is but one. */
  readonly other: string | null
  readonly notes: readonly string[]
}

export interface Share {
  readonly name: string
  /** [1] */
  readonly share: number
}

/** What each regime means for the maker, in a sentence. */
const REGIMES: Readonly<Record<string, string>> = {
  clean: 'Air enough for the gas, and not so much that it cools the flame. No promise of clean air.',
  smoulder: 'Too little air comes up through the fuel: the front smoulders and smokes.',
  'rich and smoky': 'Too little air for the gas: part of it leaves unburnt.',
  'quenched lean': 'So much air that the flame may be cooled out.',
}

/** International table Btu per hour in a watt, 3600/1055.06. */
const BTU_PER_HOUR = 3.412142

/** Avoirdupois ounce, exactly. */
const KILOGRAMS_PER_OUNCE = 0.028349523125

/** A firepower that changes less than this on the way is said once [1]. */
const UNEVEN = 0.08

/** The few answers beside the section, in words for people: firepower, burn time, air, flame, regime. */
export const answersOf = ({ halfway, fuel, woodGas }: BurnSummary): readonly Answer[] => {
  const { air, temperature, regime } = halfway
  const kilowatts = (watts: number): string => figure(watts / 1000)
  const btuPerHour = (watts: number): string => String(Number((watts * BTU_PER_HOUR).toPrecision(2)))
  const range = [woodGas.firepowerLowest, woodGas.firepowerHighest]
  const varies = woodGas.firepowerHighest - woodGas.firepowerLowest > UNEVEN * woodGas.firepower
  return [
    {
      caption: 'firepower',
      value: `${kilowatts(woodGas.firepower)} kW`,
      other: `${btuPerHour(woodGas.firepower)}\u00a0Btu/h`,
      notes: [
        'mean of the wood-gas phase',
        ...(varies
          ? [
              `from ${range.map(kilowatts).join(' to ')} kW (${range.map(btuPerHour).join(' to ')} Btu/h) on the way`,
            ]
          : []),
      ],
    },
    {
      caption: 'burns wood gas for',
      value: formatQuantity(Math.round(woodGas.duration / 60) * 60, 'burnTime'),
      other: null,
      notes: [
        // What the fuel's name goes on to say is how large its pieces are.
        `${Math.round(fuel.charge * 1000)} g (${figure(fuel.charge / KILOGRAMS_PER_OUNCE)} oz) of ${fuel.label.split(',')[0]}`,
        `${Math.round(fuel.moisture * 100)}\u00a0% moisture`,
      ],
    },
    {
      caption: 'secondary to primary air',
      value: `${figure(air.secondaryToPrimary)} : 1`,
      other: null,
      notes: [
        `primary ${flowText(air.primary)}`,
        `secondary ${flowText(air.secondary)}`,
        ...(air.tertiary > 0 ? [`tertiary ${flowText(air.tertiary)}`] : []),
      ],
    },
    {
      caption: 'flame, mixed through',
      value: celsius(temperature.flame),
      other: fahrenheit(temperature.flame),
      notes: [`front ${temperatureText(temperature.front)}`],
    },
    {
      caption: 'regime',
      value: regime,
      other: null,
      notes: REGIMES[regime] === undefined ? [] : [REGIMES[regime]],
    },
  ]
}

/** What a maker calls a passage: an opening by its own name, stretches of one bed or gap by one. */
const calledBy = ({ kind, name, opening }: AirPassage): string => {
  if (kind === 'opening') return opening ?? name
  return kind === 'gap' ? 'gap between the cans' : kind === 'bed' ? 'fuel bed' : name
}

/** Smaller shares are not listed [1]. */
const WORTH_TELLING = 0.03

/** Where the draught is spent, most first. */
export const draughtShares = (passages: readonly AirPassage[]): readonly Share[] => {
  const sums = new Map<string, number>()
  for (const passage of passages) {
    const name = calledBy(passage)
    sums.set(name, (sums.get(name) ?? 0) + passage.lossShare)
  }
  return [...sums]
    .map(([name, share]) => ({ name, share }))
    .filter(({ share }) => share >= WORTH_TELLING)
    .sort((a, b) => b.share - a.share)
}
