import type { Block } from '../page/block.ts'
import type { BuildStep } from '../steps/step.ts'
import { stepSvg } from '../steps/svg.ts'

/** Of the page’s width: the picture; the words take the rest. */
const PICTURE = 0.4
/** So many measures stay beside their picture. */
const FEW = 3

const checkBlocks = (checks: BuildStep['checks'], index: number): readonly Block[] =>
  checks.length === 0
    ? []
    : [
        { kind: 'text', muted: true, text: `Measure before you go on from step ${index + 1}:` },
        { kind: 'list', items: checks.map(({ sentence }) => sentence) },
      ]

/** One step: its picture, what to do, what to measure before going on; the measures may go on to the next page. */
const stepBlock = (
  { title, sentences, checks, tools, picture }: BuildStep,
  index: number,
): readonly Block[] => [
  {
    kind: 'together',
    blocks: [
      { kind: 'subheading', text: `${index + 1}. ${title}` },
      {
        kind: 'beside',
        share: PICTURE,
        left: [{ kind: 'picture', svg: stepSvg(picture).trim(), says: `${title}.`, share: 1, tallest: 230 }],
        right: [
          ...sentences.map((text) => ({ kind: 'text' as const, text })),
          ...(tools.length === 0
            ? []
            : [{ kind: 'text' as const, muted: true, text: `Tools: ${tools.join(', ')}.` }]),
          ...(checks.length > FEW ? [] : checkBlocks(checks, index)),
        ],
      },
    ],
  },
  ...(checks.length > FEW
    ? [{ kind: 'beside' as const, share: PICTURE, left: [], right: checkBlocks(checks, index) }]
    : []),
]

/** How to build it, step by step. */
export const stepBlocks = (
  steps: readonly BuildStep[],
  cautions: readonly string[],
  overview: readonly Block[],
): readonly Block[] => [
  { kind: 'heading', text: 'Building it, step by step' },
  { kind: 'cautions', title: 'While you cut', items: cautions },
  ...overview,
  ...steps.flatMap(stepBlock),
]
