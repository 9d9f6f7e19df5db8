import type { RandomStream } from '#basis/random.ts'
import { randomStream } from '#basis/random.ts'
import { offeredOrder } from '#proof/compare/offeredOrder.ts'
import type { TrialFile } from '#proof/trial/schema.ts'
import { normalQuantile } from '#science/bands/spread.ts'
import { SERIES_VARIANTS, type SeriesVariant, variantFile } from './variants.ts'

/**
 * Seed of the series. Chosen from many so that the story has what real series have: one variant that does nothing and yet
 * looks as if it helped. Its truth stands in `variants.ts`; only luck speaks for it.
 */
const SERIES_SEED = 3499

/** The four days. Water comes out of the hut's tank, the fuel out of two sacks, three burns of each a day. */
const DAYS = [
  { day: '2032-01-10', air: 6.4, water: 9.1, pressure: 1009, first: 'ABC' },
  { day: '2032-01-11', air: 4.2, water: 8.3, pressure: 1003, first: 'ADE' },
  { day: '2032-01-17', air: 7.1, water: 9.6, pressure: 1017, first: 'BDF' },
  { day: '2032-01-18', air: 5.5, water: 8.8, pressure: 1012, first: 'CEF' },
] as const

/** A sample of 60 g from each, dried once. */
const SACKS = {
  'sack 1': { before: 60, after: 53, push: 1.02 },
  'sack 2': { before: 60, after: 52, push: 0.98 },
} as const

/** The stove as planned, in the story. */
const POWER = 372
const FLAME_OUT = 13.3
const CHAR_SHARE = 0.195
/** How burns of one stove differ, as shares: one standard deviation. */
const SPREAD = { power: 0.042, lasts: 0.025, char: 0.05 }
const SPREAD_OF_DAYS = 0.03

const POT = 182
const WATER = 500
const FILLED = 124
const SPECIFIC_HEAT = 4.186
const LATENT_HEAT = 2260

/** A share that is 1 in the middle, lognormal. */
const around = (stream: RandomStream, spread: number): number =>
  Math.exp(spread * normalQuantile(Math.min(Math.max(stream.uniform(), 1e-9), 1 - 1e-9)))

const two = (value: number): string => String(value).padStart(2, '0')
const clock = (seconds: number): string => {
  const whole = Math.round(seconds)
  return whole % 60 === 0 ? `${whole / 60} min` : `${Math.floor(whole / 60)} min ${whole % 60} s`
}
const grams = (value: number): string => `${Math.round(value)} g`
const degrees = (value: number): string => `${value.toFixed(1)} °C`

/** Universal time of a moment after the first lighting of a day, which is at nine. */
const instant = (day: string, seconds: number): string => {
  const at = 9 * 3600 + Math.round(seconds)
  return `${day}T${two(Math.floor(at / 3600))}:${two(Math.floor(at / 60) % 60)}:${two(at % 60)}Z`
}

/** From one lighting to the next: each stove is its own, so none has to go cold first. */
const BETWEEN = 26 * 60

