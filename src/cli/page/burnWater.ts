import type { QuantityKey } from '#basis/quantities.ts'
import { long } from '#basis/text/bothUnits.ts'
import { columns, wrap } from '#compose/page/text.ts'
import { bandText, figureText, figureTwice } from '#craft/told/band.ts'
import type { BurnBandKey } from '#science/answers/burn/bands.ts'
import type { Boil, BurnReport } from '#science/answers/burn/report.ts'
import type { Band } from '#science/bands/bands.ts'

const bandLine = (
  bands: readonly (Band | null)[],
  key: QuantityKey,
  unit?: string,
): readonly (readonly string[])[] =>
  bands.some((band) => band !== null)
    ? [['', ...bands.map((band) => (band === null ? '' : bandText(band, key, unit)))]]
    : []

const LITRES = 1000

const inTheEnd = ({ dryAt, waterLeft, warmest, boilsAt }: Boil): string =>
  boilsAt === null
    ? `${figureText(warmest, 'gasTemperature')} at most`
    : dryAt === null
      ? `${figureText(waterLeft / LITRES, 'waterVolume')} left`
      : `dry at ${figureText(dryAt, 'timeAfterLighting')}`

/** How soon so much water boils, on how much fuel, and how much of the heat it catches. */
export const waterBlock = (report: BurnReport, width: number): string => {
  const { boils, bands, asked, boilingPoint } = report
  const { pot } = asked
  const band = (name: string): readonly (Band | null)[] =>
    boils.map(({ litres }) => bands?.figures[`${name} ${litres} L` as BurnBandKey] ?? null)
  const skirt =
    pot.skirt === null
      ? 'no skirt'
      : `a skirt ${long(pot.skirt.height)} high, ${long(pot.skirt.gap)} off its side`
  // A pot that dries while there is wood gas says how little water it held.
  const share = ({ driesEarly }: Boil, value: number): string =>
    driesEarly ? 'dries too early' : figureText(value, 'efficiency')
  const unlessDry = (bands: readonly (Band | null)[]): readonly (Band | null)[] =>
    bands.map((one, i) => (boils[i]?.driesEarly === true ? null : one))
  const rows: (readonly string[])[] = [
    ['', ...boils.map(({ litres }) => figureTwice(litres / LITRES, 'waterVolume', 'US qt'))],
    [
      'to the boil',
      ...boils.map(({ time }) => (time === null ? 'does not boil' : figureText(time, 'timeAfterLighting'))),
    ],
    ...bandLine(band('timeToBoil'), 'timeAfterLighting'),
    ...(bands === null
      ? []
      : [
          [
            'sets that boil it',
            ...band('timeToBoil').map(
              (one) => `${Math.round((one?.share ?? 0) * bands.samples)} of ${bands.samples}`,
            ),
          ],
        ]),
    [
      'fuel for a litre',
      ...boils.map(({ fuelPerLitre }) =>
        fuelPerLitre === null ? '' : figureTwice(fuelPerLitre, 'mass', 'oz'),
      ),
    ],
    ...bandLine(band('fuelPerLitre'), 'mass'),
    ...bandLine(band('fuelPerLitre'), 'mass', 'oz'),
    ['efficiency', ...boils.map((boil) => share(boil, boil.efficiency))],
    ...bandLine(unlessDry(band('efficiency')), 'efficiency'),
    ['char counted as left', ...boils.map((boil) => share(boil, boil.efficiencyCharCredited))],
    ...bandLine(unlessDry(band('efficiencyCharCredited')), 'efficiency'),
    ['in the end', ...boils.map(inTheEnd)],
  ]
  return [
    wrap(
      `Water from ${figureTwice(pot.waterStart, 'gasTemperature', '°F')} in a plain pot ${long(pot.diameter)} across, ` +
        `${pot.lid ? 'lid on' : 'no lid'}, ${skirt}. It goes on when the whole top is alight and boils at ${figureTwice(boilingPoint, 'gasTemperature', '°F')}.`,
      width,
    ),
    columns(rows, ['left', ...boils.map(() => 'right' as const)]),
    wrap(
      'Efficiency: heat in water and steam over the heat of the fuel burnt while there is wood gas; in the last lines the char that is left counts as fuel not used.',
      width,
      '  ',
      '  ',
    ),
  ].join('\n')
}
