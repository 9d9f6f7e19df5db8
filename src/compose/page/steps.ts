import type { BuildStep } from '#craft/steps/step.ts'
import { wrap } from './text.ts'

const bullets = (title: string, lines: readonly string[], width: number): readonly string[] =>
  lines.length === 0
    ? []
    : [wrap(title, width, '  '), ...lines.map((line) => wrap(line, width, '  - ', '    '))]

/** One step; its cautions where they are others than the last step’s. */
const stepBlock = (
  step: BuildStep,
  number: number,
  before: BuildStep | undefined,
  picture: string | null,
  width: number,
): string =>
  [
    wrap(`${number}. ${step.title}`, width),
    ...step.sentences.map((sentence) => wrap(sentence, width, '  ', '  ')),
    ...bullets(
      'Check before you go on:',
      step.checks.map(({ sentence }) => sentence),
      width,
    ),
    wrap(`With: ${step.tools.join('; ')}`, width, '  ', '    '),
    ...(step.cautions.join() === before?.cautions.join()
      ? []
      : bullets('Caution, from here on:', step.cautions, width)),
    ...(picture === null ? [] : [wrap(`Picture: ${picture}`, width, '  ', '    ')]),
  ].join('\n')

/** The page of build steps, block by block. */
export const stepBlocks = (
  steps: readonly BuildStep[],
  pictures: readonly string[],
  width: number,
): readonly string[] =>
  steps.map((step, index) => stepBlock(step, index + 1, steps[index - 1], pictures[index] ?? null, width))
