import { formatQuantity } from '#basis/text/format.ts'
import type { PredictionOutcome } from '#science/steady/predict.ts'

const REGIMES: Readonly<Record<string, string>> = {
  clean: 'burns clean',
  smoulder: 'smoulders for want of air through the fuel',
  'rich and smoky': 'smokes for want of air in the flame',
  'quenched lean': 'may be cooled out by too much air',
}

/** No model knows more of a fire than two figures. */
const twoFigures = (value: number): number => Number(value.toPrecision(2))

/** What a stove does, in one line: in calm air, by the model. */
export const oneLine = (outcome: PredictionOutcome): string => {
  if (outcome.kind === 'no burn') return outcome.noBurn.sentence
  const { prediction } = outcome
  const { woodGas, halfway, fuel, stops } = prediction
  if (stops !== null) return stops.sentence
  const power = formatQuantity(twoFigures(woodGas.firepower), 'firepower')
  const time = formatQuantity(Math.round(woodGas.duration / 60) * 60, 'burnTime')
  const charge = formatQuantity(twoFigures(fuel.charge), 'fuelWeight')
  return `${REGIMES[halfway.regime] ?? halfway.regime}: ${power} of wood gas for ${time} on ${charge}`
}
