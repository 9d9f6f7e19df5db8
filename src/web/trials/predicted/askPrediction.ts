import type { PredictedTrial } from '#proof/predicted/model.ts'
import type { Trial } from '#proof/trial/model.ts'
import type { PredictAsk, PredictSaid } from './worker.ts'

export type PredictionAnswer =
  | { readonly ok: true; readonly value: PredictedTrial | null }
  | { readonly ok: false; readonly sentence: string }

/** As many sets of coefficients as the command line draws bands from. */
const SETS = 48

/**
 * Works out one burn beside the page. A worker of its own, ended when nobody waits any more: that is how it is cancelled.
 * @throws the signal's reason
 */
export const askPrediction = (
  trial: Trial,
  stove: string,
  signal: AbortSignal,
  onProgress: (done: number) => void = () => undefined,
): Promise<PredictionAnswer> =>
  new Promise((resolve, reject) => {
    signal.throwIfAborted()
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
    const end = (): void => worker.terminate()
    signal.addEventListener('abort', () => {
      end()
      reject(signal.reason as Error)
    })
    worker.addEventListener('message', ({ data }: MessageEvent<PredictSaid>) => {
      if (data.done !== undefined) return onProgress(data.done)
      end()
      resolve(
        data.sentence === undefined
          ? { ok: true, value: data.value ?? null }
          : { ok: false, sentence: data.sentence },
      )
    })
    worker.addEventListener('error', ({ message }) => {
      end()
      resolve({ ok: false, sentence: `It could not be worked out: ${message}.` })
    })
    worker.postMessage({ id: 1, trial, stove, sets: SETS } satisfies PredictAsk)
  })
