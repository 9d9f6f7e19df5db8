import { BadInput } from '#basis/problem.ts'
import { SOLID_FORMATS, type SolidFormat } from '#compose/artefact/solidFiles.ts'
import { problemOf } from '../input.ts'

/** What a file of solids is to be written as. Throws `BadInput` for a word that is none of them. */
export const formatOf = (name: string): SolidFormat => {
  const format = SOLID_FORMATS.find((known) => known === name.toLowerCase())
  if (format !== undefined) return format
  throw new BadInput([
    problemOf(
      'solids.format',
      '--as',
      name,
      SOLID_FORMATS.join(' or '),
      'Both are in millimetres; 3mf also keeps the names.',
    ),
  ])
}
