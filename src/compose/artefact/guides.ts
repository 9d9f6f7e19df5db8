import { problemSentence } from '#basis/problem.ts'
import { formatLength } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import { fileNameOf } from '#craft/fileName.ts'
import type { DrillGuide, Guides } from '#craft/guide/guide.ts'
import { drillGuides } from '#craft/guide/guides.ts'
import type { GuideOptions } from '#craft/guide/options.ts'
import type { SolidKernel } from '#craft/solid/kernel.ts'
import { boundsOf, type Mesh, posed } from '#craft/solid/mesh.ts'
import type { Stove } from '#stove/model.ts'
import { readMe } from '../page/readMe.ts'
import type { ArtefactFile } from './file.ts'
import { type SolidFormat, solidFiles } from './solidFiles.ts'

export interface GuidesMade {
  readonly found: Guides
  /** None where there is nothing to guide. */
  readonly files: readonly ArtefactFile[]
}

/** Air between pieces on the bed of a 3MF file [mm]. */
const BESIDE = 6

/** Pieces side by side, so that none lies in another. */
const sideBySide = (meshes: readonly Mesh[]): readonly Mesh[] => {
  let x = 0
  return meshes.map((mesh) => {
    const { min, max } = boundsOf([mesh])
    const moved = posed(mesh, { x: x - min[0], y: -(min[1] + max[1]) / 2 })
    x += max[0] - min[0] + BESIDE
    return moved
  })
}

const both = (value: number): string => formatLength((value / 1000) as Metres, { units: 'both', digits: 1 })

/** What a guide is, in a line. */
export const guideHead = ({ name, pieces, holes, box }: DrillGuide): string =>
  `${name}: ${holes.length} guide ${holes.length === 1 ? 'hole' : 'holes'}, ` +
  `${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'} up to ${box.map(both).join(' × ')}`

/** Openings that are cut without a guide, and why, line by line. */
export const withoutGuide = ({ without }: Guides): readonly string[] =>
  without.map(({ part, opening, why }) => `${part}, ${opening}: ${why}`)

/** Drill guides of a stove, made and written down with the text that goes with them. */
export const guidesOf = (
  kernel: SolidKernel,
  stove: Stove,
  how: GuideOptions,
  { format, version }: { readonly format: SolidFormat; readonly version: string },
): GuidesMade => {
  const found = drillGuides(kernel, stove, how)
  if (found.guides.length === 0) return { found, files: [] }
  const title = `${stove.name} drill guides`
  const notes = `${fileNameOf(title)}-read-me.txt`
  const stem = fileNameOf(stove.name)
  const pieces = found.guides.flatMap((guide) => guide.pieces)
  const laid = format === '3mf' ? sideBySide(pieces) : pieces
  const groups = laid.map((mesh) => ({ name: `${stem}-${fileNameOf(mesh.name)}`, meshes: [mesh] }))
  const files = solidFiles(groups, { format, title, version, readMe: notes })
  const refusals = found.refused.map(problemSentence)
  const text = readMe(`${stove.name}: drill guides to print, in millimetres`, [
    ['Files', ...files.map(({ name }) => name)],
    ...found.guides.map((guide) => [guideHead(guide), ...guide.notes]),
    ...(refusals.length === 0 ? [] : [['Not made', ...refusals]]),
    ...(found.without.length === 0 ? [] : [['Without a guide', ...withoutGuide(found)]]),
  ])
  return { found, files: [...files, { name: notes, bytes: text }] }
}
