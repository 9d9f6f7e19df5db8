/**
 * Units as people write them, by kind of quantity. One table for reading and for writing.
 *
 * Factors: NIST Special Publication 811 (2008), Appendix B.8 and its footnotes, where the inch, foot, pound,
 * gallon, mile and International Table Btu are exact [bib:thompson2008].
 */
export type Kind =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'density'
  | 'time'
  | 'velocity'
  | 'massFlow'
  | 'massFlux'
  | 'pressure'
  | 'temperature'
  | 'temperatureDifference'
  | 'energy'
  | 'specificEnergy'
  | 'power'
  | 'angle'
  | 'share'
  | 'ratio'
  | 'count'

export interface Unit<S extends string = string> {
  /** As we write it. */
  readonly symbol: S
  /** Other ways makers write it; capitals matter. */
  readonly spellings: readonly string[]
  /** SI value = (value + shift) × times / over; two integers wherever the factor is exact, so that 3/8 in is 0.009525 m. */
  readonly times: number
  readonly over: number
  readonly shift: number
}

const unit = <const S extends string>(
  symbol: S,
  spellings: readonly string[],
  times = 1,
  over = 1,
  shift = 0,
): Unit<S> => ({ symbol, spellings, times, over, shift })

/** One avoirdupois pound, exact: 0.453 592 37 kg [1e-8 kg]. */
const POUND = 45_359_237
/** One US gallon: 231 cubic inches, exact: 3.785 411 784 L [1e-12 m³]. */
const US_GALLON = 3_785_411_784
/** One International Table British thermal unit, exact [J]. */
const BTU = 1055.05585262
/** Conventional inch of mercury: 25.4 mm of 13 595.1 kg/m³ under standard gravity, exact [Pa]. */
const INCH_OF_MERCURY = 3386.388640341

/** The first unit of each kind is the SI unit, save for angles, which the house keeps in degrees. */
export const units = {
  length: [
    unit('m', ['metre', 'metres', 'meter', 'meters']),
    unit('mm', ['millimetre', 'millimetres', 'millimeter', 'millimeters'], 1, 1000),
    unit('cm', ['centimetre', 'centimetres', 'centimeter', 'centimeters'], 1, 100),
    unit('in', ['in.', 'inch', 'inches', '"'], 127, 5000),
    unit('ft', ['ft.', 'foot', 'feet', "'"], 381, 1250),
  ],
  area: [
    unit('m²', ['m2']),
    unit('cm²', ['cm2'], 1, 1e4),
    unit('mm²', ['mm2'], 1, 1e6),
    unit('in²', ['in2', 'sq in'], 64_516, 1e8),
  ],
  volume: [
    unit('m³', ['m3']),
    unit('L', ['l', 'litre', 'litres', 'liter', 'liters'], 1, 1000),
    unit('mL', ['ml'], 1, 1e6),
    unit('cm³', ['cm3', 'cc'], 1, 1e6),
    unit('US fl oz', ['fl oz US', 'US fluid ounce', 'US fluid ounces'], US_GALLON, 128e12),
    unit('US pt', ['US pint', 'US pints'], US_GALLON, 8e12),
    unit('US qt', ['US quart', 'US quarts'], US_GALLON, 4e12),
    unit('US gal', ['US gallon', 'US gallons'], US_GALLON, 1e12),
  ],
  mass: [
    unit('kg', ['kilogram', 'kilograms']),
    unit('g', ['gram', 'grams'], 1, 1000),
    unit('oz', ['oz.', 'ounce', 'ounces'], POUND, 16e8),
    unit('lb', ['lb.', 'lbs', 'pound', 'pounds'], POUND, 1e8),
  ],
  density: [
    unit('kg/m³', ['kg/m3']),
    unit('g/cm³', ['g/cm3', 'g/mL', 'kg/L'], 1000),
    unit('lb/ft³', ['lb/ft3'], POUND, 0.3048 ** 3 * 1e8),
  ],
  time: [
    unit('s', ['sec', 'second', 'seconds']),
    unit('min', ['mins', 'minute', 'minutes'], 60),
    unit('h', ['hr', 'hrs', 'hour', 'hours'], 3600),
  ],
  velocity: [unit('m/s', []), unit('km/h', [], 5, 18), unit('mph', ['mi/h'], 1397, 3125)],
  massFlow: [
    unit('kg/s', []),
    unit('g/s', [], 1, 1000),
    unit('g/min', [], 1, 60_000),
    unit('kg/h', [], 1, 3600),
    unit('lb/h', [], POUND, 3600e8),
  ],
  massFlux: [unit('kg/(m² s)', ['kg/(m2 s)', 'kg/m²s', 'kg/m2s'])],
  pressure: [
    unit('Pa', []),
    unit('hPa', [], 100),
    unit('kPa', [], 1000),
    unit('mbar', [], 100),
    unit('inHg', ['in Hg'], INCH_OF_MERCURY),
  ],
  temperature: [
    unit('K', []),
    unit('°C', ['C', '℃', 'degC', 'deg C'], 1, 1, 273.15),
    unit('°F', ['F', '℉', 'degF', 'deg F'], 5, 9, 459.67),
  ],
  temperatureDifference: [
    unit('K', []),
    unit('°C', ['C', '℃', 'degC', 'deg C']),
    unit('°F', ['F', '℉', 'degF', 'deg F'], 5, 9),
  ],
  energy: [
    unit('J', []),
    unit('kJ', [], 1000),
    unit('MJ', [], 1e6),
    unit('kWh', [], 3.6e6),
    unit('Btu', ['BTU'], BTU),
  ],
  specificEnergy: [
    unit('J/kg', []),
    unit('kJ/kg', [], 1000),
    unit('MJ/kg', [], 1e6),
    unit('Btu/lb', ['BTU/lb'], BTU, POUND / 1e8),
  ],
  power: [unit('W', []), unit('kW', [], 1000), unit('Btu/h', ['BTU/h', 'BTU/hr', 'Btu/hr'], BTU, 3600)],
  angle: [unit('°', ['deg', 'degree', 'degrees'])],
  share: [unit('%', ['percent', 'per cent'], 1, 100)],
  ratio: [],
  count: [],
} as const satisfies Record<Kind, readonly Unit[]>

