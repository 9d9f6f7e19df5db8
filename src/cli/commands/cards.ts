import { BadInput } from '#basis/problem.ts'
import { type CardFormat, cardFile, cardNames, drawCards, sizesFile } from '#compose/artefact/cards.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { stopsBlock } from '#compose/page/findings.ts'
import { columns, page, wrap } from '#compose/page/text.ts'
import type { Card } from '#craft/card/card.ts'
import type { Cards, CardsInput } from '#craft/card/cards.ts'
import type { CardShape } from '#craft/card/format.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { darkTheme, lightTheme } from '#craft/section/theme.ts'
import { type ReportOutcome, reportOf } from '#science/answers/burn/report.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Stove } from '#stove/model.ts'
import { setupOf } from '../burn/setup.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { missingLettersLine } from '../page/missingLetters.ts'
import { bandSets, watched } from '../sampling.ts'
import { whereWritten } from './templates.ts'

export interface CardsCommandOptions {
  readonly out: string
  readonly shape: string
  readonly as: string
  readonly theme: string
  readonly bands: string
  readonly date?: string
  readonly json?: boolean
}

/** What an option may say, and what that means. */
const chosen = <T>(said: string, option: string, choices: Readonly<Record<string, T>>): T => {
  const found = choices[said.toLowerCase()]
  if (found !== undefined) return found
  const names = Object.keys(choices)
  const allowed = `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`
  throw new BadInput([
    problemOf(`${option.slice(2)}.unknown`, option, said, allowed, `Name one of these: ${allowed}.`),
  ])
}

const SHAPES: Readonly<Record<string, readonly CardShape[]>> = {
  wide: ['wide'],
  square: ['square'],
  both: ['wide', 'square'],
}
const FORMATS: Readonly<Record<string, readonly CardFormat[]>> = {
  svg: ['svg'],
  png: ['png'],
  both: ['svg', 'png'],
}
const THEMES = { light: lightTheme, dark: darkTheme }

/** A card and where it was written. */
interface Kept {
  readonly card: Card
  /** Of its files, without what says the format. */
  readonly name: string
  readonly files: readonly string[]
}

const keep = async (
  env: Environment,
  stove: Stove,
  { cards }: Cards,
  formats: readonly CardFormat[],
  folder: string,
): Promise<readonly Kept[]> => {
  const paint = formats.includes('png') ? await env.pngPainter() : null
  const names = cardNames(stove.name, cards)
  try {
    return cards.map((card, i) => {
      env.progress(`card ${i + 1} of ${cards.length}`)
      const name = names[i] as string
      const files = formats.map((format) => {
        const made = cardFile(card, name, format, paint)
        return writeInto(env, folder, made.name, made.bytes)
      })
      return { card, name, files }
    })
  } finally {
    env.progress(null)
  }
}

const drawn = (
  env: Environment,
  stove: Stove,
  outcome: ReportOutcome,
  file: string,
  given: Pick<CardsInput, 'shapes' | 'theme' | 'date'>,
): Cards => {
  try {
    return drawCards(stove, outcome, { ...given, fonts: env.fonts() })
  } catch (error) {
    if (!(error instanceof BadInput)) throw error
    throw new BadInput(error.problems.map((problem) => whereWritten(problem, file)))
  }
}

const noFigures = (outcome: ReportOutcome): string | null =>
  outcome.kind === 'burn' ? null : `The cards say no figures of a burn: ${outcome.noBurn.sentence}`

const isGood = (outcome: ReportOutcome): boolean =>
  outcome.kind === 'burn' && outcome.report.course === 'clean'

export const cards = async (
  env: Environment,
  file: string,
  options: CardsCommandOptions,
): Promise<ExitCode> => {
  const shapes = chosen(options.shape, '--shape', SHAPES)
  const formats = chosen(options.as, '--as', FORMATS)
  const theme = chosen(options.theme, '--theme', THEMES)
  const sets = bandSets(options.bands)
  const stove = stoveFrom(env, file)
  const stops = checkStove(stove, null).filter(({ severity }) => severity === 'stop')
  const date = options.date ?? env.today()
  const outcome = watched(env, (progress) => reportOf(setupOf(stove, {}), sets, progress))
  const made = drawn(env, stove, outcome, file, { shapes, theme, date })
  const kept = await keep(env, stove, made, formats, options.out)
  const sizes = sizesFile(stove.name, made)
  const list = writeInto(env, options.out, sizes.name, sizes.bytes)
  const code = stops.length === 0 && isGood(outcome) ? EXIT.fine : EXIT.findings
  if (options.json) {
    const answer = {
      stove: stove.name,
      date,
      cards: kept.map(({ card: { shape, width, height, part, title }, files }) => ({
        title,
        part,
        shape,
        width,
        height,
        files,
      })),
      list,
      text: made.list,
      noBurn: outcome.kind === 'burn' ? null : outcome.noBurn,
      missingLetters: made.missingLetters,
      stopFindings: stops,
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  const without = noFigures(outcome)
  const { missingLetters } = made
  env.out(
    page(
      wrap(
        `${kept.length} cards of ${stove.name} in ${options.out}, each as ${formats.map((format) => format.toUpperCase()).join(' and ')}:`,
        env.width,
      ),
      columns(
        kept.map(({ card, name }) => [name, card.title, `${card.width} × ${card.height}`]),
        ['left', 'left', 'right'],
      ),
      wrap(`${list}: every size, one line a thing, to read aloud`, env.width),
      stopsBlock(stops, 'Do not cut this stove as it is drawn:', env.width),
      without === null ? null : wrap(without, env.width),
      missingLettersLine(missingLetters, env.width, 'they are drawn as “?”'),
      cautionBlock(env.width),
    ),
  )
  return code
}
