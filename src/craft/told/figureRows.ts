import type { BurnBandKey } from '#science/answers/burn/bands.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import type { FigureRow } from './figureRow.ts'

/** A kilogram and more is said in kilograms and pounds. */
const weight = (kilograms: number): Pick<FigureRow, 'key' | 'unit' | 'other'> =>
  kilograms < 1 ? { key: 'mass', other: 'oz' } : { key: 'mass', unit: 'kg', other: 'lb' }

/** What a maker asks of a burn, each with its band; what the stove or the wish has not is left out. */
export const figureRows = (report: BurnReport): readonly FigureRow[] => {
  const { figures, bands, series, halfway, turndown, wind, trip } = report
  const band = (key: BurnBandKey) => bands?.figures[key] ?? null
  const power = { key: 'firepower', other: 'Btu/h' } as const
  const heat = { key: 'heat', other: 'Btu' } as const
  const rows: readonly (FigureRow | null)[] = [
    { ...power, label: 'firepower', value: figures.firepower, band: band('firepower') },
    { ...power, label: '  highest', value: figures.firepowerHigh, band: band('firepowerHigh') },
    { ...power, label: '  lowest', value: figures.firepowerLow, band: band('firepowerLow') },
    { label: 'wood gas for', key: 'burnTime', value: figures.woodGasTime, band: band('frontAtFloorAt') },
    series.some(({ phase }) => phase === 'char')
      ? { label: 'char glows for', key: 'burnTime', value: figures.charTime, band: band('charTime') }
      : null,
    { ...weight(figures.charLeft), label: 'char left', value: figures.charLeft, band: band('charLeft') },
    { label: '  heat in it', key: 'efficiency', value: figures.charShare, band: band('charShare') },
    {
      label: 'hottest wall',
      key: 'wallTemperature',
      other: '°F',
      value: figures.hottestOuterWall,
      band: band('hottestOuterWall'),
    },
    halfway === null
      ? null
      : {
          label: 'flame',
          key: 'flameTemperature',
          other: '°F',
          value: halfway.temperature.flame,
          band: band('flameTemperature'),
        },
    halfway === null
      ? null
      : {
          label: '  height',
          key: 'flameHeight',
          other: 'in',
          value: halfway.flame.height,
          band: band('flameHeight'),
        },
    turndown === null
      ? null
      : { label: 'turndown', key: 'turndown', value: turndown.ratio, band: band('turndown') },
    {
      label: 'wind it stands',
      key: 'windSpeed',
      other: 'mph',
      value: wind?.stands ?? null,
      band: band('windStood'),
    },
    { ...heat, label: 'heat off walls', value: figures.heatOfWalls, band: band('heatOfWalls') },
    { ...heat, label: 'heat with gas', value: figures.heatOfGas, band: band('heatOfGas') },
    trip === null
      ? null
      : { ...weight(trip.fuel ?? 0), label: 'fuel for trip', value: trip.fuel, band: band('tripFuel') },
  ]
  return rows.filter((row) => row !== null)
}
