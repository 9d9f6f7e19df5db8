import { BadInput } from '#basis/problem.ts'
import { type ChannelInspection, inspectPart } from '#proof/logger/inspect.ts'
import type { Mapping, Question } from '#proof/logger/mapping.ts'
import { type Log, type LogPart, readLog } from '#proof/logger/readLog.ts'
import type { Trial } from '#proof/trial/model.ts'
import { standardPressure } from '#science/atmosphere.ts'
import { saturationTemperature } from '#science/pot/saturation.ts'
import { optionQuantity, problemOf } from '../input.ts'
import { orOtherHeadings } from './answers.ts'
import type { FileText } from './text.ts'

export interface BoilingPoint {
  /** [K] */
  readonly value: number
  readonly from: string
  /** Taken for want of anything said. */
  readonly assumed: boolean
}

/** Of water where it was burnt: the maker's, the trial's, or that of sea level. */
export const boilingPointOf = (trial: Trial | null, option: string | undefined): BoilingPoint => {
  const asked = optionQuantity(option, '--boiling-point', 'waterTemperature')
  if (asked !== null) return { value: asked, from: 'as you say', assumed: false }
  const weather = trial?.weather
  if (weather?.boilingPoint !== undefined)
    return { value: weather.boilingPoint, from: 'as the trial says', assumed: false }
  const pressure =
    weather?.pressure ?? (weather?.altitude === undefined ? null : standardPressure(weather.altitude))
  return pressure === null
    ? {
        value: saturationTemperature(standardPressure(0)),
        from: 'at sea level; --boiling-point says yours',
        assumed: true,
      }
    : { value: saturationTemperature(pressure), from: 'by the air pressure of the trial', assumed: false }
}

/** What was made of the file. */
export interface Understood {
  readonly mapping: Mapping
  readonly log: Log
  /** Parts that hold anything. */
  readonly parts: readonly LogPart[]
  readonly inspected: readonly (readonly ChannelInspection[])[]
  readonly boilingPoint: BoilingPoint
}

/** What is asked once the file is read: which part is the trial's, which channel is its water. */
export const furtherQuestions = (
  { parts, inspected }: Understood,
  part: number | null,
  water: string | null,
): readonly Question[] => {
  if (part === null)
    return [
      {
        key: 'part',
        ask: 'The clock began anew: which part is the burn of the trial?',
        seen: `${parts.length} parts`,
        choices: parts.map((_, i) => String(i + 1)),
      },
    ]
  const boiled = (inspected[part] ?? []).filter(({ boil }) => boil !== null)
  return boiled.length > 1 && water === null
    ? [
        {
          key: 'water',
          ask: 'More than one channel comes to stay at the boiling point: which is the water of the trial?',
          seen: boiled.map(({ name }) => name).join(', '),
          choices: boiled.map(({ name }) => name),
        },
      ]
    : []
}

/** Which part is meant, from 0; null while that is open. */
export const partAsked = (parts: readonly LogPart[], asked: string | undefined): number | null => {
  if (asked === undefined) return parts.length === 1 ? 0 : null
  const number = Number(asked)
  if (Number.isInteger(number) && number >= 1 && number <= parts.length) return number - 1
  throw new BadInput([
    problemOf(
      'logger.part',
      '--part',
      asked,
      parts.length === 1 ? '1: the clock never began anew' : `a part from 1 to ${parts.length}`,
      'Look at the parts without it.',
    ),
  ])
}

/** Which channel the maker calls the water; null where nobody said. */
export const waterAsked = ({ mapping }: Understood, asked: string | undefined): string | null => {
  if (asked === undefined) return null
  const names = mapping.channels.filter(({ quantity }) => quantity === 'temperature').map(({ name }) => name)
  if (names.includes(asked)) return asked
  throw new BadInput([
    problemOf(
      'logger.water',
      '--water',
      asked,
      names.join(', ') || 'a channel of temperature',
      'Write it as it stands there.',
    ),
  ])
}

/** Reads the file by the mapping and looks into what was read. */
export const understand = (
  file: string,
  { text }: FileText,
  mapping: Mapping,
  boilingPoint: BoilingPoint,
  kept: boolean,
): Understood => {
  const log = readLog(text, mapping)
  if (kept) orOtherHeadings(file, log.findings)
  const parts = log.parts.filter(({ line }) => line.length > 0)
  if (parts.length === 0)
    throw new BadInput([
      problemOf(
        'logger.nothing-read',
        file,
        log.findings[0]?.sentence ?? 'no line of readings',
        'at least one line of readings that the mapping fits',
        kept ? 'Leave --mapping out: this file is of another shape.' : 'Look at the file.',
      ),
    ])
  return {
    mapping,
    log: { ...log, parts },
    parts,
    inspected: parts.map((part) => inspectPart(part, boilingPoint.value)),
    boilingPoint,
  }
}
