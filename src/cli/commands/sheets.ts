import { long } from '#basis/text/bothUnits.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { page, wrap } from '#compose/page/text.ts'
import { predictedFor } from '#compose/trialPrediction.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import { blankSheetsPdf } from '#craft/trial/sheetsPdf.ts'
import { reportOf } from '#science/answers/burn/report.ts'
import { setupOf } from '../burn/setup.ts'
import type { ConditionOptions } from '../conditions.ts'
import { withDateOption } from '../dateOption.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { missingLettersLine } from '../page/missingLetters.ts'
import { paperOf } from './templates.ts'

export interface SheetsOptions extends Omit<ConditionOptions, 'fuel'> {
  readonly paper: string
  readonly out: string
  readonly date?: string
  readonly json?: boolean
}

export const sheets = async (env: Environment, file: string, options: SheetsOptions): Promise<ExitCode> => {
  const paper = paperOf(options.paper)
  const stove = stoveFrom(env, file)
  const outcome = reportOf(setupOf(stove, options), 0)
  const prediction = predictedFor(outcome)
  const date = options.date ?? env.today()
  const made = await withDateOption(
    blankSheetsPdf(stove, {
      paper,
      date,
      version: env.version,
      fonts: env.fonts(),
      prediction,
    }),
  )
  const name = `${fileNameOf(stove.name)}-sheets-${paper.toLowerCase()}.pdf`
  const path = writeInto(env, options.out, name, made.pdf)
  if (options.json === true) {
    const answer = {
      stove: stove.name,
      paper,
      pages: made.pages,
      path,
      prediction,
      missingLetters: made.missingLetters,
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return EXIT.fine
  }
  env.out(
    page(
      wrap(
        `${path}: ${made.pages} pages of ${paper} to fill in: one burn, with what is predicted; the stove as built, with what is planned in mm and in.`,
        env.width,
      ),
      wrap(
        `Beside the blanks of the burn stands what the model predicts: ${[
          `fuel ${prediction.fuel ?? 'none'}, filled ${long(stove.fuel.level)} deep`,
          ...(prediction.boil === null ? [] : [`boils ${prediction.boil}`]),
          ...(prediction.flameOut === null ? [] : [`flame out ${prediction.flameOut}`]),
          ...(prediction.regime === null ? [] : [prediction.regime]),
        ].join('; ')}. Fill in yours before you look at them.`,
        env.width,
      ),
      missingLettersLine(made.missingLetters, env.width),
      cautionBlock(env.width),
    ),
  )
  return EXIT.fine
}
