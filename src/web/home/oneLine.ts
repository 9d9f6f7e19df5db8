import type { BurnReport } from '#science/answers/burn/report.ts'
import { COURSES } from '../answers/words.ts'
import { aboutIn, aboutTime } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'

/** What a stove does, in one line: on a calm, mild day, by the model, as the bench itself says it. */
export const oneLine = ({ course, stops, figures, fuel }: BurnReport, units: Units): string => {
  if (stops !== null) return stops.sentence
  return `${COURSES[course].name}: ${aboutIn(figures.firepower, 'firepower', units)} of wood gas for ${aboutTime(figures.woodGasTime)} on ${aboutIn(fuel.charge, 'mass', units)}`
}
