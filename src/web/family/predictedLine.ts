import { figureText } from '#craft/told/band.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import { COURSES } from '../answers/words.ts'
import { figureIn } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'
import { litreOf } from '../stoveFacts/burnFacts.ts'

/** To a tenth of a minute: nobody tells the end of a burn finer. */
const minutes = (seconds: number): string => figureText(Math.round(seconds / 6) * 6, 'burnTime', 'min')

/** What was predicted, in a line: `0.73 kW for 20 min, 1 L in 14.6 min`. */
export const predictedLine = (report: BurnReport, units: Units): string => {
  const { firepower, woodGasTime } = report.figures
  const boil = litreOf(report)
  const water = boil === null ? '1 L does not boil' : `1 L boils in ${minutes(boil)}`
  const course = report.course === 'clean' ? '' : `; ${COURSES[report.course].name.toLowerCase()}`
  return `${figureIn(firepower, 'firepower', units)} for ${minutes(woodGasTime)}, ${water}${course}`
}

/** A change smaller than this is none [1]. */
const SAME = 0.01

const change = (
  now: number | null,
  then: number | null,
  text: (by: number) => string,
  words: readonly [more: string, less: string],
): string | null => {
  if (now === null || then === null) return null
  const by = now - then
  return Math.abs(by) < SAME * Math.max(Math.abs(now), Math.abs(then))
    ? null
    : `${text(Math.abs(by))} ${by > 0 ? words[0] : words[1]}`
}

/** What the change did to the prediction: `0.1 kW more, 2 min shorter, boils 1.2 min sooner`. */
export const predictedChange = (now: BurnReport, then: BurnReport, units: Units): string => {
  const parts = [
    change(
      now.figures.firepower,
      then.figures.firepower,
      (by) => figureIn(by, 'firepower', units === 'both' ? 'mm' : units),
      ['more', 'less'],
    ),
    change(now.figures.woodGasTime, then.figures.woodGasTime, minutes, ['longer', 'shorter']),
    change(litreOf(now), litreOf(then), (by) => `boils ${minutes(by)}`, ['later', 'sooner']),
    now.course === then.course ? null : `${COURSES[now.course].name.toLowerCase()} now`,
  ].filter((part) => part !== null)
  return parts.length === 0 ? 'burns as before' : parts.join(', ')
}
