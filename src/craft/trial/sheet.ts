import { MAKING_CAUTIONS } from '../caution.ts'

/** What a prediction says beside the blanks of a trial, handed in as plain text in both systems; null: nothing. */
export interface TrialPrediction {
  readonly fuel: string | null
  readonly boil: string | null
  readonly flameOut: string | null
  readonly charTime: string | null
  readonly char: string | null
  readonly firepower: string | null
  readonly regime: string | null
}

export const NO_PREDICTION: TrialPrediction = {
  fuel: null,
  boil: null,
  flameOut: null,
  charTime: null,
  char: null,
  firepower: null,
  regime: null,
}

/** One blank of the trial sheet. */
export interface TrialField {
  /** A stable word for programs. */
  readonly key: string
  readonly label: string
  /** What to write behind the figure: `g or oz`. Empty for words. */
  readonly unit: string
  /** How it is taken, where that is not plain. */
  readonly how: string | null
  readonly predicted: string | null
  /** Room to write in [mm]. */
  readonly room: number
}

export interface TrialGroup {
  readonly title: string
  readonly fields: readonly TrialField[]
}

/** A blank sheet as data: what is written by hand, with what was predicted or planned beside it. */
export interface TrialSheet {
  readonly stove: string
  readonly title: string
  /** What stands beside the blanks. */
  readonly beside: 'predicted' | 'planned'
  readonly groups: readonly TrialGroup[]
  /** Paragraphs that go with it. */
  readonly notes: readonly string[]
  readonly cautions: readonly string[]
}

/** Widths of blanks that hold a figure, a clock time, words [mm]. */
const ROOM = { figure: 22, time: 22, words: 56, long: 132 }

const field = (
  key: string,
  label: string,
  unit: string,
  { how = null, predicted = null, room = ROOM.figure }: Partial<TrialField> = {},
): TrialField => ({ key, label, unit, how, predicted, room })

const clock = (key: string, label: string, how: string | null, predicted: string | null = null): TrialField =>
  field(key, label, 'clock', { how, predicted, room: ROOM.time })

const words = (key: string, label: string, how: string | null = null): TrialField =>
  field(key, label, '', { how, room: ROOM.words })

/** The blanks of one burn of a stove. */
export const trialSheet = (stove: string, prediction: TrialPrediction = NO_PREDICTION): TrialSheet => ({
  stove,
  title: `Trial sheet of ${stove}: one burn`,
  beside: 'predicted',
  notes: [],
  groups: [
    {
      title: 'The day',
      fields: [
        words('date', 'date and place'),
        words('variant', 'what is changed', 'One thing against the last burn; “nothing” for a repeat.'),
        field('temperature', 'air', '°C or °F', { how: 'In the shade.' }),
        field('wind', 'wind', 'm/s or mph', {
          how: 'At the stove’s height; 0 where a thread hangs straight.',
        }),
        words('windFrom', 'wind from', 'Which side of the front mark.'),
        words('damper', 'damper', 'Bearing, and when it was turned.'),
      ],
    },
    {
      title: 'Weighed before',
      fields: [
        field('fuel', 'fuel filled', 'g or oz', {
          how: 'Up to the planned level.',
          predicted: prediction.fuel,
        }),
        field('moisture', 'its moisture', '%', { how: 'Weight lost in drying over weight as it was.' }),
        field('starter', 'starter', 'g or oz', { how: 'Fire lighter, shavings.' }),
        field('potEmpty', 'pot with lid, empty', 'g or oz'),
        field('water', 'pot with lid and water', 'g or oz'),
        field('waterStart', 'water', '°C or °F', { how: 'When it goes on.' }),
      ],
    },
    {
      title: 'Times',
      fields: [
        clock('lit', 'lit', null),
        clock('flameOn', 'gas burns by itself', 'Starter burnt away, flame at the upper holes.'),
        clock('potOn', 'pot on', null),
        clock('boil', 'boils', 'Rolling, lid lifted once.', prediction.boil),
        clock('potOff', 'pot off', null),
        clock('flameOut', 'flame out', 'Last gas flame gone; the char glows.', prediction.flameOut),
        clock('cold', 'char out', 'No glow in the dark, wall cold.', prediction.charTime),
      ],
    },
    {
      title: 'Weighed after',
      fields: [
        field('waterEnd', 'pot with lid and water', 'g or oz', { how: 'When it came off.' }),
        field('waterWarmest', 'water at its warmest', '°C or °F', { how: 'Where it did not boil.' }),
        field('char', 'char and ash', 'g or oz', {
          how: 'Cold, dry; not where it was drowned.',
          predicted: prediction.char,
        }),
        field('unburnt', 'fuel left unburnt', 'g or oz'),
      ],
    },
    {
      title: 'Seen',
      fields: [
        field('regime', 'clean, smoky, smoulders?', '', {
          predicted: prediction.regime,
          room: ROOM.words,
        }),
        field('firepower', 'firepower', 'kW', {
          how: 'Worked out later from weights and times.',
          predicted: prediction.firepower,
        }),
        words('soot', 'soot on the pot', 'None, grey, black; where.'),
        words('hot', 'what glowed, warped', null),
        field('remarks', 'remarks', '', { room: ROOM.long }),
        field('more', '', '', { room: ROOM.long }),
      ],
    },
  ],
  cautions: MAKING_CAUTIONS,
})
