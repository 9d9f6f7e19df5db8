import { figureText } from '#craft/told/band.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import { COURSES } from '../answers/words.ts'
import { figureIn } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'
import { litreOf } from '../stoveFacts/burnFacts.ts'

/** One answer of several stoves: what each says, and how it differs from the first. */
export interface BesideRow {
  readonly caption: string
  readonly cells: readonly { readonly value: string; readonly change: string | null }[]
}

interface Question {
  readonly caption: string
  readonly of: (report: BurnReport) => number | null
  readonly text: (value: number, units: Units) => string
  readonly words: readonly [more: string, less: string]
  readonly none: string
}

/** Closer than this share two figures are the same to a maker [1]. */
const SAME = 0.01

/** To a tenth of a minute: nobody tells the end of a burn finer. */
const minutes = (seconds: number): string => figureText(Math.round(seconds / 6) * 6, 'burnTime', 'min')

const QUESTIONS: readonly Question[] = [
  {
    caption: 'Firepower',
    of: ({ figures }) => figures.firepower,
    text: (value, inUnits) => figureIn(Math.round(value / 10) * 10, 'firepower', inUnits),
    words: ['more', 'less'],
    none: 'none',
  },
  {
    caption: 'Wood gas for',
    of: ({ figures }) => figures.woodGasTime,
    text: minutes,
    words: ['longer', 'shorter'],
    none: 'none',
  },
  {
    caption: 'Char glows for',
    of: ({ figures }) => figures.charTime,
    text: minutes,
    words: ['longer', 'shorter'],
    none: 'none',
  },
  {
    caption: '1 L boils in',
    of: litreOf,
    text: minutes,
    words: ['later', 'sooner'],
    none: 'does not boil',
  },
  {
    caption: 'Hottest outer wall',
    of: ({ figures }) => figures.hottestOuterWall,
    text: (value, inUnits) => figureIn(value, 'wallTemperature', inUnits),
    words: ['hotter', 'cooler'],
    none: 'none',
  },
  {
    caption: 'Fuel in the can',
    of: ({ fuel }) => fuel.charge,
    text: (value, inUnits) => figureIn(value, 'mass', inUnits),
    words: ['more', 'less'],
    none: 'none',
  },
]

/** The main unit alone: beside a figure in both, its difference need not say it twice. */
const single = (units: Units): Units => (units === 'both' ? 'mm' : units)

/** A difference of temperatures has its own unit of the same size; figures are told apart by their numbers. */
const differenceText = (question: Question, by: number, units: Units): string =>
  question.caption === 'Hottest outer wall'
    ? `${(units === 'in' ? by * 1.8 : by).toFixed(0)} ${units === 'in' ? '°F' : '°C'}`
    : question.text(by, single(units))

/** Answers row by row, each against the first stove that has one. */
export const besideRows = (reports: readonly (BurnReport | null)[], units: Units): readonly BesideRow[] => {
  const [base] = reports
  return [
    {
      caption: 'How it burns',
      cells: reports.map((report) => ({
        value: report === null ? 'does not burn' : COURSES[report.course].name.toLowerCase(),
        change: null,
      })),
    },
    ...QUESTIONS.map((question): BesideRow => {
      const first = base == null ? null : question.of(base)
      return {
        caption: question.caption,
        cells: reports.map((report, i) => {
          const value = report === null ? null : question.of(report)
          if (value === null) return { value: report === null ? '–' : question.none, change: null }
          const by = first === null ? 0 : value - first
          const same =
            i === 0 || first === null || Math.abs(by) < SAME * Math.max(Math.abs(value), Math.abs(first))
          return {
            value: question.text(value, units),
            change: same
              ? i === 0 || first === null
                ? null
                : 'the same'
              : `${differenceText(question, Math.abs(by), units)} ${question.words[by > 0 ? 0 : 1]}`,
          }
        }),
      }
    }),
  ]
}
