import { basename, dirname } from 'node:path'
import { BadInput } from '#basis/problem.ts'
import { page, wrap } from '#compose/page/text.ts'
import type { ChannelInspection } from '#proof/logger/inspect.ts'
import type { Question } from '#proof/logger/mapping.ts'
import { mappingText } from '#proof/logger/mappingFile.ts'
import { previewOf } from '#proof/logger/preview.ts'
import type { LogPart } from '#proof/logger/readLog.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { mappingFrom, problemOf, readFileBytes, trialFrom } from '../input.ts'
import { proposedFor } from '../logger/answers.ts'
import { type Aligned, alignedWith } from '../logger/match.ts'
import { readingsCsv } from '../logger/readings.ts'
import { textOf } from '../logger/text.ts'
import {
  boilingPointOf,
  furtherQuestions,
  partAsked,
  type Understood,
  understand,
  waterAsked,
} from '../logger/understand.ts'
import { writeInto } from '../output.ts'
import {
  alignmentBlock,
  boilBlock,
  burnRateBlock,
  FEWEST_READINGS,
  type FirePart,
  MOST_PARTS,
  outliersBlock,
} from '../page/loggerFire.ts'
import { mappingBlock, questionsBlock } from '../page/loggerMapping.ts'
import {
  channelsBlock,
  logFindingsBlock,
  partsBlock,
  previewBlock,
  readingText,
} from '../page/loggerReadings.ts'

export interface LoggerOptions {
  readonly mapping?: string
  readonly saveMapping?: string
  readonly answer?: readonly string[]
  readonly trial?: string
  readonly match?: readonly string[]
  readonly part?: string
  readonly water?: string
  readonly boilingPoint?: string
  readonly csv?: string
  readonly json?: boolean
}

const write = (env: Environment, option: string, path: string, text: string): string =>
  writeInto(env, dirname(path), basename(path), new TextEncoder().encode(text), option)

const open = (
  env: Environment,
  file: string,
  remark: string | null,
  questions: readonly Question[],
  json: boolean,
): ExitCode => {
  if (json) env.out(`${JSON.stringify({ file, mapping: null, questions }, null, 2)}\n`)
  else
    env.out(
      page(
        wrap(`${basename(file)} is not read yet`, env.width),
        remark === null ? null : wrap(remark, env.width),
        questionsBlock(questions, env.width),
      ),
    )
  return EXIT.findings
}

const refused = (options: LoggerOptions): void => {
  const clash = (value: string, allowed: string, fix: string): never => {
    throw new BadInput([problemOf('logger.options', 'logger', value, allowed, fix)])
  }
  if (options.mapping !== undefined && options.answer !== undefined)
    clash('--mapping beside --answer', 'one of the two', 'A kept mapping leaves nothing to ask.')
  if (
    options.trial === undefined &&
    (options.match !== undefined || options.water !== undefined || options.part !== undefined)
  )
    clash(
      '--match, --water or --part without --trial',
      'these beside a trial that the readings belong to',
      'Add --trial and the trial’s file.',
    )
}

