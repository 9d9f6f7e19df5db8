import { wrap } from '#compose/page/text.ts'
import type { FigureRow } from '#craft/told/figureRow.ts'
import {
  type PredictionBandKey,
  type PredictionBands,
  predictionFigures,
} from '#science/answers/predictionBands.ts'
import type { Prediction } from '#science/steady/prediction.ts'
import { figureTable } from './figures.ts'
import { mattersBlock } from './matters.ts'
import { setsText } from './sets.ts'

const ROWS: readonly (readonly [PredictionBandKey, string, FigureRow['key'], string?])[] = [
  ['firepower', 'firepower', 'firepower', 'Btu/h'],
  ['duration', 'burns for', 'burnTime'],
  ['fuelRate', 'fuel rate', 'fuelRate', 'lb/h'],
  ['charLeft', 'char left', 'mass', 'oz'],
  ['primaryAirShare', 'primary air', 'airSplit'],
  ['secondaryAirShare', 'secondary air', 'airSplit'],
  ['tertiaryAirShare', 'tertiary air', 'airSplit'],
  ['airRatioFlame', 'ratio in flame', 'airRatio'],
  ['airRatioOutlet', 'ratio leaving', 'airRatio'],
  ['flameTemperature', 'flame', 'flameTemperature', '°F'],
]

const MATTERING = [
  ['firepower', 'firepower'],
  ['duration', 'burn time'],
  ['secondaryToPrimary', 'air split'],
  ['airRatioFlame', 'air ratio'],
  ['flameTemperature', 'flame'],
] as const satisfies readonly (readonly [PredictionBandKey, string])[]

/** How far the figures of a prediction may be out, in how many sets it burns how, and what it hangs on. */
export const predictionBandBlocks = (
  prediction: Prediction,
  bands: PredictionBands,
  width: number,
): readonly (string | null)[] => {
  const figures = predictionFigures(prediction)
  const rows = ROWS.flatMap(([key, label, quantity, other]): readonly FigureRow[] => {
    const value = figures[key]
    return Number.isFinite(value)
      ? [{ label, value, key: quantity, ...(other === undefined ? {} : { other }), band: bands.figures[key] }]
      : []
  })
  return [
    ['How far these may be out', figureTable(rows)].join('\n'),
    wrap(setsText(bands), width),
    mattersBlock(bands, MATTERING, width),
  ]
}
