import { BadInput, orThrow, type Problem, problemSentence } from '#basis/problem.ts'
import { formatLength } from '#basis/text/format.ts'
import { readLength } from '#basis/text/length.ts'
import type { Metres } from '#basis/units.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import type { DrillGuide, Guides } from '#craft/guide/guide.ts'
import { drillGuides } from '#craft/guide/guides.ts'
import { GUIDE_DEFAULTS, type GuideOptions } from '#craft/guide/options.ts'
import { boundsOf, type Mesh, posed } from '#craft/solid/mesh.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Stove } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { cautionBlock } from '../page/cautions.ts'
import { findingsOf, stopsBlock } from '../page/findings.ts'
import { readMe } from '../page/readMe.ts'
import { page, wrap } from '../page/text.ts'
import { formatOf, solidFiles } from '../solid/write.ts'

export interface GuidesCommandOptions {
  readonly as: string
  readonly part?: string
  readonly bit: string
  readonly pilot: string
  readonly clearance: string
  readonly wall: string
  readonly bed: string
  readonly out: string
  readonly json?: boolean
}

const bitOf = (name: string): GuideOptions['bit'] => {
  if (name === 'pilot' || name === 'full') return name
  throw new BadInput([
    problemOf('guides.bit', '--bit', name, 'pilot or full', 'Say which bit goes through the guide holes.'),
  ])
}

/** `220 mm x 220 mm`, or with a height as a third. */
const bedOf = (text: string): GuideOptions['bed'] => {
  const sides = text.split(/\s*[x×]\s*/i)
  if (sides.length !== 2 && sides.length !== 3)
    throw new BadInput([
      problemOf(
        'guides.bed',
        '--bed',
        text,
        'width by depth, and height if you like, such as "220 mm x 220 mm x 250 mm"',
        'Write the sides of the printer’s bed with an x between them, each with its unit.',
      ),
    ])
  const [width, depth, height = GUIDE_DEFAULTS.bed.height] = sides.map((side) =>
    orThrow(readLength(side, '--bed', 'printerBed')),
  )
  return { width: width as Metres, depth: depth as Metres, height }
}

const optionsOf = (options: GuidesCommandOptions): GuideOptions => ({
  bit: bitOf(options.bit),
  pilot: orThrow(readLength(options.pilot, '--pilot', 'pilotBit')),
  clearance: orThrow(readLength(options.clearance, '--clearance', 'printerClearance')),
  wall: orThrow(readLength(options.wall, '--wall', 'guideWall')),
  bed: bedOf(options.bed),
  facets: GUIDE_DEFAULTS.facets,
})

/** The stove with one of its parts only, where one was named. */
const onlyPart = (stove: Stove, name: string | undefined): Stove => {
  if (name === undefined) return stove
  const part = stove.parts.get(name)
  if (part !== undefined) return { ...stove, parts: new Map([[name, part]]) }
  throw new BadInput([
    problemOf(
      'guides.part',
      '--part',
      name,
      [...stove.parts.keys()].join(', '),
      'Name a part of this stove.',
    ),
  ])
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

const millimetres = (value: number): string =>
  formatLength((value / 1000) as Metres, { units: 'mm', digits: 1 })

const headOf = ({ name, pieces, holes, box }: DrillGuide): string =>
  `${name}: ${holes.length} guide ${holes.length === 1 ? 'hole' : 'holes'}, ` +
  `${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'} up to ${box.map(millimetres).join(' × ')}`

const guideAnswer = ({ name, part, kind, pieces, holes, fitDiameter, box, notes }: DrillGuide) => ({
  name,
  part,
  kind,
  pieces: pieces.length,
  fitDiameter: fitDiameter / 1000,
  box: box.map((side) => side / 1000),
  holes: holes.map(({ opening, position, bearing, at, diameter }) => ({
    opening,
    position,
    bearing,
    at: at / 1000,
    diameter: diameter / 1000,
  })),
  notes,
})

const block = (head: string, lines: readonly string[], width: number): string | null =>
  lines.length === 0
    ? null
    : [wrap(head, width), ...lines.map((line) => wrap(line, width, '  ', '    '))].join('\n')

const withoutLines = ({ without }: Guides): readonly string[] =>
  without.map(({ part, opening, why }) => `${part}, ${opening}: ${why}`)

const nothing = (file: string, refused: readonly Problem[]): never => {
  throw new BadInput(
    refused.length > 0
      ? refused
      : [
          problemOf(
            'guides.nothing',
            `${file}: parts`,
            '',
            'a can or disc with a round hole',
            'Print the templates instead: what is cut with snips needs no guide.',
          ),
        ],
  )
}

export const guides = async (
  env: Environment,
  file: string,
  options: GuidesCommandOptions,
): Promise<ExitCode> => {
  const format = formatOf(options.as)
  const how = optionsOf(options)
  const whole = stoveFrom(env, file)
  const stove = onlyPart(whole, options.part)
  const findings = checkStove(whole, null)
  const stops = findings.filter(({ severity }) => severity === 'stop')
  const found = drillGuides(await env.solidKernel(), stove, how)
  if (found.guides.length === 0) nothing(file, found.refused)
  const code = stops.length === 0 && found.refused.length === 0 ? EXIT.fine : EXIT.findings
  const title = `${stove.name} drill guides`
  const notes = `${fileNameOf(title)}-read-me.txt`
  const stem = fileNameOf(stove.name)
  const pieces = found.guides.flatMap((guide) => guide.pieces)
  const laid = format === '3mf' ? sideBySide(pieces) : pieces
  const groups = laid.map((mesh) => ({ name: `${stem}-${fileNameOf(mesh.name)}`, meshes: [mesh] }))
  const files = solidFiles(env, format, title, groups, notes)
  const paths = files.map(({ name, bytes }) => writeInto(env, options.out, name, bytes))
  const refusals = found.refused.map(problemSentence)
  const text = readMe(`${stove.name}: drill guides to print, in millimetres`, [
    ['Files', ...files.map(({ name }) => name)],
    ...found.guides.map((guide) => [headOf(guide), ...guide.notes]),
    ...(refusals.length === 0 ? [] : [['Not made', ...refusals]]),
    ...(found.without.length === 0 ? [] : [['Without a guide', ...withoutLines(found)]]),
  ])
  paths.push(writeInto(env, options.out, notes, text))
  if (options.json) {
    const { without, refused } = found
    const answer = {
      stove: stove.name,
      format,
      paths,
      guides: found.guides.map(guideAnswer),
      without,
      refused,
    }
    env.out(
      `${JSON.stringify({ ...answer, stopFindings: stops, warnFindings: findings.filter(({ severity }) => severity === 'warn'), cautions: MAKING_CAUTIONS }, null, 2)}\n`,
    )
    return code
  }
  env.out(
    page(
      paths.map((path) => wrap(path, env.width, '', '  ')).join('\n'),
      stopsBlock(stops, 'Do not cut this stove as it is drawn:', env.width),
      findingsOf('warn', findings, env.width),
      ...found.guides.map((guide) => block(headOf(guide), guide.notes, env.width)),
      block('Not made', refusals, env.width),
      block('Without a guide', withoutLines(found), env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
