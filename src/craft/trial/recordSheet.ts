import { MAKING_CAUTIONS } from '../caution.ts'
import type { Block, Field, Section } from '../page/block.ts'

/** A line to write on and the key of the trial file that it fills. */
interface Blank extends Field {
  readonly key: string
}

interface Group {
  readonly title: string
  /** Two abreast, in this order. */
  readonly blanks: readonly Blank[]
  /** How it is taken, where that is not plain. */
  readonly how: string | null
}

const blank = (key: string, label: string, unit = ''): Blank => ({ key, label, unit })

const MASS = 'g or oz'
const DEGREES = '°C or °F'
const AFTER = 'min and s'

/** What is read at the beginning of a phase stands beside what is read at its end. */
const phase = (key: string, boils: boolean): readonly Blank[] => [
  blank(`${key}.from.at`, 'begins, after lighting', AFTER),
  blank(`${key}.to.at`, 'ends, after lighting', AFTER),
  blank(`${key}.from.fuel`, 'fuel not yet burnt', MASS),
  blank(`${key}.to.fuel`, 'fuel left unburnt', MASS),
  blank(`${key}.from.pot`, 'pot with water', MASS),
  blank(`${key}.to.pot`, 'pot with water', MASS),
  blank(`${key}.from.water`, 'water', DEGREES),
  blank(`${key}.to.water`, 'water', DEGREES),
  ...(boils ? [blank(`${key}.boil`, 'boils, after lighting', AFTER)] : []),
  blank(`${key}.char`, 'char made', MASS),
]

const FIRST: readonly Group[] = [
  {
    title: 'The burn',
    blanks: [
      blank('name', 'what you call it'),
      blank('day', 'day'),
      blank('stove.variant', 'stove and variant'),
      blank('place', 'place in its series'),
      blank('start', 'stove cold or hot'),
      blank('stove.asBuilt', 'not as drawn'),
    ],
    how: 'One thing changed against the last burn. Place: in the order that was drawn by lot.',
  },
  {
    title: 'Fuel',
    blanks: [
      blank('fuel.kind', 'kind'),
      blank('fuel.batch', 'which sack'),
      blank('fuel.moisture.before', 'sample as it is', MASS),
      blank('fuel.moisture.after', 'the same, oven-dried', MASS),
      blank('fuel.moisture.meter', 'or by a meter', '%'),
      blank('kindling', 'kindling'),
      blank('fuel.weighed', 'fuel weighed', 'before lit, or pot on'),
      blank('kindling.weighed', 'kindling in it', 'yes or no'),
    ],
    how: 'Sample: a handful out of the same sack, dried at 105 °C (221 °F) until it loses no more. Meter: wet basis, and how far it may be off.',
  },
  {
    title: 'Weather, pot, instruments',
    blanks: [
      blank('weather.temperature', 'air, in the shade', DEGREES),
      blank('weather.pressure', 'pressure or altitude', 'hPa, m or ft'),
      blank('weather.wind', 'wind', 'm/s or mph'),
      blank('weather.boilingPoint', 'or a boil reads', DEGREES),
      blank('pot.weight', 'pot, dry and empty', MASS),
      blank('pot.diameter', 'its width; lid?', 'mm or in'),
      blank('instruments.scale.resolution', 'scale, smallest step', MASS),
      blank('instruments.thermometer.resolution', 'thermometer, step', DEGREES),
    ],
    how: 'Wind at the stove’s height: 0 where a thread hangs straight. The lid stays on the scale with the pot always, or never.',
  },
  {
    title: 'Full power',
    blanks: phase('phases.1', true),
    how: 'Begins when the pot goes on, ends at the boil or when the flame is out: in every burn of a series alike. With the stove on the scale, the fuel burnt is what it has lost and the char made. Stir before you read the water. Char goes into a lidded tin to go out, and is weighed cold and dry, ash knocked off.',
  },
]

const SECOND: readonly Group[] = [
  {
    title: 'Simmering, where you try it',
    blanks: phase('phases.2', false),
    how: 'Turned down after the boil, the water kept a little below it.',
  },
  {
    title: 'By the clock',
    blanks: [
      blank('events.lit', 'lit', 'clock'),
      blank('events.flame on', 'flame on', 'clock'),
      blank('events.pot on', 'pot on', 'clock'),
      blank('events.smoke', 'smoke, from and to', 'clock'),
      blank('events.damper to', 'damper turned, where to', 'clock'),
      blank('events.refuel', 'fuel added, how much', 'clock'),
      blank('events.flame out', 'flame out', 'clock'),
      blank('events.char out', 'char out', 'clock'),
    ],
    how: 'Flame on: the starter has burnt away and gas burns by itself. Flame out: the last gas flame is gone and the char glows. Char out: no glow in the dark, wall cold.',
  },
  {
    title: 'What went wrong, and remarks',
    blanks: [
      ...Array.from({ length: 8 }, (_, i) => [
        blank(`wentWrong.${i + 1}`, ''),
        blank(`about.${i + 1}`, ''),
      ]).flat(),
    ],
    how: null,
  },
]

/** Keys of the trial file that the sheet has room for, in its order. */
export const RECORD_KEYS: readonly string[] = [...FIRST, ...SECOND].flatMap(({ blanks }) =>
  blanks.map(({ key }) => key),
)

const blocksOf = ({ title, blanks, how }: Group): Block => ({
  kind: 'together',
  blocks: [
    { kind: 'subheading', text: title },
    ...(how === null ? [] : [{ kind: 'text', text: how, muted: true } as const]),
    { kind: 'fields', fields: blanks },
  ],
})

/** A sheet for one burn of any stove, on two pages: everything a trial file asks for. */
export const recordSections = (stove: string): readonly Section[] => [
  {
    id: 'burn',
    title: 'One burn',
    apart: true,
    blocks: [
      { kind: 'heading', text: stove === '' ? 'Trial: one burn' : `Trial of ${stove}: one burn` },
      {
        kind: 'text',
        text: 'Write the unit beside each figure; leave empty what you did not measure, and guess nothing.',
      },
      { kind: 'cautions', title: 'Before you burn', items: MAKING_CAUTIONS },
      ...FIRST.map(blocksOf),
    ],
  },
  {
    id: 'burn-on',
    title: 'One burn',
    apart: true,
    blocks: SECOND.map(blocksOf),
  },
]
