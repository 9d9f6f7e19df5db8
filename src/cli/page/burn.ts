import { long } from '#basis/text/bothUnits.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { labelled, wrap } from '#compose/page/text.ts'
import { degrees, percent, twice } from '#compose/page/units.ts'
import { figureText, figureTwice } from '#craft/told/band.ts'
import { figureRows } from '#craft/told/figureRows.ts'
import type { BurnBandKey } from '#science/answers/burn/bands.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import type { Course } from '#science/answers/course.ts'
import { asideBlock, flameBlock, turndownBlock } from './burnDetails.ts'
import { timeLine } from './burnTimeLine.ts'
import { waterBlock } from './burnWater.ts'
import { figureTable } from './figures.ts'
import { mattersBlock } from './matters.ts'
import { windText } from './prediction.ts'
import { REGIME_MEANING } from './regime.ts'
import { setsText } from './sets.ts'

const BURNS: Readonly<Record<Exclude<Course, 'does not burn'>, string>> = {
  clean: 'burns clean',
  smoulder: 'smoulders',
  'rich and smoky': 'burns rich and smoky',
  'quenched lean': 'may blow its flame cold',
  'goes out before the floor': 'goes out before it has burnt down',
}

const boilText = ({ boils }: BurnReport): string => {
  const told = boils.find(({ litres }) => litres === 1)
  return told === undefined || told.time === null
    ? '1 L does not boil'
    : `1 L boils in ${figureText(told.time, 'timeAfterLighting')}`
}

/** The answer in one sentence. */
const headline = (report: BurnReport): string => {
  const { stove, course, figures } = report
  const how = course === 'does not burn' ? 'hardly burns' : BURNS[course]
  const power = figureTwice(figures.firepower, 'firepower', 'Btu/h')
  return `${stove} ${how}: ${power} for ${figureText(figures.woodGasTime, 'burnTime')}; ${boilText(report)}.`
}

const doneText = ({ asked }: BurnReport): string => {
  const turns = asked.damper.map(
    ({ at, turned }) =>
      `damper to ${formatQuantity(turned, 'bearing')} at ${figureText(at, 'timeAfterLighting')}`,
  )
  return [
    asked.hot ? 'second batch, in a stove still hot' : 'lit cold',
    asked.newTin ? 'bright new tin' : 'cans burnt off before',
    ...turns,
    ...(asked.boilNeverCame ? ['damper not turned: 1 L never boils'] : []),
  ].join(', ')
}

const caseBlock = (report: BurnReport, width: number): string => {
  const { fuel, site } = report
  return labelled(
    [
      [
        'fuel',
        `${twice(fuel.charge, 'mass', 'oz')} of ${fuel.label} at ${percent(fuel.moisture)} moisture, ${long(fuel.bedDepth)} deep`,
      ],
      [
        'weather',
        `${degrees(site.temperature)}, ${twice(site.pressure, 'airPressure', 'inHg')}, ${windText(site.wind)}`,
      ],
      ['burn', doneText(report)],
    ],
    width,
  )
}

const courseBlock = ({ course, stops }: BurnReport, width: number): string | null => {
  if (stops !== null)
    return wrap(`${stops.sentence} Reached: ${percent(stops.frontPosition)} of the depth.`, width)
  if (course === 'does not burn' || course === 'goes out before the floor') return null
  return wrap(`Regime: ${course.toUpperCase()}: ${REGIME_MEANING[course]}`, width, '', '  ')
}

/** Safe is never said. */
const touchText = ({ touch }: BurnReport): string =>
  touch.risk === 'even the briefest touch may burn'
    ? 'Touch: even the briefest touch of the hottest wall burns. Keep hands, children and dogs off; it stays hot long after the flame.'
    : touch.longest === null
      ? 'Touch: even the hottest wall stays below what burns bare skin within 8 hours by ISO 13732-1. That is no promise.'
      : `Touch: the hottest wall may burn bare skin in ${figureText(touch.longest, 'timeAfterLighting', 's')}; keep off.`

const LIMITS =
  'No CO or smoke figure is predicted, no tier: the regime names a risk. Bands hold what the model’s coefficients are not sure of, not a burr, a gust or a handful of fines. Drill, burn, measure.'

const MATTERING = [
  ['firepower', 'firepower'],
  ['frontAtFloorAt', 'burn time'],
  ['timeToBoil 1 L', 'time to boil 1 L'],
  ['efficiency 1 L', 'efficiency, 1 L'],
  ['hottestOuterWall', 'hottest wall'],
  ['windStood', 'wind it stands'],
] as const satisfies readonly (readonly [BurnBandKey, string])[]

/** The page of a burn, block by block. */
export const burnBlocks = (report: BurnReport, width: number): readonly (string | null)[] => {
  const { bands, totals, fuelCautions } = report
  return [
    [wrap(headline(report), width), caseBlock(report, width)].join('\n'),
    courseBlock(report, width),
    timeLine(report, width),
    [figureTable(figureRows(report)), wrap(touchText(report), width, '  ', '  ')].join('\n'),
    bands === null ? null : wrap(setsText(bands), width),
    waterBlock(report, width),
    flameBlock(report, width),
    turndownBlock(report, width),
    asideBlock(report, width),
    bands === null ? null : mattersBlock(bands, MATTERING, width),
    fuelCautions.length === 0 ? null : wrap(`Of the fuel: ${fuelCautions.join(' ')}`, width),
    wrap(
      `The sums over the whole burn close: mass within ${Math.abs(totals.massResidual).toExponential(0)}, energy within ${Math.abs(totals.energyResidual).toExponential(0)} of what went in.`,
      width,
    ),
    wrap(LIMITS, width),
  ]
}
