import { good } from '#basis/problem.ts'
import { trialsIn } from '#proof/trial/exchange/trialsIn.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { halfTold } from '#proof/trial/halfTold.ts'
import { readTrialDocument } from '#proof/trial/read.ts'
import type { TrialFile } from '#proof/trial/schema.ts'
import type { NamedText } from '#wire/files.ts'
import type { Step } from '../documents/journal.ts'
import { headOf, type Trx } from '../documents/rows.ts'
import { sha256 } from '../hash.ts'
import { checkName } from '../limits.ts'
import type { DocumentTable } from '../tables.ts'
import type { DocumentHead } from '../workshop.ts'
import { type Arrivals, add, cameFrom, refuseProblems, type Told } from './arrivals.ts'
import { burnedStove } from './burnedStove.ts'
import { burnsHere, burnsWith, burnTold, takeTelling } from './burnTold.ts'
import { wholeTrial } from './wholeTrial.ts'

const trials = (trx: Trx) =>
  trx.selectFrom('documents').selectAll('documents').where('kind', '=', 'trial').where('deleted', '=', 0)

/** Whether a trial with its log says what a file says, however that is laid out. */
const saysTheSame = async (trx: Trx, row: DocumentTable, file: TrialFile): Promise<boolean> => {
  const whole = await wholeTrial(trx, row)
  const read = whole === null ? null : readTrialDocument(whole)
  return read?.ok === true && formatTrialFile(read.value.file) === formatTrialFile(file)
}

/** A trial that was this file once, whatever was filled in since; or that would be, written out now. */
const knownTrial = async (trx: Trx, text: string, file: TrialFile): Promise<DocumentHead | null> => {
  const once = await trials(trx)
    .innerJoin('revisions', 'revisions.document', 'documents.id')
    .where('revisions.hash', '=', sha256(text))
    .orderBy('documents.place')
    .limit(1)
    .executeTakeFirst()
  if (once !== undefined) return headOf(once)
  for (const row of await trials(trx).where('name', '=', file.name).orderBy('place').execute())
    if (await saysTheSame(trx, row, file)) return headOf(row)
  return null
}

const stillToSay = (which: string, things: number): string =>
  `${which} is half told: its desk asks for the ${things === 1 ? 'one thing' : `${things} things`} still to say.`

/**
 * Brings trials in, each beside the stove that was burnt: one, or several out of a bundle or a table. A log stays in its
 * trial's text, where the bench looks for it; what phones log from then on is kept beside it. A burn that is here already,
 * by the ids of its entries, takes in what is new instead of standing there twice; one that is half told comes in as it is.
 */
export const bringTrials = async (
  step: Step,
  arrivals: Arrivals,
  { name: file, text: whole }: NamedText,
  { note = cameFrom(file), stove }: Told,
): Promise<void> => {
  const half = halfTold(whole)
  const read = half === null ? trialsIn(whole) : good([{ file: half.file, text: whole }])
  if (!read.ok) return refuseProblems(file, read.problems)
  let burns = await burnsHere(step.trx)
  for (const { file: trial, text } of read.value) {
    const which = read.value.length === 1 ? file : `“${trial.name}” in ${file}`
    const known = await knownTrial(step.trx, text, trial)
    if (known !== null) {
      arrivals.known.push(known)
      continue
    }
    const told = burnTold(trial, burns)
    if (told !== null) {
      await takeTelling(step, arrivals, which, told, trial, note)
      burns = await burnsWith(step.trx, burns, told.row.id)
      continue
    }
    checkName(trial.name, `the name of a trial in ${file}`)
    const { document, revision, doubt } = await burnedStove(step.trx, which, trial.stove, stove)
    const about = { document, revision }
    const added = await add(step, { kind: 'trial', name: trial.name, text, note, about })
    arrivals.added.push(added)
    burns = await burnsWith(step.trx, burns, added.id)
    if (doubt !== null) arrivals.remarks.push(doubt)
    if (half !== null) arrivals.remarks.push(stillToSay(which, half.missing))
  }
}
