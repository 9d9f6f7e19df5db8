import { problemSentence } from '#basis/problem.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { isPlanCode, readPlanCode } from '#stove/document/planCode.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import { go } from '../routes/here.ts'
import { newId } from '../workshop/names.ts'
import { newAct, workshop } from '../workshop/workshop.ts'

/** Lays a new stove on the bench and goes there; a sentence where the workshop will not have it. */
export const layOnBench = async (file: StoveFile, note: string): Promise<string | null> => {
  const id = newId()
  const wanted = {
    id,
    kind: 'stove' as const,
    name: file.name,
    revision: newId(),
    text: formatStoveFile(file),
    note,
  }
  const { safe, answer } = workshop.write('create', { act: await newAct(), wanted })
  await safe
  const said = await answer
  if (!said.ok) return said.refusal.sentence
  go({ at: 'stove', stove: id })
  return null
}

/** A stove from a text: a stove file, or what a plan's code says; its problems in sentences. */
export const stoveFromText = (text: string): { readonly file: StoveFile } | { readonly sentence: string } => {
  const plain = isPlanCode(text) ? readPlanCode(text) : { ok: true as const, value: text }
  if (!plain.ok) return { sentence: plain.problems.map(problemSentence).join(' ') }
  const read = readStoveDocument(plain.value)
  return read.ok ? { file: read.value.file } : { sentence: read.problems.map(problemSentence).join(' ') }
}
