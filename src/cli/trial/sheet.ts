import { BadInput } from '#basis/problem.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import type { PaperName } from '#craft/sheet/paper.ts'
import { recordPdf } from '#craft/trial/recordPdf.ts'
import { withDateOption } from '../dateOption.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf } from '../input.ts'
import { writeInto } from '../output.ts'
import { missingLettersLine } from '../page/missingLetters.ts'

export interface SheetOptions {
  readonly paper: string
  readonly name?: string
  readonly out: string
  readonly date?: string
  readonly json?: boolean
}

const PAPERS: readonly PaperName[] = ['A4', 'Letter']
/** What goes on one line of a page. */
const LONGEST_NAME = 60

const refuse = (...of: Parameters<typeof problemOf>): never => {
  throw new BadInput([problemOf(...of)])
}

const paperOf = (name: string): PaperName =>
  PAPERS.find((known) => known.toLowerCase() === name.toLowerCase()) ??
  refuse('paper.unknown', '--paper', name, PAPERS.join(' or '), 'Name the paper your printer holds.')

const nameOf = (name: string | undefined): string => {
  const trimmed = (name ?? '').trim()
  return trimmed.length <= LONGEST_NAME
    ? trimmed
    : refuse('name.long', '--name', trimmed, `at most ${LONGEST_NAME} letters`, 'Shorten it.')
}

/** The empty sheet of one burn, as PDF. */
export const blankTrialSheet = async (
  env: Environment,
  files: readonly string[],
  options: SheetOptions,
): Promise<ExitCode> => {
  if (files.length > 0)
    refuse(
      'trial.sheet',
      '--sheet',
      files.join(', '),
      '--sheet without a trial file',
      'The sheet is empty: leave the file out. With a prediction beside the blanks: tinwright sheets STOVE',
    )
  const paper = paperOf(options.paper)
  const name = nameOf(options.name)
  const made = await withDateOption(
    recordPdf(name, {
      paper,
      date: options.date ?? env.today(),
      version: env.version,
      fonts: env.fonts(),
    }),
  )
  const file = `${name === '' ? '' : `${fileNameOf(name)}-`}trial-sheet-${paper.toLowerCase()}.pdf`
  const path = writeInto(env, options.out, file, made.pdf)
  if (options.json === true) {
    const answer = {
      paper,
      pages: made.pages,
      path,
      missingLetters: made.missingLetters,
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return EXIT.fine
  }
  env.out(
    page(
      wrap(
        `${path}: ${made.pages} pages of ${paper} for one burn: everything a trial file asks for.`,
        env.width,
      ),
      missingLettersLine(made.missingLetters, env.width),
      cautionBlock(env.width),
    ),
  )
  return EXIT.fine
}
