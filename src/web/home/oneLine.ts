import { formatQuantity } from '#basis/text/format.ts'
import { asShown } from '#craft/told/band.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import { COURSES } from '../answers/words.ts'
import { figureIn, type PairedKey } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'

/** No model knows more of a fire than two figures. */
const twoFigures = (value: number, key: PairedKey): number => {
  const shown = asShown(value, key)
  const step = 10 ** (Math.floor(Math.log10(Math.max(shown, 1e-12)) + 1e-12) - 1)
  return Math.round(shown / step) * step
}

/** What a stove does, in one line: on a calm, mild day, by the model, as the bench itself says it. */
export const oneLine = ({ course, stops, figures, fuel }: BurnReport, units: Units): string => {
  if (stops !== null) return stops.sentence
  const figure = (value: number, key: PairedKey): string => figureIn(twoFigures(value, key), key, units)
  const time = formatQuantity(Math.round(figures.woodGasTime / 60) * 60, 'burnTime')
  return `${COURSES[course].name}: ${figure(figures.firepower, 'firepower')} of wood gas for ${time} on ${figure(fuel.charge, 'mass')}`
}
