import type { Block } from '../page/block.ts'
import type { BuildStep } from '../steps/step.ts'
import { stepSvg } from '../steps/svg.ts'

/** One step: its picture, what to do, what to measure before going on. */
const stepBlock = ({ title, sentences, checks, tools, picture }: BuildStep, index: number): Block => ({
  kind: 'together',
  blocks: [
    { kind: 'subheading', text: `${index + 1}. ${title}` },
    {
      kind: 'beside',
      share: 0.4,
      left: [{ kind: 'picture', svg: stepSvg(picture).trim(), says: `${title}.`, share: 1, tallest: 230 }],
      right: [
        ...sentences.map((text) => ({ kind: 'text' as const, text })),
        ...(tools.length === 0
          ? []
          : [{ kind: 'text' as const, muted: true, text: `Tools: ${tools.join(', ')}.` }]),
        ...(checks.length === 0
          ? []
          : [
              { kind: 'text' as const, muted: true, text: 'Measure before you go on:' },
              { kind: 'list' as const, items: checks.map(({ sentence }) => sentence) },
            ]),
      ],
    },
  ],
})

/** How to build it, step by step. */
export const stepBlocks = (steps: readonly BuildStep[], cautions: readonly string[]): readonly Block[] => [
  { kind: 'heading', text: 'Building it, step by step' },
  { kind: 'cautions', title: 'While you cut', items: cautions },
  ...steps.map(stepBlock),
]
