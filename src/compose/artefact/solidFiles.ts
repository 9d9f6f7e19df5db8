import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import { writeStl } from '#craft/mesh/stl.ts'
import { writeThreeMf } from '#craft/mesh/threeMf.ts'
import type { Mesh } from '#craft/solid/mesh.ts'
import type { ArtefactFile } from './file.ts'

/** What a file of solids is written as. */
export type SolidFormat = 'stl' | '3mf'

export const SOLID_FORMATS: readonly SolidFormat[] = ['stl', '3mf']

/** Meshes that go into one STL file, and what it is called without its ending. */
export interface SolidGroup {
  readonly name: string
  readonly meshes: readonly Mesh[]
}

export interface SolidTitle {
  readonly format: SolidFormat
  readonly title: string
  /** Of the program. */
  readonly version: string
  /** Name of the text that lies beside the files and holds the cautions. */
  readonly readMe: string
}

/** Files of solids: one of STL a group, or one of 3MF for all. */
export const solidFiles = (
  groups: readonly SolidGroup[],
  { format, title, version, readMe }: SolidTitle,
): readonly ArtefactFile[] => {
  const application = `Tinwright ${version}`
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
