import { formatQuantity } from '#basis/text/format.ts'
import type { BurnFigureInput } from '#craft/figure/burnFigure.ts'
import type { FigureEvent } from '#craft/figure/input.ts'
import { figureTwice } from '#craft/told/band.ts'
import type { BurnReport, ReportEvent } from '#science/answers/burn/report.ts'

/** What stands beside a mark. */
const WORDS: Partial<Record<ReportEvent['kind'], string>> = {
  'whole bed alight': 'whole top alight',
  'pot on': 'pot on',
  boil: '1 L boils',
  'front at the floor': 'front at the floor',
  'front out': 'front out',
  'flame out': 'flame out',
  'char out': 'char cold',
}

const eventsOf = ({ events }: BurnReport): readonly FigureEvent[] => {
  const marks: FigureEvent[] = []
  for (const { time, kind, sentence } of events) {
    // Where the axis begins.
    if (kind === 'lit') continue
    const text = WORDS[kind] ?? sentence.replace(/\.$/, '')
    const before = marks[marks.length - 1]
    // The pot goes on when the whole top is alight: one mark.
    if (before !== undefined && Math.abs(before.time - time) < 0.5)
      marks[marks.length - 1] = {
        ...before,
        text: `${before.text}, ${text}`,
        change: before.change || kind === 'changed',
      }
    else marks.push({ time, text, change: kind === 'changed' })
  }
  return marks
}

/** The report as the figure wants it. */
export const figureOf = (report: BurnReport): BurnFigureInput => {
  const { fuel, bands, boils, asked, series, boilingPoint, site } = report
  const weight = figureTwice(fuel.charge, 'mass', 'oz')
  const air = `${formatQuantity(site.temperature, 'ambientTemperature')} (${formatQuantity(site.temperature, 'ambientTemperature', '°F')}), ${
    site.wind.speed === 0 ? 'calm' : `wind ${figureTwice(site.wind.speed, 'windSpeed', 'mph')}`
  }`
  const { pot } = asked
  return {
    title: `${report.stove}: the burn`,
    subtitle: `${weight} of ${fuel.label}, ${asked.hot ? 'second batch in a hot stove' : 'lit cold'}, ${air}; pot with ${pot.lid ? 'its lid on' : 'no lid'}${pot.skirt === null ? '' : ' and a skirt'}`,
    steps: series,
    band: bands === null ? null : { runs: bands.samples, ...bands.firepowerOverTime },
    pots: boils.map(({ litres, boilsAt, dryAt }, i) => ({
      litres,
      from: pot.putOnAt,
      boilsAt,
      dryAt,
      start: pot.waterStart,
      temperature: series.map(({ water }) => water[i]?.temperature ?? pot.waterStart),
    })),
    boilingPoint,
    events: eventsOf(report),
    notes: [
      'A prediction, no measurement. No CO or smoke figure is predicted, no tier. Wood gas contains carbon monoxide: burn outdoors only; char gives it off long after the flame.',
    ],
  }
}
