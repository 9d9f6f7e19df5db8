import { problemSentence } from '#basis/problem.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { readTrialDocument } from '#proof/trial/read.ts'
import type { DocumentHead } from '#wire/documents.ts'
import { newId } from '../workshop/names.ts'
import { newAct, workshop } from '../workshop/workshop.ts'

/** Takes a trial file into the workshop, log and all. A sentence says what became of it. */
export const bringTrial = async (stove: DocumentHead, name: string, text: string): Promise<string> => {
  const read = readTrialDocument(text)
  if (!read.ok) return `${name} was not taken in. ${read.problems.slice(0, 4).map(problemSentence).join(' ')}`
  const { file } = read.value
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
  return `“${file.name}” is here now.`
}
