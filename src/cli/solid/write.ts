import { BadInput } from '#basis/problem.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import { writeStl } from '#craft/mesh/stl.ts'
import { writeThreeMf } from '#craft/mesh/threeMf.ts'
import type { Mesh } from '#craft/solid/mesh.ts'
import type { Environment } from '../environment.ts'
import { problemOf } from '../input.ts'

/** What a file of solids is written as. */
export type SolidFormat = 'stl' | '3mf'

const FORMATS: readonly SolidFormat[] = ['stl', '3mf']

export const formatOf = (name: string): SolidFormat => {
  const format = FORMATS.find((known) => known === name.toLowerCase())
  if (format !== undefined) return format
  throw new BadInput([
    problemOf(
      'solids.format',
      '--as',
      name,
      FORMATS.join(' or '),
      'Both are in millimetres; 3mf also keeps the names.',
    ),
  ])
}

/** Bytes of one file, and what it is called. */
export interface SolidFile {
  readonly name: string
  readonly bytes: Uint8Array
}

/** Meshes that go into one STL file, and what it is called without its ending. */
export interface SolidGroup {
  readonly name: string
  readonly meshes: readonly Mesh[]
}

/** Files of solids: one of STL a group, or one of 3MF for all. */
export const solidFiles = (
  env: Environment,
  format: SolidFormat,
  title: string,
  groups: readonly SolidGroup[],
  readMe: string,
): readonly SolidFile[] => {
  const application = `Tinwright ${env.version}`
  if (format === 'stl')
    return groups.map(({ name, meshes }) => ({
      name: `${name}.stl`,
      bytes: writeStl(meshes, `${application}, millimetres. Cautions: see ${readMe}`),
    }))
  const description = `Millimetres. ${MAKING_CAUTIONS.join(' ')}`
  const meshes = groups.flatMap((group) => group.meshes)
  return [
    { name: `${fileNameOf(title)}.3mf`, bytes: writeThreeMf(meshes, { title, description, application }) },
  ]
}