const burnOf = (
  variant: SeriesVariant,
  day: (typeof DAYS)[number],
  dayPush: number,
  place: number,
  inDay: number,
  stream: RandomStream,
  revision: string,
): TrialFile => {
  const sack = (day.first as string).includes(variant.letter) ? 'sack 1' : 'sack 2'
  const { before, after, push } = SACKS[sack]
  const power = POWER * variant.truth.power * push * dayPush * around(stream.fork('power'), SPREAD.power)
  const lasts =
    (60 * FLAME_OUT * variant.truth.lasts * around(stream.fork('lasts'), SPREAD.lasts)) / Math.sqrt(push)
  const filled = FILLED + stream.fork('filled').between(-1.4, 1.4)
  const potOn = 100 + Math.round(stream.fork('pot').between(0, 40))
  const flameOn = potOn - 20 - Math.round(stream.fork('flame').between(0, 20))
  const water = WATER + stream.fork('water').between(-2.4, 2.4)
  const start = day.water + stream.fork('start').between(-0.4, 0.4)
  // Boiling point by the pressure of the day, near enough for a story.
  const boiling = 100 + (day.pressure - 1013.25) * 0.028
  const boil = potOn + (water * SPECIFIC_HEAT * (boiling - start)) / power
  const boils = boil < lasts - 5
  const steam = 3 + (boils ? (0.92 * power * (lasts - boil)) / LATENT_HEAT : 0)
  const end = boils ? boiling : start + ((lasts - potOn) * power) / (water * SPECIFIC_HEAT)
  const char = filled * CHAR_SHARE * around(stream.fork('char'), SPREAD.char)
  // The stove stands on the scale: what is gone when the pot goes on is known.
  const gone = (filled * 0.6 * potOn) / lasts
  const lit = inDay * BETWEEN
  const id = (what: string): string => `heron-${two(place)}-${what}`
  return {
    $schema: '../../schema/trial.schema.json',
    format: 'tinwright/trial@1',
    name: `Heron, burn ${place}`,
    about: 'Invented demo data: made by a program with a seed, nobody burnt it. Made by scripts/series.ts.',
    day: day.day,
    place,
    stove: {
      name: 'Heron',
      variant: variant.variant,
      file: variantFile(variant),
      revision,
    },
    fuel: {
      kind: 'wood-chips',
      batch: sack,
      moisture: { before: grams(before), after: grams(after) },
      weighed: 'at the start',
    },
    kindling: { what: 'a curl of birch bark', weight: '1 g', weighed: 'apart' },
    weather: {
      temperature: degrees(day.air + 0.3 * inDay),
      pressure: `${day.pressure} hPa`,
      wind: '0 m/s',
    },
    pot: { weight: grams(POT), diameter: '140 mm', lid: false },
    start: 'cold',
    instruments: {
      scale: { resolution: '1 g', accuracy: '0.5 %' },
      thermometer: { resolution: '0.1 K', accuracy: '0.5 K' },
      clock: { resolution: '1 s' },
    },
    phases: [
      {
        phase: 'high power',
        from: {
          at: clock(potOn),
          fuel: grams(filled - gone),
          pot: grams(POT + water),
          water: degrees(start),
        },
        to: {
          at: clock(lasts),
          fuel: '0 g',
          pot: grams(POT + water - steam),
          water: degrees(end),
        },
        char: grams(char),
        ...(boils ? { boil: clock(boil) } : {}),
      },
    ],
    events: [
      { id: id('lit'), at: instant(day.day, lit), event: 'lit' },
      { id: id('flame'), at: instant(day.day, lit + flameOn), event: 'flame on' },
      { id: id('pot-on'), at: instant(day.day, lit + potOn), event: 'pot on' },
      ...(boils ? [{ id: id('boil'), at: instant(day.day, lit + boil), event: 'boil' as const }] : []),
      { id: id('out'), at: instant(day.day, lit + lasts), event: 'flame out' },
      { id: id('pot-off'), at: instant(day.day, lit + lasts + 8), event: 'pot off' },
    ],
    masses: [
      {
        id: id('char'),
        at: instant(day.day, lit + lasts + 150),
        of: 'char',
        mass: grams(char),
        text: 'Tipped into a lidded tin to go out, weighed cold.',
      },
    ],
  }
}

/**
 * All burns in the order they were drawn to be burnt in, a round a day. `revisionOf` gives the hash of a variant's stove
 * file.
 */
export const seriesBurns = (
  revisionOf: (variant: SeriesVariant) => string,
  seed = SERIES_SEED,
): readonly TrialFile[] => {
  const stream = randomStream(seed)
  const letters = SERIES_VARIANTS.map(({ letter }) => letter)
  const { burns } = offeredOrder(letters, DAYS.length, seed)
  return burns.map(({ place, round, variant }) => {
    const day = DAYS[round - 1] as (typeof DAYS)[number]
    const inDay = burns.filter((one) => one.round === round && one.place < place).length
    const found = SERIES_VARIANTS.find(({ letter }) => letter === variant) as SeriesVariant
    const dayPush = around(stream.fork(`day ${round}`), SPREAD_OF_DAYS)
    return burnOf(found, day, dayPush, place, inDay, stream.fork(`burn ${place}`), revisionOf(found))
  })
}
