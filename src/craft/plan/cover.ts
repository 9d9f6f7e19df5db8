import { long } from '#basis/text/bothUnits.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import type { Block, Fact } from '../page/block.ts'
import type { BurnSummary } from '../section/airState.ts'
import { answersOf } from '../section/answers.ts'
import { narrowPlate } from '../section/narrowPlate.ts'
import { pagePlate } from '../section/pagePlate.ts'
import { lightTheme, type Theme } from '../section/theme.ts'
import { waterFact } from './burning.ts'
import type { PlanInput } from './input.ts'

/** Ink on the white of the paper. */
export const printTheme: Theme = { ...lightTheme, paper: '#ffffff', pot: '#f4efe6' }

const sectionNotes = (input: PlanInput): readonly string[] => [
  'Cut down the centre line, true to scale; tin is drawn thicker than it is. Rows and floor holes are turned into the cut, and each side shows half of what flows.',
  ...('noBurn' in input.burn
    ? []
    : [
        'Air, heat and times are the model’s medians with the front half way down, in calm air: a prediction, no measurement.',
      ]),
  'Wood gas contains carbon monoxide: burn outdoors only.',
]

/** What the section would say beside itself, and the water after firepower and time. */
const coverFacts = (summary: BurnSummary, report: BurnReport): readonly Fact[] =>
  answersOf(summary)
    .map(
      ({ caption, value, other, notes }): Fact => ({
        label: caption,
        value: other === null ? value : `${value} (${other})`,
        aside: notes.join('; '),
      }),
    )
    .toSpliced(2, 0, waterFact(report))

const buildFacts = ({ stove, bundle, shop }: PlanInput): readonly Fact[] => {
  const hours = (seconds: number): string => {
    const minutes = Math.round(seconds / 900) * 15
    return minutes < 90 ? `${minutes} min` : `${(minutes / 60).toFixed(1).replace('.0', '')} h`
  }
  return [
    ...(bundle === null
      ? []
      : [
          {
            label: 'weighs',
            value: bundle.weight,
            ...(stove.potDiameter === null ? {} : { aside: `for a pot of ${long(stove.potDiameter)}` }),
          },
          { label: 'packs into', value: bundle.packed },
        ]),
    {
      label: 'time to build',
      value: `${hours(shop.time.least)} to ${hours(shop.time.most)}`,
      aside: 'a practised hand, a first stove',
    },
  ]
}

/** The first page: what it is, cut open, from outside, and what to fear. */
export const coverBlocks = (input: PlanInput): readonly Block[] => {
  const { stove, burn, views, shop, findings } = input
  const summary = 'noBurn' in burn ? null : burn.summary
  const plate = { stove, burn: summary, theme: printTheme, notes: sectionNotes(input) }
  const stopped = findings.some(({ severity }) => severity === 'stop')
  const warns = findings.filter(({ severity }) => severity === 'warn').length
  const facts = [...('noBurn' in burn ? [] : coverFacts(burn.summary, burn.report)), ...buildFacts(input)]
  const says = `${stove.name} cut down its centre line, with its parts, openings${summary === null ? '' : ', and the air and gas that go through them'}.`
  return [
    {
      kind: 'picture',
      svg: pagePlate(plate, stopped ? 320 : undefined).svg.trim(),
      narrow: narrowPlate(plate, { answers: false }).svg.trim(),
      says,
      share: 1,
    },
    ...('noBurn' in burn
      ? [{ kind: 'text' as const, text: `As drawn it does not burn: ${burn.noBurn}` }]
      : []),
    ...(views === null
      ? [{ kind: 'facts' as const, facts }]
      : [
          {
            kind: 'beside' as const,
            share: 0.2,
            left: [
              {
                kind: 'picture' as const,
                svg: views.whole,
                says: `${stove.name} from outside.`,
                share: 1,
                tallest: 165,
              },
            ],
            right: [{ kind: 'facts' as const, facts }],
          },
        ]),
    ...(warns === 0 || 'noBurn' in burn
      ? []
      : [
          {
            kind: 'text' as const,
            text: `${warns === 1 ? 'One thing' : `${warns} things`} will disappoint or ${warns === 1 ? 'is' : 'are'} hard to make: read the head of “What it does” first.`,
          },
        ]),
    { kind: 'cautions', title: 'Before anyone cuts or burns', items: shop.cautions },
  ]
}
