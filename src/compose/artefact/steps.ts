import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import type { BuildStep } from '#craft/steps/step.ts'
import { stepSvg } from '#craft/steps/svg.ts'
import { type ArtefactFile, textFile } from './file.ts'

/** `07-drill-wall-of-shell.svg`: in the order of the steps in any list of files. */
const pictureName = ({ key }: BuildStep, index: number): string =>
  `${String(index + 1).padStart(2, '0')}-${fileNameOf(key)}.svg`

/** A picture goes about by itself: what to do and every caution go with it. */
const wordsOf = ({ sentences, checks }: BuildStep): readonly string[] => [
  ...sentences,
  ...checks.map(({ sentence }) => sentence),
  ...MAKING_CAUTIONS,
]

/** The picture of every step as an SVG of its own. */
export const stepFiles = (steps: readonly BuildStep[]): readonly ArtefactFile[] =>
  steps.map((step, index) => textFile(pictureName(step, index), stepSvg(step.picture, wordsOf(step))))
