import { looksLikeLogger } from '#proof/logger/looksLikeLogger.ts'
import { TRIALS_FORMAT } from '#proof/trial/exchange/bundle.ts'
import { isTrialsTable } from '#proof/trial/exchange/trialsIn.ts'
import { TRIAL_FORMAT } from '#proof/trial/schema.ts'
import { type JsonValue, readJson } from '#stove/document/json.ts'
import { SHELF_FORMAT } from '#stove/document/shelf.ts'
import type { ImportReport, NamedText } from '#wire/files.ts'
import { type Answer, refuse } from '../answer.ts'
import { doStep, type Step } from '../documents/journal.ts'
import { documentRow, headOf } from '../documents/rows.ts'
import type { Engine } from '../engine/engine.ts'
import type { Act, DocumentHead } from '../workshop.ts'
import { type Arrivals, noArrivals, refuseProblems, type Told } from './arrivals.ts'
import { bringShelf } from './bringShelf.ts'
import { bringStove } from './bringStove.ts'
import { bringTrials } from './bringTrials.ts'

/** Of that kind, whatever its version: the reader says which it reads. */
const isOf = (json: JsonValue, known: string): boolean => {
  const format = (json as { readonly format?: JsonValue } | null)?.format
  const [kind] = known.split('@')
  return typeof format === 'string' && format.startsWith(`${kind}@`)
}

/** Brings one file into a workshop, within a step. */
export const bringFile = async (
  step: Step,
  arrivals: Arrivals,
  file: NamedText,
  told: Told = {},
): Promise<void> => {
  if (isTrialsTable(file.text)) return bringTrials(step, arrivals, file, told)
  if (looksLikeLogger(file.text))
    refuse(
      'bad input',
      `${file.name} is a logger’s file: readings over time, no stove, shelf or trial. Nothing was changed. Open the burn it belongs to and lay it there under “Readings of a logger”.`,
    )
  if (!/^\ufeff?\s*[{[]/.test(file.text))
    refuse(
      'bad input',
      `${file.name} will not do, and nothing was changed. What comes in here: stoves, shelves and trials as JSON, trials as the table they were saved as, or an archive.`,
    )
  const json = readJson(file.text)
  if (!json.ok) return refuseProblems(file.name, json.problems)
  if (isOf(json.value, SHELF_FORMAT)) await bringShelf(step, arrivals, file, json.value)
  else if (isOf(json.value, TRIAL_FORMAT) || isOf(json.value, TRIALS_FORMAT))
    await bringTrials(step, arrivals, file, told)
  // Whatever is neither is read as a stove: the reader says what it should be.
  else await bringStove(step, arrivals, file, told)
}

/**
 * A file of a stove, of a shelf, or of a trial or several; a file that is here already is not doubled. `stove`: where a trial belongs
 * whose own words fit no stove here.
 */
export const importFile = (
  engine: Engine,
  act: Act,
  file: NamedText,
  stove?: string,
): Promise<Answer<ImportReport>> =>
  doStep(
    engine,
    act,
    stove === undefined ? ['import file', file] : ['import file', file, stove],
    async (step) => {
      const arrivals = noArrivals()
      await bringFile(step, arrivals, file, stove === undefined ? {} : { stove })
      return { label: `import ${file.name}`, value: arrivals }
    },
    // Asked again: everything is known now.
    async (trx) => {
      const rows = await trx.selectFrom('changes').select('document').where('step', '=', act.id).execute()
      const known: DocumentHead[] = []
      for (const { document } of rows) known.push(headOf(await documentRow(trx, document)))
      return { ...noArrivals(), known }
    },
  )
