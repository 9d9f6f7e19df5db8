import { basename, dirname } from 'node:path'
import { BadInput } from '#basis/problem.ts'
import { isGood, outlookOf } from '#compose/outlook.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { stopsBlock } from '#compose/page/findings.ts'
import { outlookTable } from '#compose/page/outlook.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { blankBuilt, formatBuiltFile } from '#stove/built/blank.ts'
import { builtSheet } from '#stove/built/sheet.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { type ConditionOptions, moistureOf, siteOf } from '../conditions.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { builtFrom, documentFrom, problemOf } from '../input.ts'
import { writeInto } from '../output.ts'
import { differenceBlocks, unmeasuredBlock } from '../page/built.ts'

export interface BuiltCommandOptions extends Omit<ConditionOptions, 'fuel'> {
  readonly blank?: boolean
  readonly out?: string
  readonly json?: boolean
}

const usage = (value: string, allowed: string, fix: string): BadInput =>
  new BadInput([problemOf('built.what', 'built', value, allowed, fix)])

const write = (env: Environment, path: string, text: string): string =>
  writeInto(env, dirname(path), basename(path), new TextEncoder().encode(text))

/** The empty sheet, to be filled in at the bench. */
const blankSheet = (env: Environment, file: string, { out, json }: BuiltCommandOptions): ExitCode => {
  const { stove } = documentFrom(env, file)
  const blank = blankBuilt(stove)
  const text = formatBuiltFile(blank)
  if (out === undefined) {
    // The sheet itself is the answer: it can be sent into a file.
    env.out(text)
    return EXIT.fine
  }
  const path = write(env, out, text)
  const measures = builtSheet(stove).length
  if (json === true) {
    const answer = { stove: stove.name, path, measures, cautions: MAKING_CAUTIONS }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return EXIT.fine
  }
  env.out(
    page(
      wrap(`${path}: ${measures} blanks for ${stove.name}, each null until you measure it`, env.width),
      wrap(
        'Write lengths with their unit, such as "16 mm" or "5/8 in"; leave what you did not measure as null: it is taken as planned. “plan” is for your eye and is not read.',
        env.width,
      ),
      cautionBlock(env.width),
    ),
  )
  return EXIT.fine
}

export const built = (
  env: Environment,
  file: string,
  sheet: string | undefined,
  options: BuiltCommandOptions,
): ExitCode => {
  if (options.blank === true) {
    if (sheet === undefined) return blankSheet(env, file, options)
    throw usage(`--blank beside ${sheet}`, '--blank without an as-built file', 'Leave one of the two out.')
  }
  if (sheet === undefined)
    throw usage(
      file,
      'a stove file and its as-built file, or --blank',
      `Write an empty sheet with: tinwright built ${file} --blank --out sheet.built.json`,
    )
  const site = siteOf(options)
  const moisture = moistureOf(options)
  const given = { site, ...(moisture === null ? {} : { moisture }) }
  const plan = documentFrom(env, file)
  const made = builtFrom(env, sheet, plan)
  const stops = checkStove(made.stove, null).filter(({ severity }) => severity === 'stop')
  const before = outlookOf(plan.stove, given)
  const after = outlookOf(made.stove, given)
  const path = options.out === undefined ? null : write(env, options.out, formatStoveFile(made.file))
  const code = isGood(after) && stops.length === 0 ? EXIT.fine : EXIT.findings
  if (options.json === true) {
    const { differences, unmeasured, remarks } = made
    const answer = {
      stove: plan.stove.name,
      differences,
      unmeasured,
      remarks,
      prediction: { plan: before, built: after },
      path,
      stopFindings: stops,
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  const all = made.differences.length + made.unmeasured.length
  env.out(
    page(
      wrap(`${plan.stove.name} as built: ${made.differences.length} of ${all} measures taken`, env.width),
      stopsBlock(stops, 'As it was built, this stove cannot be what the file says:', env.width),
      ...differenceBlocks(made, env.width),
      made.remarks.length === 0 ? null : made.remarks.map((remark) => wrap(remark, env.width)).join('\n'),
      unmeasuredBlock(made, env.width),
      [
        wrap('What that does to the prediction, both solved anew', env.width),
        outlookTable(['as planned', before], ['as built', after], env.width),
      ].join('\n'),
      wrap(
        'These are the model’s median figures, without bands; pts are points of a hundred. Small differences between the two are better known than either: the same guesses stand in both.',
        env.width,
      ),
      path === null
        ? null
        : wrap(`Written: ${path}, a stove file; its remarks say it is as built.`, env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
