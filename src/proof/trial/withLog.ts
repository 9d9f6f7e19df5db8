import { formatTrialFile } from './format.ts'
import { type BurnLog, entryOf, logOf, writtenLog } from './log.ts'
import { TRIAL_FORMAT, type TrialFile } from './schema.ts'

/** A trial and its log as one file, however much of it is still to say. */
export const withLog = (trial: object, { events, masses }: BurnLog): TrialFile =>
  ({
    ...trial,
    ...(events.length === 0 ? {} : { events }),
    ...(masses.length === 0 ? {} : { masses }),
  }) as unknown as TrialFile

/**
 * The whole trial file: what its text says and what phones logged beside it, every entry once. Where nothing was logged it
 * is the text itself, word for word. Null: the text is no trial's.
 */
export const wholeTrialText = (text: string, logged: readonly { readonly body: string }[]): string | null => {
  const entries = logged.map(entryOf).filter((entry) => entry !== null)
  if (entries.length === 0) return text
  try {
    const said = JSON.parse(text) as { readonly format?: unknown } | null
    return said?.format === TRIAL_FORMAT
      ? formatTrialFile(withLog(said, logOf(entries, writtenLog(said))))
      : null
  } catch {
    return null
  }
}
