import { formatLength } from '#basis/text/format.ts'
import { fromMillimetres } from '#basis/units.ts'
import { fileNameOf } from '#craft/fileName.ts'
import { type Arrangement, arranged } from '#craft/solid/arrange.ts'
import type { FacetOptions } from '#craft/solid/facets.ts'
import type { SolidKernel } from '#craft/solid/kernel.ts'
import type { Mesh } from '#craft/solid/mesh.ts'
import type { PartSolid } from '#craft/solid/part.ts'
import { stoveSolids } from '#craft/solid/solids.ts'
import type { Stove } from '#stove/model.ts'
import { readMe } from '../page/readMe.ts'
import type { ArtefactFile } from './file.ts'
import { type SolidFormat, type SolidGroup, solidFiles } from './solidFiles.ts'

export interface SolidsWish {
  readonly format: SolidFormat
  readonly arrangement: Arrangement
  readonly facets: FacetOptions
  readonly version: string
}

export interface SolidsMade {
  readonly parts: readonly PartSolid[]
  /** The solids, and last the text that goes with them. */
  readonly files: readonly ArtefactFile[]
  /** How exact they are, in words. */
  readonly remark: string
}

/** Parts each in a file of their own, or all in one. */
const groupsOf = (stove: Stove, arrangement: Arrangement, meshes: readonly Mesh[]): readonly SolidGroup[] => {
  const stem = fileNameOf(stove.name)
  return arrangement === 'parts'
    ? meshes.map((mesh) => ({ name: `${stem}-${fileNameOf(mesh.name)}`, meshes: [mesh] }))
    : [{ name: `${stem}-${arrangement}`, meshes }]
}

/** Two parts whose names come out the same get a number. */
const withoutTwins = (groups: readonly SolidGroup[]): readonly SolidGroup[] =>
  groups.map((group, index) => {
    const before = groups.slice(0, index).filter(({ name }) => name === group.name).length
    return before === 0 ? group : { ...group, name: `${group.name}-${before + 1}` }
  })

const SIMPLE =
  'Seams are solid rings and beads even waves; corners of drawn cans are sharp and the side seam’s overlap is left out. Of dimensions the stove file has the last word.'

/** The parts of a stove as solids, arranged and written down. */
export const solidsOf = (
  kernel: SolidKernel,
  stove: Stove,
  { format, arrangement, facets, version }: SolidsWish,
): SolidsMade => {
  const parts = stoveSolids(kernel, stove, facets)
  const meshes = arranged(kernel, stove, parts, arrangement, { facets })
  const title = `${stove.name} ${arrangement}`
  const notes = `${fileNameOf(title)}-read-me.txt`
  const groups = withoutTwins(groupsOf(stove, arrangement, meshes))
  const files = solidFiles(groups, { format, title, version, readMe: notes })
  const chord = formatLength(fromMillimetres(facets.chord), { units: 'mm', digits: 3 })
  const within = `Round surfaces are facets within ${chord} of round.`
  const text = readMe(`${stove.name}: solids, ${arrangement}, in millimetres`, [
    ['Files', ...files.map(({ name }) => name)],
    [within, SIMPLE],
  ])
  return { parts, files: [...files, { name: notes, bytes: text }], remark: `${within} ${SIMPLE}` }
}
