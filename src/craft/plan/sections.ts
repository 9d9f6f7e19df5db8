import type { Finding } from '#stove/model.ts'
import type { Block, Section } from '../page/block.ts'
import type { PageRoom } from '../page/lay.ts'
import { NO_PREDICTION, type TrialPrediction, trialSheet } from '../trial/sheet.ts'
import { burningBlocks } from './burning.ts'
import { substituteBlocks } from './cans.ts'
import { closingBlocks } from './closing.ts'
import { coverOf, printTheme } from './cover.ts'
import type { PlanInput } from './input.ts'
import { builtBlocks, trialBlocks } from './sheets.ts'
import { findBlocks, scheduleBlocks } from './shop.ts'
import { stepBlocks } from './steps.ts'

const findingText = ({ part, opening, sentence, fix }: Finding): string =>
  `${part}${opening === null ? '' : `, ${opening}`}: ${sentence} ${fix}`

const findingBlocks = (
  findings: readonly Finding[],
  severity: 'stop' | 'warn',
  title: string,
): readonly Block[] => {
  const items = findings.filter((finding) => finding.severity === severity).map(findingText)
  return items.length === 0 ? [] : [{ kind: 'cautions', title, items }]
}

/** What stands against building it as drawn comes before anything else. */
const stopBlocks = (findings: readonly Finding[]): readonly Block[] =>
  findingBlocks(findings, 'stop', 'Do not build it as drawn')

/** What will disappoint comes before what is promised. */
const warnBlocks = (findings: readonly Finding[]): readonly Block[] =>
  findingBlocks(findings, 'warn', 'It will disappoint, or is hard to make')

const exploded = ({ views, stove }: PlanInput): readonly Block[] =>
  views === null
    ? []
    : [
        {
          kind: 'beside',
          share: 0.5,
          left: [
            {
              kind: 'picture',
              svg: views.exploded,
              says: `${stove.name} taken apart.`,
              share: 1,
              tallest: 250,
              caption: 'Taken apart, in the order it goes together.',
            },
          ],
          right: [
            {
              kind: 'picture',
              svg: views.cut,
              says: `${stove.name} cut open.`,
              share: 1,
              tallest: 250,
              caption: 'Cut open.',
            },
          ],
        },
      ]

/** Everything before the templates; `room` is that of a page, null on a screen. */
export const openingSections = (input: PlanInput, room: PageRoom | null = null): readonly Section[] => {
  const { burn, findings, windows, shop, steps } = input
  const cover = coverOf(input, stopBlocks(findings), room)
  return [
    {
      id: 'stove',
      title: 'The stove',
      blocks: [...cover.first, ...('noBurn' in burn ? [...cover.next, ...warnBlocks(findings)] : [])],
    },
    ...('noBurn' in burn
      ? []
      : [
          {
            id: 'burn',
            title: 'What it does',
            apart: true as const,
            blocks: [
              ...cover.next,
              ...warnBlocks(findings),
              ...burningBlocks(burn.report, burn.figure, printTheme),
            ],
          },
        ]),
    {
      id: 'find',
      title: 'What to find',
      blocks: [{ kind: 'heading', text: 'What to find' }, ...findBlocks(shop), ...substituteBlocks(windows)],
    },
    { id: 'cut', title: 'Cutting and drilling', blocks: scheduleBlocks(shop) },
    {
      id: 'build',
      title: 'Building it',
      apart: 'half',
      blocks: stepBlocks(steps, shop.cautions, exploded(input)),
    },
  ]
}

/** Everything after the templates. */
export const closingSections = (
  input: PlanInput,
  trial: TrialPrediction = NO_PREDICTION,
): readonly Section[] => [
  {
    id: 'trial',
    title: 'Trial sheet',
    apart: true,
    blocks: trialBlocks(trialSheet(input.stove.name, trial)),
  },
  { id: 'built', title: 'As built', apart: true, blocks: builtBlocks(input.stove) },
  { id: 'terms', title: 'Cautions and terms', blocks: closingBlocks(input) },
]
