import { BadInput, type Problem } from '#basis/problem.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import type { PaperName } from '#craft/sheet/paper.ts'
import { type Templates, templatesPdf } from '#craft/templates.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Stove } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { cautionBlock } from '../page/cautions.ts'
import { stopsBlock } from '../page/findings.ts'
import { page, wrap } from '../page/text.ts'

export interface TemplatesCommandOptions {
  readonly paper: string
  readonly out: string
  readonly date?: string
  readonly json?: boolean
}

const PAPERS: readonly PaperName[] = ['A4', 'Letter']

const paperOf = (name: string): PaperName => {
  const paper = PAPERS.find((known) => known.toLowerCase() === name.toLowerCase())
  if (paper !== undefined) return paper
  throw new BadInput([
    problemOf('paper.unknown', '--paper', name, PAPERS.join(' or '), 'Name the paper your printer holds.'),
  ])
}

/** A file name from a stove's name: letters and figures of any script, hyphens for the rest. */
export const fileNameOf = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '') || 'stove'

/** What the templates find wrong, told where the user wrote it. */
const whereWritten = (problem: Problem, file: string): Problem =>
  problem.field === 'date'
    ? { ...problem, field: '--date' }
    : { ...problem, field: `${file}: ${problem.field}` }

const drawn = async (
  env: Environment,
  stove: Stove,
  file: string,
  paper: PaperName,
  date: string,
): Promise<Templates> => {
  const fonts = env.fonts()
  try {
    return await templatesPdf(stove, { paper, date, version: env.version, fonts })
  } catch (error) {
    if (!(error instanceof BadInput)) throw error
    throw new BadInput(error.problems.map((problem) => whereWritten(problem, file)))
  }
}

export const templates = async (
  env: Environment,
  file: string,
  options: TemplatesCommandOptions,
): Promise<ExitCode> => {
  const paper = paperOf(options.paper)
  const stove = stoveFrom(env, file)
  const stops = checkStove(stove, null).filter(({ severity }) => severity === 'stop')
  const code = stops.length === 0 ? EXIT.fine : EXIT.findings
  const made = await drawn(env, stove, file, paper, options.date ?? env.today())
  const name = `${fileNameOf(stove.name)}-templates-${paper.toLowerCase()}.pdf`
  const path = writeInto(env, options.out, name, made.pdf)
  if (options.json) {
    const { pages, missingLetters } = made
    const answer = { stove: stove.name, paper, pages, path, missingLetters }
    env.out(`${JSON.stringify({ ...answer, stopFindings: stops, cautions: MAKING_CAUTIONS }, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      wrap(`${path}: ${made.pages} ${made.pages === 1 ? 'page' : 'pages'} of ${paper}, true size`, env.width),
      stopsBlock(stops, 'Do not cut this stove as it is drawn:', env.width),
      wrap(
        'Print at 100 % (no “fit to page”), then measure both bars on a page: each is 100 mm long, the line beside it 4 in. Do not drill from a page whose bars are off by more than 0.5 mm (1/64 in).',
        env.width,
      ),
      made.missingLetters.length === 0
        ? null
        : wrap(`The font has no letter for ${made.missingLetters.join(' ')}; they print as “?”.`, env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
