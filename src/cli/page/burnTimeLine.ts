import { formatQuantity } from '#basis/text/format.ts'
import { columns } from '#compose/page/text.ts'
import { bandText } from '#craft/told/band.ts'
import type { BurnReport, ReportEvent } from '#science/answers/burn/report.ts'
import type { Band } from '#science/bands/bands.ts'

const LIGHTING = '▒'
const WOOD_GAS = '█'
const CHAR = '░'
const WIDEST = 76

/** What the page says of an event; the others speak for themselves. */
const WORDS: Partial<Record<ReportEvent['kind'], string>> = {
  lit: 'lit',
  'whole bed alight': 'whole top alight',
  'pot on': 'pot goes on',
  boil: '1 L boils',
  'front at the floor': 'front at the floor, char glows on',
  'front out': 'front goes out',
  'char out': 'last char goes cold',
}

interface Mark {
  readonly time: number
  readonly words: string
  readonly band: Band | null
}

/** Events of one moment are one mark. */
const marksOf = ({ events, bands }: BurnReport): readonly Mark[] => {
  const bandOf: Partial<Record<ReportEvent['kind'], Band | null | undefined>> = {
    'whole bed alight': bands?.figures.wholeBedAlightAt,
    boil: bands?.figures['boilsAt 1 L'],
    'front at the floor': bands?.figures.frontAtFloorAt,
    'char out': bands?.figures.overAt,
  }
  const marks: Mark[] = []
  for (const { time, kind, sentence } of events) {
    const words = WORDS[kind] ?? `${sentence.charAt(0).toLowerCase()}${sentence.slice(1).replace(/\.$/, '')}`
    const before = marks[marks.length - 1]
    if (before !== undefined && Math.abs(before.time - time) < 0.5)
      marks[marks.length - 1] = { ...before, words: `${before.words}, ${words}` }
    else marks.push({ time, words, band: bandOf[kind] ?? null })
  }
  return marks
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz'

/** The phases of the burn as a bar, its events as letters below it, and what each letter stands for. */
export const timeLine = (report: BurnReport, width: number): string => {
  const { series } = report
  const last = series[series.length - 1]
  if (last === undefined) return ''
  const end = last.time + last.duration
  const cellCount = Math.min(WIDEST, width - 4)
  const cellOf = (time: number): number => Math.min(cellCount - 1, Math.floor((time / end) * cellCount))
  const bar = Array.from({ length: cellCount }, (_, i) => {
    const time = ((i + 0.5) / cellCount) * end
    const phase = series.find((step) => time < step.time + step.duration)?.phase
    return phase === 'lighting' ? LIGHTING : phase === 'char' ? CHAR : WOOD_GAS
  })
  const marks = marksOf(report)
  const letters = new Array<string>(cellCount).fill(' ')
  for (const [i, { time }] of marks.entries()) {
    const wanted = cellOf(time)
    const free = letters.findIndex((taken, at) => at >= wanted && taken === ' ')
    const at = free < 0 ? letters.lastIndexOf(' ') : free
    if (at >= 0) letters[at] = LETTERS[i] ?? '+'
  }
  return [
    `Time line: ${LIGHTING} lighting, ${WOOD_GAS} wood gas, ${CHAR} glowing char`,
    `  ${bar.join('')}`,
    `  ${letters.join('').trimEnd()}`,
    columns(
      marks.map(({ time, words, band }, i) => [
        LETTERS[i] ?? '+',
        time === 0 ? '0 min' : formatQuantity(Math.round(time / 6) * 6, 'timeAfterLighting'),
        band === null ? '' : `(${bandText(band, 'timeAfterLighting')})`,
        words,
      ]),
      ['left', 'right', 'left', 'left'],
    ),
  ].join('\n')
}