export const logger = (env: Environment, file: string, options: LoggerOptions): ExitCode => {
  refused(options)
  const json = options.json === true
  const trial = options.trial === undefined ? null : trialFrom(env, options.trial)
  const boilingPoint = boilingPointOf(trial, options.boilingPoint)
  const given = options.mapping === undefined ? null : mappingFrom(env, options.mapping)
  const source = textOf(readFileBytes(env, file, 'logger file'))
  const { mapping, questions } =
    given === null
      ? proposedFor(file, source.text, options.answer ?? [])
      : { mapping: given, questions: [] as readonly Question[] }
  if (mapping === null) return open(env, file, source.remark, questions, json)

  const understood = understand(file, source, mapping, boilingPoint, given !== null)
  const { parts, log, inspected } = understood
  const part = trial === null ? null : partAsked(parts, options.part)
  const water = waterAsked(understood, options.water)
  const further = trial === null ? [] : furtherQuestions(understood, part, water)
  const clocks =
    trial === null || part === null || further.length > 0
      ? null
      : alignedWith(
          trial,
          mapping,
          parts[part] as LogPart,
          options.match ?? [],
          boilOf(inspected[part] ?? [], water),
        )
  const files = further.length > 0 ? [] : written(env, options, understood, part, clocks)
  const code = further.length > 0 ? EXIT.findings : EXIT.fine
  const preview = previewOf(source.text, mapping, log, json ? 8 : 4)
  const shownParts = { ...preview, rows: preview.rows.filter((row) => (row.part ?? 1) <= MOST_PARTS) }
  if (json) {
    const answer = {
      file,
      remark: source.remark,
      mapping,
      questions: further,
      ...preview,
      findings: log.findings,
      read: log.read,
      boilingPoint,
      fire: inspected.map((channels) => channels.map(plain)),
      clocks,
      files,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  const fires = inspected
    .map(
      (channels, i): FirePart => ({
        number: i + 1,
        ofSeveral: parts.length > 1,
        channels,
        aligned: i === part ? clocks : null,
      }),
    )
    .filter((_, i) => (parts[i]?.line.length ?? 0) >= FEWEST_READINGS)
  const unseen = parts.length - Math.min(fires.length, MOST_PARTS)
  const highest = boilingPoint.assumed
    ? Math.max(
        0,
        ...preview.channels.map(({ high }, c) =>
          mapping.channels[c]?.quantity === 'mass' ? 0 : (high ?? 0),
        ),
      )
    : null
  const boiling = `${readingText('temperature', boilingPoint.value)} ${boilingPoint.from}`
  env.out(
    page(
      wrap(
        `${basename(file)}: ${log.read} lines of readings, ${mapping.channels.length} ${mapping.channels.length === 1 ? 'channel' : 'channels'}`,
        env.width,
      ),
      source.remark === null ? null : wrap(source.remark, env.width),
      mappingBlock(mapping, given === null ? 'How it is read' : 'How it is read, as you kept it', env.width),
      previewBlock(shownParts, mapping, env.width),
      channelsBlock(preview, mapping, env.width),
      partsBlock(preview, mapping, env.width),
      logFindingsBlock(log.findings, env.width),
      trial !== null && clocks !== null ? alignmentBlock(trial.name, clocks, mapping, env.width) : null,
      trial !== null && clocks === null && further.length === 0
        ? wrap(
            `Nothing brings the logger’s clock onto the log of “${trial.name}”: name a moment with --match, such as --match "lit=12 s".`,
            env.width,
          )
        : null,
      ...fires
        .slice(0, MOST_PARTS)
        .flatMap((one) => [
          boilBlock(one, mapping, boiling, highest, env.width),
          burnRateBlock(one, mapping, env.width),
          outliersBlock(one, mapping, env.width),
        ]),
      unseen === 0
        ? null
        : wrap(
            `Not looked into here: ${unseen} ${unseen === 1 ? 'part' : 'parts'}, for fewer than ${FEWEST_READINGS} readings each or as one of too many; --json tells of all.`,
            env.width,
          ),
      further.length === 0 ? null : furtherBlock(further, env.width),
      files.length === 0 ? null : wrap(`Written: ${files.join(', ')}`, env.width),
    ),
  )
  return code
}

/** The boil of the channel that is meant, or of the only one that boils [s by the logger's clock]. */
const boilOf = (channels: readonly ChannelInspection[], water: string | null): number | null => {
  const boiled = channels.filter(({ name, boil }) => boil !== null && (water === null || name === water))
  return boiled.length === 1 ? (boiled[0]?.boil?.time ?? null) : null
}

const written = (
  env: Environment,
  options: LoggerOptions,
  { mapping, log, inspected, parts }: Understood,
  part: number | null,
  clocks: Aligned | null,
): readonly string[] => {
  const one =
    part === null || clocks === null ? null : { part: parts[part] as LogPart, alignment: clocks.alignment }
  return [
    ...(options.saveMapping === undefined
      ? []
      : [write(env, '--save-mapping', options.saveMapping, mappingText(mapping))]),
    ...(options.csv === undefined
      ? []
      : [write(env, '--csv', options.csv, readingsCsv(mapping, log, inspected, one))]),
  ]
}

const furtherBlock = (questions: readonly Question[], width: number): string =>
  questions
    .map(({ key, ask, choices }) =>
      [
        wrap(
          `${ask} Until you say so the two clocks are not brought together, and nothing is written.`,
          width,
        ),
        ...choices.map((choice) => `  → --${key} "${choice}"`),
      ].join('\n'),
    )
    .join('\n\n')

/** Typed arrays as lists. */
const plain = ({ burnRate, ...rest }: ChannelInspection) => ({
  ...rest,
  burnRate: burnRate === null ? null : { ...burnRate, time: [...burnRate.time], rate: [...burnRate.rate] },
})
