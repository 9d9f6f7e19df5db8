import { BadInput } from '#basis/problem.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import type { PaperName } from '#craft/sheet/paper.ts'
import { templatesPdf } from '#craft/templates.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, stoveFrom } from '../input.ts'
import { cautionBlock } from '../page/cautions.ts'
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
    .replace(/^-+|-+$/g, '')
    .slice(0, 60) || 'stove'

export const templates = async (
  env: Environment,
  file: string,
  options: TemplatesCommandOptions,
): Promise<ExitCode> => {
  const paper = paperOf(options.paper)
  const stove = stoveFrom(env, file)
  const made = await templatesPdf(stove, {
    paper,
    date: options.date ?? env.today(),
    version: env.version,
    fonts: env.fonts(),
  })
  const path = env.write(
    options.out,
    `${fileNameOf(stove.name)}-templates-${paper.toLowerCase()}.pdf`,
    made.pdf,
  )
  if (options.json) {
    env.out(
      `${JSON.stringify({ stove: stove.name, paper, pages: made.pages, path, missingLetters: made.missingLetters, cautions: MAKING_CAUTIONS }, null, 2)}\n`,
    )
    return EXIT.fine
  }
  env.out(
    page(
      `${path}: ${made.pages} ${made.pages === 1 ? 'page' : 'pages'} of ${paper}, true size`,
      wrap(
        'Print at 100 % (no “fit to page”), then measure both bars on a page: each is 100 mm. Do not drill from a page whose bars are off by more than half a millimetre.',
        env.width,
      ),
      made.missingLetters.length === 0
        ? null
        : wrap(`The font has no letter for ${made.missingLetters.join(' ')}; they print as “?”.`, env.width),
      cautionBlock(env.width),
    ),
  )
  return EXIT.fine
}
