import { formatQuantity } from '#basis/text/format.ts'
import type { BurnReport } from '#science/answers/burn/report.ts'
import type { BurnSummary } from '../section/airState.ts'
import { type FigureRow, figureCells } from '../told/figureRow.ts'
import { unbroken } from './length.ts'

/** Headline figures of a burn, as a card says them. Plain text, made once, so that card and list never differ. */
export interface CardFigures {
  /** Says that they are predicted. */
  readonly title: string
  /** Fuel, state of the stove, weather. */
  readonly conditions: string
  /** How it burns, where that is not well. */
  readonly warning: string | null
  readonly rows: readonly {
    readonly label: string
    readonly value: string
    readonly band: string | null
    /** What else one has to know to read it. */
    readonly note: string | null
  }[]
}

const WARNINGS: Readonly<Record<BurnReport['course'], string | null>> = {
  clean: null,
  smoulder: 'It would smoulder and smoke.',
  'rich and smoky': 'It would burn rich and smoky.',
  'quenched lean': 'Its flame may be blown cold.',
  'goes out before the floor': 'It would go out before it has burnt down.',
  'does not burn': 'It would hardly burn.',
}

/** Broken, where it has to be, between its two units only. */
const halves = (band: string): string => band.split(' (').map(unbroken).join(' (')

const rowOf = (row: FigureRow): CardFigures['rows'][number] => {
  const [value, band] = figureCells(row)
  return { label: row.label, value: unbroken(value), band: band === '' ? null : halves(band), note: null }
}

/** From when it is counted; where the gas is gone before, what boils it. */
const boilNote = ({ events }: BurnReport, boilsAt: number | null): string => {
  const gasEnds = events.find(({ kind }) => kind === 'front at the floor')?.time ?? null
  return boilsAt !== null && gasEnds !== null && boilsAt > gasEnds
    ? 'from pot on: over gas, then char'
    : 'from pot on'
}

/** Firepower, time and boil of a report, with their bands. */
export const cardFigures = (report: BurnReport): CardFigures => {
  const { figures, bands, boils, fuel, asked, site } = report
  const litre = boils.find(({ litres }) => litres === 1)
  // What the fuel's name goes on to say is how large its pieces are: too much for a card.
  const weight = `${formatQuantity(fuel.charge, 'mass')} (${formatQuantity(fuel.charge, 'mass', 'oz')})`
  const weather = site.wind.speed === 0 ? 'calm air' : `wind ${formatQuantity(site.wind.speed, 'windSpeed')}`
  const rows: readonly FigureRow[] = [
    {
      label: 'firepower',
      value: figures.firepower,
      key: 'firepower',
      other: 'Btu/h',
      band: bands?.figures.firepower ?? null,
    },
    {
      label: 'wood gas for',
      value: figures.woodGasTime,
      key: 'burnTime',
      band: bands?.figures.frontAtFloorAt ?? null,
    },
  ]
  const boil: CardFigures['rows'] =
    litre === undefined
      ? []
      : litre.time === null
        ? [{ label: '1 L', value: 'does not boil', band: null, note: null }]
        : [
            {
              ...rowOf({
                label: '1 L boils in',
                value: litre.time,
                key: 'timeAfterLighting',
                band: bands?.figures['timeToBoil 1 L'] ?? null,
              }),
              note: boilNote(report, litre.boilsAt),
            },
          ]
  return {
    title: 'Predicted, not measured',
    conditions: `${weight} of ${fuel.label.split(',')[0]}, ${asked.hot ? 'stove hot' : 'lit cold'}, ${weather}`,
    warning: WARNINGS[report.course],
    rows: [...rows.map(rowOf), ...boil],
  }
}

/** What the section needs to draw the air of a report; null where there is no steady moment to draw. */
export const airOf = ({ halfway, fuel, figures }: BurnReport): BurnSummary | null =>
  halfway === null
    ? null
    : {
        halfway,
        fuel,
        woodGas: {
          duration: figures.woodGasTime,
          firepower: figures.firepower,
          firepowerHighest: figures.firepowerHigh,
          firepowerLowest: figures.firepowerLow,
        },
      }
