import { BadInput, problemSentence } from '#basis/problem.ts'
import type { PredictedTrial } from '#proof/predicted/model.ts'
import { predictedTrial } from '#proof/predicted/predict.ts'
import type { Trial } from '#proof/trial/model.ts'
import { readStove } from '#stove/document/read.ts'

/** One burn to be held against what was predicted of its stove. */
export interface PredictAsk {
  readonly id: number
  readonly trial: Trial
  /** The stove's file, as it stood in the revision that was burnt. */
  readonly stove: string
  readonly sets: number
}

export interface PredictSaid {
  readonly id: number
  /** Null: the trial has no high-power phase to be held against. */
  readonly value?: PredictedTrial | null
  readonly sentence?: string
  readonly done?: number
}

const work = ({ id, trial, stove, sets }: PredictAsk): PredictSaid => {
  try {
    const read = readStove(stove)
    if (!read.ok) return { id, sentence: read.problems.map(problemSentence).join(' ') }
    return {
      id,
      value: predictedTrial(trial, read.value, sets, (done, of) => postMessage({ id, done: done / of })),
    }
  } catch (fault) {
    if (fault instanceof BadInput) return { id, sentence: fault.problems.map(problemSentence).join(' ') }
    return {
      id,
      sentence: `It could not be worked out: ${fault instanceof Error ? fault.message : String(fault)}.`,
    }
  }
}

addEventListener('message', ({ data }: MessageEvent<PredictAsk>) => postMessage(work(data)))
