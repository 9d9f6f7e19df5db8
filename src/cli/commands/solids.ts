import { BadInput, orThrow } from '#basis/problem.ts'
import { formatLength } from '#basis/text/format.ts'
import { readLength } from '#basis/text/length.ts'
import type { Metres } from '#basis/units.ts'
import { toMillimetres } from '#basis/units.ts'
import { solidsOf } from '#compose/artefact/solids.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { stopsBlock } from '#compose/page/findings.ts'
import { columns, page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { ARRANGEMENTS, type Arrangement } from '#craft/solid/arrange.ts'
import { boundsOf, type Mesh } from '#craft/solid/mesh.ts'
import type { PartSolid } from '#craft/solid/part.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { formatOf } from '../solid/format.ts'

export interface SolidsCommandOptions {
  readonly as: string
  readonly arrangement: string
  readonly chord: string
  readonly out: string
  readonly json?: boolean
}

const arrangementOf = (name: string): Arrangement => {
  const found = ARRANGEMENTS.find((known) => known === name.toLowerCase())
  if (found !== undefined) return found
  throw new BadInput([
    problemOf(
      'solids.arrangement',
      '--arrangement',
      name,
      ARRANGEMENTS.join(', '),
      'Say which way the parts are to lie.',
    ),
  ])
}

const sidesOf = (mesh: Mesh): readonly [Metres, Metres, Metres] => {
  const { min, max } = boundsOf([mesh])
  return [0, 1, 2].map((axis) => ((max[axis] as number) - (min[axis] as number)) / 1000) as [
    Metres,
    Metres,
    Metres,
  ]
}

const CUBIC_MILLIMETRE = 1e-9

const partAnswer = ({ name, mesh, volume, volumeError }: PartSolid) => ({
  name,
  box: sidesOf(mesh),
  volume: volume * CUBIC_MILLIMETRE,
  meshVolumeWithin: volumeError * CUBIC_MILLIMETRE,
  triangles: mesh.triangles.length / 3,
})

const partRow = ({ name, mesh, volume }: PartSolid): readonly string[] => {
  const [wide, deep, high] = sidesOf(mesh)
  const both = (side: number): string => formatLength(side as Metres, { units: 'both', digits: 1 })
  return [
    name,
    both(Math.max(wide, deep)),
    both(high),
    `${(volume / 1000).toFixed(2)} cm³ (${(volume / 25.4 ** 3).toFixed(2)} in³)`,
  ]
}

export const solids = async (
  env: Environment,
  file: string,
  options: SolidsCommandOptions,
): Promise<ExitCode> => {
  const format = formatOf(options.as)
  const arrangement = arrangementOf(options.arrangement)
  const chord = orThrow(readLength(options.chord, '--chord', 'chordalError'))
  const stove = stoveFrom(env, file)
  const stops = checkStove(stove, null).filter(({ severity }) => severity === 'stop')
  const code = stops.length === 0 ? EXIT.fine : EXIT.findings
  const kernel = await env.solidKernel()
  const { parts, files, remark } = solidsOf(kernel, stove, {
    format,
    arrangement,
    facets: { chord: toMillimetres(chord) },
    version: env.version,
  })
  const paths = files.map(({ name, bytes }) => writeInto(env, options.out, name, bytes))
  if (options.json) {
    const answer = { stove: stove.name, arrangement, format, chord, paths, parts: parts.map(partAnswer) }
    env.out(`${JSON.stringify({ ...answer, stopFindings: stops, cautions: MAKING_CAUTIONS }, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      paths.map((path) => wrap(path, env.width, '', '  ')).join('\n'),
      stopsBlock(stops, 'Do not cut this stove as it is drawn:', env.width),
      columns(
        [['part', 'across', 'high', 'tin'], ...parts.map(partRow)],
        ['left', 'left', 'left', 'right'],
        env.width,
      ),
      wrap(remark, env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
