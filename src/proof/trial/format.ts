import { formatted } from '#stove/document/format.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { type TrialFile, trialSchema } from './schema.ts'

/** A trial file as text. Reading it back gives the same document; writing it again, the same text. */
export const formatTrialFile = (file: TrialFile): string =>
  formatted(file as unknown as JsonValue, trialSchema)
