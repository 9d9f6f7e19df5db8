import { BadInput, type Problem } from '#basis/problem.ts'
import {
  TEMPLATE_FORMATS,
  type TemplateFile,
  type TemplateFiles,
  type TemplateFormat,
  templateFiles,
} from '#compose/artefact/templates.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { findingsOf, stopsBlock } from '#compose/page/findings.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { PAPER_NAMES, type PaperName } from '#craft/sheet/paper.ts'
import type { TemplateOptions } from '#craft/templates.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Stove } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { missingLettersLine } from '../page/missingLetters.ts'

export interface TemplatesCommandOptions {
  readonly paper: string
  readonly as: string
  readonly out: string
  readonly date?: string
  readonly json?: boolean
}

/** A name of a list, in whatever capitals it was written. */
const named = <Name extends string>(names: readonly Name[], said: string): Name | undefined =>
  names.find((known) => known.toLowerCase() === said.toLowerCase())

const listed = (names: readonly string[]): string => `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`

/** The paper that was named. Throws `BadInput` for one we do not lay out for. */
export const paperOf = (said: string): PaperName => {
  const paper = named(PAPER_NAMES, said)
  if (paper !== undefined) return paper
  throw new BadInput([
    problemOf('paper.unknown', '--paper', said, listed(PAPER_NAMES), 'Name the paper your printer holds.'),
  ])
}

const formatsOf = (said: string): readonly TemplateFormat[] => {
  const format = named([...TEMPLATE_FORMATS, 'all' as const], said)
  if (format === 'all') return TEMPLATE_FORMATS
  if (format !== undefined) return [format]
  throw new BadInput([
    problemOf(
      'format.unknown',
      '--as',
      said,
      listed([...TEMPLATE_FORMATS, 'all']),
      'PDF is for printing; SVG and DXF hold each drawing whole, for a plotter or a drawing program.',
    ),
  ])
}

/** What the templates find wrong, told where the user wrote it. */
export const whereWritten = (problem: Problem, file: string): Problem =>
  problem.field === 'date'
    ? { ...problem, field: '--date' }
    : { ...problem, field: `${file}: ${problem.field}` }

const drawnFor = async (
  stove: Stove,
  file: string,
  formats: readonly TemplateFormat[],
  options: TemplateOptions,
): Promise<TemplateFiles> => {
  try {
    return await templateFiles(stove, formats, options)
  } catch (error) {
    if (!(error instanceof BadInput)) throw error
    throw new BadInput(error.problems.map((problem) => whereWritten(problem, file)))
  }
}

/** A line for the PDF, a line for each drawing. */
const fileLine = (
  { format, title, pages, path }: TemplateFile & { readonly path: string },
  paper: PaperName,
) =>
  format === 'pdf'
    ? `${path}: ${pages} ${pages === 1 ? 'page' : 'pages'} of ${paper}, true size`
    : `${path}: ${title}, true size in millimetres`

const PRINTING =
  'Print at 100 % (no “fit to page”), then measure both bars on a page: each is 100 mm long, the line beside it 4 in. Do not drill from a page whose bars are off by more than 0.5 mm (1/64 in).'

export const templates = async (
  env: Environment,
  file: string,
  options: TemplatesCommandOptions,
): Promise<ExitCode> => {
  const [paper, formats] = [paperOf(options.paper), formatsOf(options.as)]
  const stove = stoveFrom(env, file)
  const findings = checkStove(stove, null)
  const stops = findings.filter(({ severity }) => severity === 'stop')
  const code = stops.length === 0 ? EXIT.fine : EXIT.findings
  // All of it is made before any of it is written.
  const made = await drawnFor(stove, file, formats, {
    paper,
    date: options.date ?? env.today(),
    version: env.version,
    fonts: env.fonts(),
  })
  const files = made.files.map((one) => ({
    ...one,
    path: writeInto(env, options.out, one.name, one.bytes),
  }))
  if (options.json) {
    const answer = {
      stove: stove.name,
      paper,
      files: files.map(({ path, format, title, pages }) => ({ path, format, title, pages })),
      missingLetters: made.missingLetters,
      stopFindings: stops,
      warnFindings: findings.filter(({ severity }) => severity === 'warn'),
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      files.map((one) => wrap(fileLine(one, paper), env.width, '', '  ')).join('\n'),
      stopsBlock(stops, 'Do not cut this stove as it is drawn:', env.width),
      findingsOf('warn', findings, env.width),
      wrap(PRINTING, env.width),
      missingLettersLine(made.missingLetters, env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
