import { orThrow } from '#basis/problem.ts'
import { readCount } from '#basis/text/read.ts'
import type { Progress } from '#science/answers/sampled.ts'
import type { Environment } from './environment.ts'

/** How many sets of coefficients `--bands` asks for. */
export const bandSets = (text: string): number => orThrow(readCount(text, '--bands', 'bandSets'))

/** Work that takes a moment, with its progress where somebody watches. */
export const watched = <T>(env: Environment, work: (progress: Progress) => T): T => {
  try {
    return work((done, of) => env.progress(`bands: ${done} of ${of} sets`))
  } finally {
    env.progress(null)
  }
}
