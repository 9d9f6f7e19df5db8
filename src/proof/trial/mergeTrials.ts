import { orThrow } from '#basis/problem.ts'
import { readInstant } from './instant.ts'
import type { EventFile, WeighingFile } from './logSchema.ts'
import { mergeLogs } from './mergeLogs.ts'

const seconds = ({ at }: { readonly at: string }): number => orThrow(readInstant(at))

/** Events that several phones noted at one burn, each once, in order of time. As `mergeLogs`. */
export const mergeEvents = (...logs: readonly (readonly EventFile[])[]): readonly EventFile[] =>
  mergeLogs(logs, seconds)

/** Weighings likewise. */
export const mergeWeighings = (...logs: readonly (readonly WeighingFile[])[]): readonly WeighingFile[] =>
  mergeLogs(logs, seconds)
