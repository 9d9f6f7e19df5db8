import { type Kelvin, toCelsius } from '#basis/units.ts'
import type { Trial, TrialPhase } from '#proof/trial/model.ts'
import { standardPressure } from '#science/atmosphere.ts'
import { lowerHeatingValue } from '#science/fuel/composition.ts'
import { fuelTable } from '#science/fuel/table.ts'
import { saturationTemperature } from '#science/pot/saturation.ts'

/** One reading, or one thing looked up, with its standard uncertainty, in the units of the formulas. */
export interface Input {
  readonly id: string
  readonly name: string
  readonly value: number
  /** Standard uncertainty. */
  readonly u: number
}

/** Half-width of a rectangular distribution to its standard deviation (GUM 4.3.7) [bib:gum2008]. */
const ROOT_3 = Math.sqrt(3)
/** A smallest step that is shown: the true value lies evenly within half a step either way. */
const stepped = (resolution: number): number => resolution / 2 / ROOT_3

/** Of the formula that gives a heating value from the analysis: 1.45 % mean absolute error [bib:channiwala2002], so much as a standard deviation. */
const HEATING_VALUE_SPREAD = 0.0145 * Math.sqrt(Math.PI / 2)
/** Lower heating value of char as test practice takes it, and how far it may be off; from memory [kJ/kg]. */
const CHAR_HEATING_VALUE = 29_500
const CHAR_HEATING_WITHIN = 1500
/** What the weather may put on the pressure of the standard atmosphere, either way; from memory [Pa]. */
const WEATHER = 1500
/** What a barometer that was read may be off, either way; from memory [Pa]. */
const BAROMETER = 100

/** Slope of the boiling point with pressure [K/Pa]. */
const boilingSlope = (pressure: number): number =>
  (saturationTemperature(pressure + 100) - saturationTemperature(pressure - 100)) / 200

const GRAMS = 1000
const MINUTE = 60

const heating = (
  given: { readonly value: number; readonly within?: number | undefined } | undefined,
  otherwise: { readonly value: number; readonly u: number },
): { readonly value: number; readonly u: number } =>
  given === undefined ? otherwise : { value: given.value / 1000, u: (given.within ?? 0) / 1000 / ROOT_3 }

const ofTable = (kind: string): { readonly value: number; readonly u: number } => {
  const fuel = fuelTable.get(kind)
  if (fuel === undefined) throw new Error(`No fuel ${kind} in the table`)
  const value = lowerHeatingValue(fuel.higherHeatingValue, fuel.analysis.H) / 1000
  return { value, u: value * HEATING_VALUE_SPREAD }
}

/** As measured in water there, else from the pressure of the air, else from the height above the sea. */
const boilingPoint = ({ weather, instruments }: Trial): Input => {
  if (weather.boilingPoint !== undefined)
    return {
      id: 'Tb',
      name: 'boiling point as measured',
      value: toCelsius(weather.boilingPoint as Kelvin),
      u: stepped(instruments.thermometer.resolution),
    }
  const pressure = weather.pressure ?? standardPressure(weather.altitude ?? 0)
  const within = weather.pressure === undefined ? WEATHER : BAROMETER
  return {
    id: 'pressure',
    name: 'boiling point from the air pressure',
    value: toCelsius(saturationTemperature(pressure) as Kelvin),
    u: (boilingSlope(pressure) * within) / ROOT_3,
  }
}

/** What all phases of a trial share: fuel, weather, and errors that a whole instrument carries through all its readings. */
const sharedInputs = (trial: Trial): readonly Input[] => {
  const { fuel, weather, instruments, pot } = trial
  const { scale, thermometer, moistureMeter } = instruments
  const mass = stepped(scale.resolution) * GRAMS
  const dry = heating(fuel.heatingValue, ofTable(fuel.kind))
  const char = heating(fuel.charHeatingValue, { value: CHAR_HEATING_VALUE, u: CHAR_HEATING_WITHIN / ROOT_3 })
  const moisture: readonly Input[] =
    'meter' in fuel.moisture
      ? [
          {
            id: 'meter',
            name: 'moisture read from the meter',
            value: fuel.moisture.meter,
            u: (moistureMeter?.accuracy ?? 0) / ROOT_3,
          },
        ]
      : [
          { id: 'before', name: 'sample before drying', value: fuel.moisture.before * GRAMS, u: mass },
          { id: 'after', name: 'sample after drying', value: fuel.moisture.after * GRAMS, u: mass },
        ]
  return [
    {
      id: 'scaleGain',
      name: 'what the scale shows too much, as a share',
      value: 0,
      u: (scale.accuracy ?? 0) / ROOT_3,
    },
    {
      id: 'thermometerOffset',
      name: 'what the thermometer shows too much',
      value: 0,
      u: (thermometer.accuracy ?? 0) / ROOT_3,
    },
    { id: 'P', name: 'empty pot', value: pot.weight * GRAMS, u: mass },
    {
      id: 'Ta',
      name: 'air temperature',
      value: toCelsius(weather.temperature as Kelvin),
      u: stepped(thermometer.resolution),
    },
    boilingPoint(trial),
    { id: 'L', name: 'heating value of the fuel', ...dry },
    { id: 'Lc', name: 'heating value of the char', ...char },
    ...moisture,
  ]
}

/** Readings of one phase; what was not read is not there. */
const phaseInputs = (trial: Trial, phase: TrialPhase, index: number): readonly Input[] => {
  const { scale, thermometer, clock } = trial.instruments
  const mass = (key: string, name: string, value: number): Input => ({
    id: `${index}.${key}`,
    name,
    value: value * GRAMS,
    u: stepped(scale.resolution) * GRAMS,
  })
  const water = (key: string, name: string, value: number): Input => ({
    id: `${index}.${key}`,
    name,
    value: toCelsius(value as Kelvin),
    u: stepped(thermometer.resolution),
  })
  const time = (key: string, name: string, value: number): Input => ({
    id: `${index}.${key}`,
    name,
    value: value / MINUTE,
    u: stepped(clock.resolution) / MINUTE,
  })
  const { from, to, char, boil } = phase
  return [
    mass('fi', 'fuel at the start', from.fuel),
    mass('ff', 'fuel left at the end', to.fuel),
    mass('Pi', 'pot with water at the start', from.pot),
    mass('Pf', 'pot with water at the end', to.pot),
    water('Ti', 'water at the start', from.water),
    water('Tf', 'water at the end', to.water),
    time('ti', 'start of the phase', from.at),
    time('tf', 'end of the phase', to.at),
    ...(char === null ? [] : [mass('c', 'char', char)]),
    ...(boil === null ? [] : [time('tb', 'moment of boiling', boil)]),
  ]
}

/** Every independent reading of a trial, each once: what enters a formula twice is one input, and so fully correlated with itself. */
export const inputsOf = (trial: Trial): readonly Input[] => [
  ...sharedInputs(trial),
  ...trial.phases.flatMap((phase, i) => phaseInputs(trial, phase, i)),
]
