import { quantity } from '#basis/quantities.ts'
import { long } from '#basis/text/bothUnits.ts'
import { formatQuantity } from '#basis/text/format.ts'
import type { Measure } from '#stove/built/measure.ts'
import { builtSheet } from '#stove/built/sheet.ts'
import type { Stove } from '#stove/model.ts'
import type { Block } from '../page/block.ts'
import { figureTwice } from '../told/band.ts'
import type { TrialSheet } from '../trial/sheet.ts'

const plannedText = ({ planned, quantity: key }: Measure): string =>
  planned === null
    ? ''
    : quantity(key).kind === 'length'
      ? long(planned)
      : quantity(key).kind === 'mass'
        ? figureTwice(planned, key, 'oz')
        : formatQuantity(planned, key)

/** What to measure on the finished stove, with room to write. */
export const builtBlocks = (stove: Stove): readonly Block[] => {
  const measures = builtSheet(stove)
  const places = [...new Set(measures.map(({ part }) => part))]
  return [
    { kind: 'heading', text: 'As built' },
    {
      kind: 'text',
      text: 'No two stoves come out alike. Measure yours when it is done and write it here: with these figures the prediction is for the stove you have, and whoever compares burns knows what was burnt. They can be entered as a file of their own beside the stove file.',
    },
    ...places.flatMap((part): readonly Block[] => [
      { kind: 'subheading', text: part ?? 'Fuel' },
      {
        kind: 'table',
        head: ['', 'how', 'planned', 'measured'],
        widths: [3.4, 5.6, 3, 3],
        rows: measures
          .filter((measure) => measure.part === part)
          .map((measure) => [
            measure.opening === null ? measure.label : `${measure.opening}: ${measure.label}`,
            measure.how,
            plannedText(measure),
            '',
          ]),
      },
    ]),
  ]
}

/** The blanks of one burn, as on the sheet by itself. */
export const trialBlocks = ({ groups }: TrialSheet): readonly Block[] => [
  { kind: 'heading', text: 'Trial sheet' },
  {
    kind: 'text',
    text: 'One sheet a burn. Change one thing at a time, burn each variant three times or more, and mix the order: a day, a batch of fuel or a hand that learns changes more than a hole does.',
  },
  ...groups.map(
    ({ title, fields }): Block => ({
      kind: 'together',
      blocks: [
        { kind: 'subheading', text: title },
        {
          kind: 'fields',
          fields: fields.map(({ label, unit, predicted }) => ({
            label,
            unit,
            ...(predicted === null ? {} : { beside: `predicted ${predicted}` }),
          })),
        },
      ],
    }),
  ),
]
