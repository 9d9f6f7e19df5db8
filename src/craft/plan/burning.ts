import { formatLength } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import type { Course } from '#science/answers/course.ts'
import type { Passage } from '#science/steady/prediction.ts'
import { burnFigure } from '../figure/burnFigure.ts'
import type { BurnFigureInput } from '../figure/input.ts'
import type { Block, Fact } from '../page/block.ts'
import type { Theme } from '../section/theme.ts'
import { bandText, figureText, figureTwice } from '../told/band.ts'
import { figureCells } from '../told/figureRow.ts'
import { figureRows } from '../told/figureRows.ts'

const both = (length: number): string => formatLength(length as Metres, { units: 'both' })
const percent = (share: number): string => `${Math.round(100 * share)} %`

const COURSE: Readonly<Record<Course, string>> = {
  clean: 'The gas finds the air it needs and burns. That is no promise of clean air.',
  smoulder:
    'The front gets so little air that it smoulders: smoke, carbon monoxide, a flame that may not hold.',
  'rich and smoky': 'The gas leaves with too little air to burn it: a smoky flame, and carbon monoxide.',
  'quenched lean': 'So much air falls on the gas that it may chill the flame and put it out.',
  'goes out before the floor': 'The front goes out before it reaches the floor.',
  'does not burn': 'It hardly burns.',
}

type Volume = 0.5 | 1 | 2

/** How long until so much water boils, with its band; of a stove that does not boil it, in how many sets it would. */
const boilText = (
  { boils, bands }: BurnReport,
  litres: Volume,
): { readonly value: string; readonly band: string } => {
  const time = boils.find((boil) => boil.litres === litres)?.time ?? null
  const found = bands?.figures[`timeToBoil ${litres} L`] ?? null
  const share = found === null || bands === null ? null : Math.round(found.share * bands.samples)
  if (time === null)
    return {
      value: 'does not boil',
      band: share === null || bands === null ? '' : `${share} of ${bands.samples} sets boil it`,
    }
  return {
    value: figureText(time, 'timeAfterLighting'),
    band: found === null ? '' : bandText(found, 'timeAfterLighting'),
  }
}

/** What the section’s own answers do not say: water. */
export const waterFact = (report: BurnReport): Fact => {
  const { bands } = report
  const boil = boilText(report, 1)
  return {
    label: '1 L (1.06 US qt) of water boils, from pot on, in',
    value: boil.value,
    ...(boil.band === '' || bands === null
      ? {}
      : { aside: `${boil.band}${boil.value === 'does not boil' ? '' : ', in nine sets of ten'}` }),
  }
}

const shown = (passages: readonly Passage[]): readonly Passage[] =>
  passages
    .filter(({ kind, lossShare }) => kind === 'opening' || lossShare >= 0.01)
    .toSorted((one, other) => one.height - other.height)

const passageTable = (passages: readonly Passage[]): Block => ({
  kind: 'table',
  widths: [4.2, 3.9, 3.9, 3.5, 3.4, 1.9],
  head: ['air and gas through', 'open area', 'flow', 'speed', 'heat', 'of the draught'],
  align: ['left', 'right', 'right', 'right', 'right', 'right'],
  rows: shown(passages).map(({ name, area, massFlow, velocity, temperature, lossShare }) => [
    name,
    `${Math.round(area * 1e6)} mm² (${(area / 0.0254 ** 2).toFixed(2)} in²)`,
    `${figureTwice(Math.abs(massFlow), 'massFlow', 'lb/h')}${massFlow < 0 ? ' out' : ''}`,
    `${Math.abs(velocity).toFixed(2)} m/s (${(Math.abs(velocity) / 0.3048).toFixed(2)} ft/s)`,
    `${Math.round(temperature - 273.15)} °C (${Math.round((temperature - 273.15) * 1.8 + 32)} °F)`,
    percent(lossShare),
  ]),
})

const waterTable = (report: BurnReport): Block => ({
  kind: 'table',
  head: ['water', 'to the boil', '5 to 95 %', 'fuel for a litre', 'efficiency'],
  widths: [3, 3, 4, 3, 2],
  rows: report.boils.map(({ litres, fuelPerLitre, efficiency, driesEarly }) => {
    const boil = boilText(report, litres as Volume)
    return [
      figureTwice(litres / 1000, 'waterVolume', 'US qt'),
      boil.value,
      boil.band,
      fuelPerLitre === null ? '' : figureTwice(fuelPerLitre, 'mass', 'oz'),
      driesEarly ? 'dries too early' : percent(efficiency),
    ]
  }),
})

/** What a stove does, as predicted: figures with bands, water, the burn over time, the way of the air. */
export const burningBlocks = (
  report: BurnReport,
  figure: BurnFigureInput,
  theme: Theme,
): readonly Block[] => {
  const { bands, course, fuel, site, halfway, touch, fuelCautions } = report
  const rows = figureRows(report).map((row) => {
    const [value, band] = figureCells(row)
    return [row.label.trim(), value, band]
  })
  return [
    { kind: 'heading', text: 'What it does' },
    {
      kind: 'text',
      text:
        `Worked out, not measured, for ${figureTwice(fuel.charge, 'mass', 'oz')} of ${fuel.label} at ${percent(fuel.moisture)} moisture, ` +
        `${both(fuel.bedDepth)} deep, at ${Math.round(site.temperature - 273.15)} °C (${Math.round((site.temperature - 273.15) * 1.8 + 32)} °F) ` +
        `${site.wind.speed === 0 ? 'in calm air' : `in wind of ${figureTwice(site.wind.speed, 'windSpeed', 'mph')}`}. ${COURSE[course]}`,
    },
    {
      kind: 'table',
      head: ['', 'median', bands === null ? '' : '5 to 95 %'],
      rows,
      widths: [3, 4, 5],
    },
    ...(bands === null
      ? []
      : [
          {
            kind: 'text' as const,
            muted: true,
            text: `Bands hold the middle nine tenths of ${bands.samples} sets of the model’s coefficients: what science is not sure of, not a burr, a gust or a handful of fines. No smoke or carbon monoxide figure is predicted, and no performance tier.`,
          },
        ]),
    { kind: 'subheading', text: 'Water' },
    {
      kind: 'text',
      muted: true,
      text: `Times from the pot going on, ${figureText(report.asked.pot.putOnAt, 'timeAfterLighting')} after lighting; the marks of the picture count from lighting.`,
    },
    waterTable(report),
    ...(halfway === null
      ? []
      : [
          { kind: 'subheading' as const, text: 'The way of the air, front half way down' },
          passageTable(halfway.passages),
        ]),
    {
      kind: 'text',
      muted: true,
      text:
        touch.risk === 'none within 8 hours'
          ? 'Touch: walls stay below what burns bare skin within 8 hours (ISO 13732-1). That is no promise.'
          : `Touch: the hottest outer wall comes to ${Math.round(touch.wall - 273.15)} °C (${Math.round((touch.wall - 273.15) * 1.8 + 32)} °F) and burns skin. Keep hands, children and animals off.`,
    },
    ...fuelCautions.map((text) => ({ kind: 'text' as const, muted: true, text: `Of the fuel: ${text}` })),
    {
      kind: 'together',
      blocks: [
        { kind: 'subheading', text: 'From the match to the last glow' },
        {
          kind: 'picture',
          svg: burnFigure(figure, { theme }).svg.trim(),
          narrow: burnFigure(figure, { theme, width: 420 }).svg.trim(),
          says: 'Firepower, water temperature and the front in the fuel over the time of the burn.',
          share: 1,
        },
      ],
    },
  ]
}