export type UnitSymbol<K extends Kind = Kind> = (typeof units)[K][number]['symbol']

/** What the numbers of a kind are kept in, inside the house. */
export const siUnits = {
  length: 'm',
  area: 'm²',
  volume: 'm³',
  mass: 'kg',
  density: 'kg/m³',
  time: 's',
  velocity: 'm/s',
  massFlow: 'kg/s',
  massFlux: 'kg/(m² s)',
  pressure: 'Pa',
  temperature: 'K',
  temperatureDifference: 'K',
  energy: 'J',
  specificEnergy: 'J/kg',
  power: 'W',
  angle: 'deg',
  share: '1',
  ratio: '1',
  count: '1',
} as const satisfies Record<Kind, string>

/** What a kind is called in a sentence. */
export const kindNames: Readonly<Record<Kind, string>> = {
  length: 'length',
  area: 'area',
  volume: 'volume',
  mass: 'mass',
  density: 'density',
  time: 'time',
  velocity: 'speed',
  massFlow: 'mass flow',
  massFlux: 'mass flow through an area',
  pressure: 'pressure',
  temperature: 'temperature',
  temperatureDifference: 'temperature difference',
  energy: 'energy',
  specificEnergy: 'energy per mass',
  power: 'power',
  angle: 'angle',
  share: 'share',
  ratio: 'ratio',
  count: 'count',
}

/** A value in this unit as the house keeps it [SI unit of the kind]. */
export const toSi = (value: number, { times, over, shift }: Unit): number => ((value + shift) * times) / over

/** A value of the house in this unit [the unit]. */
export const fromSi = (value: number, { times, over, shift }: Unit): number => (value * over) / times - shift

/** The unit of a kind by its own symbol, or null where the kind has no such unit. */
export const unitBySymbol = (kind: Kind, symbol: string): Unit | null => {
  const ofKind: readonly Unit[] = units[kind]
  return ofKind.find((candidate) => candidate.symbol === symbol) ?? null
}
