import { fromSi, unitBySymbol } from '#basis/unitTable.ts'

const QUART = unitBySymbol('volume', 'US qt')

/** Three figures, no idle zeros. */
const figures = (value: number): string => String(Number(value.toPrecision(3)))
/** To a twentieth of a litre, as a maker says it, where that is within a fiftieth of it. */
const round = (litres: number): number => {
  const near = Math.round(litres * 20) / 20
  return near > 0 && Math.abs(near - litres) <= 0.02 * litres ? near : litres
}

/** So much water, told as litres: a kilogram is taken for a litre [from kg]. `1 L (1.06 US qt)`. */
export const volumeText = (kilograms: number): string => {
  const litres = round(kilograms)
  const quarts = QUART === null ? 0 : fromSi(litres / 1000, QUART)
  return `${figures(litres)} L (${figures(quarts)} US qt)`
}
