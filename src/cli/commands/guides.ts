import { BadInput, orThrow, type Problem, problemSentence } from '#basis/problem.ts'
import { readLength } from '#basis/text/length.ts'
import type { Metres } from '#basis/units.ts'
import { guideHead, guidesOf, withoutGuide } from '#compose/artefact/guides.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { findingsOf, stopsBlock } from '#compose/page/findings.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import type { DrillGuide } from '#craft/guide/guide.ts'
import { GUIDE_DEFAULTS, type GuideOptions } from '#craft/guide/options.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Stove } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { formatOf } from '../solid/format.ts'

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
  const { found, files } = guidesOf(await env.solidKernel(), stove, how, { format, version: env.version })
  if (found.guides.length === 0) nothing(file, found.refused)
  const code = stops.length === 0 && found.refused.length === 0 ? EXIT.fine : EXIT.findings
  const paths = files.map(({ name, bytes }) => writeInto(env, options.out, name, bytes))
  const refusals = found.refused.map(problemSentence)
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
      ...found.guides.map((guide) => block(guideHead(guide), guide.notes, env.width)),
      block('Not made', refusals, env.width),
      block('Without a guide', withoutGuide(found), env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
