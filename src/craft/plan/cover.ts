import { long } from '#basis/text/bothUnits.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import type { Block, Fact } from '../page/block.ts'
import { heightOfBlocks } from '../page/flow.ts'
import type { PageRoom } from '../page/lay.ts'
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

/** Set for a printed page of that height [px of the plate], or for screens wide and narrow. */
const sectionPicture = (input: PlanInput, tallest?: number): Block => {
  const { stove, burn } = input
  const summary = 'noBurn' in burn ? null : burn.summary
  const plate = { stove, burn: summary, theme: printTheme, notes: sectionNotes(input) }
  return {
    kind: 'picture',
    svg: pagePlate(plate, tallest).svg.trim(),
    ...(tallest === undefined ? { narrow: narrowPlate(plate, { answers: false }).svg.trim() } : {}),
    says: `${stove.name} cut down its centre line, with its parts, openings${summary === null ? '' : ', and the air and gas that go through them'}.`,
    share: 1,
    firm: true,
  }
}

/** From outside, beside what it does and weighs. */
const factBlocks = (input: PlanInput): readonly Block[] => {
  const { stove, burn, views } = input
  const facts: Block = {
    kind: 'facts',
    facts: [...('noBurn' in burn ? [] : coverFacts(burn.summary, burn.report)), ...buildFacts(input)],
  }
  if (views === null) return [facts]
  return [
    {
      kind: 'beside',
      share: 0.2,
      left: [
        {
          kind: 'picture',
          svg: views.whole,
          says: `${stove.name} from outside.`,
          share: 1,
          tallest: 165,
        },
      ],
      right: [facts],
    },
  ]
}

const warningBlocks = ({ burn, findings }: PlanInput): readonly Block[] => {
  const warns = findings.filter(({ severity }) => severity === 'warn').length
  return warns === 0 || 'noBurn' in burn
    ? []
    : [
        {
          kind: 'text',
          text: `${warns === 1 ? 'One thing' : `${warns} things`} will disappoint or ${warns === 1 ? 'is' : 'are'} hard to make: read the head of “What it does” first.`,
        },
      ]
}

/** Heights of the section to try until the cover goes on its page [px of the plate]. */
const SECTION_HEIGHTS = [400, 360, 320, 280, 240]

export interface Cover {
  readonly first: readonly Block[]
  /** What found no room on it and opens the next page. */
  readonly next: readonly Block[]
}

/**
 * The first page: what it is, cut open, from outside, and what to fear. The section gives way until all goes on one page of
 * the given room; where that is not enough, figures go over to the next, the cautions never.
 */
export const coverOf = (input: PlanInput, stops: readonly Block[], room: PageRoom | null): Cover => {
  const { burn, shop } = input
  const said: readonly Block[] =
    'noBurn' in burn ? [{ kind: 'text', text: `As drawn it does not burn: ${burn.noBurn}` }] : []
  const cautions: readonly Block[] = [
    ...warningBlocks(input),
    { kind: 'cautions', title: 'Before anyone cuts or burns', items: shop.cautions },
  ]
  const facts = factBlocks(input)
  if (room === null)
    return { first: [...stops, sectionPicture(input), ...said, ...facts, ...cautions], next: [] }
  const fits = (blocks: readonly Block[]): boolean => heightOfBlocks(blocks, room.width) <= room.height
  for (const tallest of SECTION_HEIGHTS) {
    const whole = [...stops, sectionPicture(input, tallest), ...said, ...facts, ...cautions]
    if (fits(whole)) return { first: whole, next: [] }
  }
  const section = sectionPicture(input, SECTION_HEIGHTS[0])
  const short = [...stops, section, ...said, ...cautions]
  return fits(short)
    ? { first: short, next: facts }
    : { first: [...stops, ...said, ...cautions, section], next: facts }
}
