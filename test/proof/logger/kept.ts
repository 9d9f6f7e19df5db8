import { readFileSync } from 'node:fs'
import type { Answers, Mapping } from '#proof/logger/mapping.ts'
import { proposeMapping } from '#proof/logger/propose.ts'
import type { Truth } from './truths.ts'

export const folder = new URL('../../../examples/loggers/', import.meta.url)

export const exampleText = (name: string): string => readFileSync(new URL(name, folder), 'utf8')

/** What is proposed after those answers; null where something is still asked, or the file is refused. */
export const mappingFor = (text: string, answers: Answers): Mapping | null => {
  const proposal = proposeMapping(text, answers)
  return proposal.ok && proposal.value.kind === 'mapping' ? proposal.value.mapping : null
}

/** The mapping of an example, as its maker keeps it. */
export const kept = ({ name, answers }: Truth): Mapping => {
  const mapping = mappingFor(exampleText(name), answers)
  if (mapping === null) throw new Error(`${name} is not understood`)
  return mapping
}
