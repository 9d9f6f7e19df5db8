import type { BurnReport, ReportStep } from '#science/answers/burn/report.ts'

const KELVIN_AT_ZERO_CELSIUS = 273.15
const celsius = (kelvin: number): number => kelvin - KELVIN_AT_ZERO_CELSIUS
const perMinute = (perSecond: number): number => perSecond * 60_000
const grams = (kilograms: number): number => kilograms * 1000

/** Five figures are more than the model knows, and enough to add up again. */
const shown = (value: number | string | null): string =>
  typeof value !== 'number'
    ? (value ?? '')
    : Number.isFinite(value)
      ? String(Number(value.toPrecision(6)))
      : ''

type Column = readonly [head: string, of: (step: ReportStep) => number | string | null]

const columnsOf = ({ boils }: BurnReport): readonly Column[] => [
  ['time s', (s) => s.time],
  ['lasts s', (s) => s.duration],
  ['phase', (s) => s.phase],
  ['front 0 top 1 floor', (s) => s.frontPosition],
  ['alight share', (s) => s.alight],
  ['regime', (s) => s.regime],
  ['firepower W', (s) => s.firepower],
  ['fuel g/min', (s) => perMinute(s.fuelRate)],
  ['primary air g/s', (s) => grams(s.primaryAir)],
  ['secondary air g/s', (s) => grams(s.secondaryAir)],
  ['tertiary air g/s', (s) => grams(s.tertiaryAir)],
  ['air ratio in the flame', (s) => s.airRatio.flame],
  ['air ratio leaving', (s) => s.airRatio.outlet],
  ['flame °C', (s) => celsius(s.flameTemperature)],
  ['leaving gas °C', (s) => celsius(s.outletTemperature)],
  ['hottest outer wall °C', (s) => celsius(s.hottestOuterWall)],
  ['flame height mm', (s) => s.hearth.flameHeight * 1000],
  ['raw fuel g', (s) => grams(s.rawFuel)],
  ['char g', (s) => grams(s.char)],
  ...boils.map(
    ({ litres }, i): Column => [
      `water ${litres} L °C`,
      (s) => celsius(s.water[i]?.temperature ?? Number.NaN),
    ],
  ),
]

/**
 * The burn step by step as comma-separated values (RFC 4180), units in the heads. A row holds from its time for as long as
 * it lasts; the water's temperature is that at its end.
 */
export const seriesCsv = (report: BurnReport): string => {
  const columns = columnsOf(report)
  return [
    columns.map(([head]) => head).join(','),
    ...report.series.map((step) => columns.map(([, of]) => shown(of(step))).join(',')),
    '',
  ].join('\r\n')
}
