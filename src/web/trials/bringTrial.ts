import { type Outcome, problemSentence } from '#basis/problem.ts'
import { readTrialsJson, TRIALS_FORMAT } from '#proof/trial/exchange/bundle.ts'
import { readTrialsCsv } from '#proof/trial/exchange/records.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { readTrialDocument, type TrialDocument } from '#proof/trial/read.ts'
import type { DocumentHead } from '#wire/documents.ts'
import { newId } from '../workshop/names.ts'
import { newAct, workshop } from '../workshop/workshop.ts'

/** One trial, a bundle of them, or a table: by what the file says, not by its name. */
export const trialsIn = (text: string): Outcome<readonly TrialDocument[]> => {
  if (!text.trimStart().startsWith('{')) return readTrialsCsv(text)
  if (text.includes(`"${TRIALS_FORMAT}"`)) return readTrialsJson(text)
  const read = readTrialDocument(text)
  return read.ok ? { ok: true, value: [read.value] } : read
}

/** So many problems are read at once. */
const MOST = 4

/** Takes trials of a file into the workshop, logs and all. A sentence says what became of it. */
export const bringTrial = async (stove: DocumentHead, name: string, text: string): Promise<string> => {
  const read = trialsIn(text)
  if (!read.ok)
    return `${name} was not taken in. ${read.problems.slice(0, MOST).map(problemSentence).join(' ')}`
  for (const { file } of read.value) {
    const sent = workshop.write('create', {
      act: await newAct(),
      wanted: {
        id: newId(),
        kind: 'trial',
        name: file.name,
        revision: newId(),
        text: formatTrialFile(file),
        note: `Taken in from ${name}`.slice(0, 200),
        aboutDocument: stove.id,
        aboutRevision: stove.head,
      },
    })
    await sent.safe
  }
  const names = read.value.map(({ file }) => `“${file.name}”`)
  return names.length === 1 ? `${names[0]} is here now.` : `${names.length} burns are here now.`
}
