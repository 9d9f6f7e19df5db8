import { mildDay } from '#science/site.ts'
import { rangeOf } from './kit/axis.ts'
import { type Figure, figurePage } from './kit/page.ts'
import type { Point, Series } from './kit/panel.ts'
import { type Example, firingOf, momentOf, steps, variant } from './stoves.ts'

const speeds = steps(0, 5, 41)

const lineOf = (name: Example, from: number, change?: Parameters<typeof variant>[1]): Point[] => {
  const firing = firingOf(variant(name, change))
  const powers: number[] = []
  // Once the wind has put it out, a stronger one does not light it again.
  for (const speed of speeds) {
    const moment = momentOf(firing, { site: { ...mildDay, wind: { speed, from } } })
    if (moment === null) break
    powers.push(moment.firepower / 1000)
  }
  return powers.map((power, i) => [speeds[i] as number, power])
}

/** Where the missing hole of an intake row of twelve lies, as the file counts them [deg]. */
const MISSING = 180

/** Firepower in the wind, by stove and by side. */
export const windFigure = (): Figure => {
  const whole = (file: { parts: { shell: { openings: { intake: { leftOut?: number[] } } } } }): void => {
    delete file.parts.shell.openings.intake.leftOut
  }
  const redshank: Series[] = [
    { points: lineOf('redshank', MISSING), tone: 'ember', label: 'on the missing hole' },
    { points: lineOf('redshank', MISSING + 180), tone: 'cool', label: 'from the other side' },
    {
      points: lineOf('redshank', MISSING, whole),
      tone: 'muted',
      dash: true,
      width: 1.8,
      label: 'no hole left out',
    },
  ]
  const others: Series[] = [
    { points: lineOf('heron', MISSING), tone: 'ember', label: 'Heron' },
    { points: lineOf('greylag', MISSING), tone: 'cool', label: 'Greylag' },
  ]
  const x = { label: 'wind at the stove, m/s', from: 0, to: 5 }
  const top = (series: readonly Series[]): number =>
    rangeOf(series.flatMap(({ points }) => points.map(([, y]) => y))).to
  return figurePage({
    title: 'The draught is weaker than a breeze',
    lead: 'Wind at 2 m/s presses with 2.4 Pa, more than the stove has of its own. It pushes in at the holes that face it and sucks at all the others, at the outlet too; which of them wins is a matter of the hole’s bearing.',
    rows: [
      [
        {
          heading: 'Redshank, with a hole of its intake left out: firepower, kW',
          x,
          y: { label: '', from: 0, to: top(redshank) },
          series: redshank,
          share: 1.15,
        },
        {
          heading: 'Two other stoves: firepower, kW',
          x,
          y: { label: '', from: 0, to: top(others) },
          series: others,
        },
      ],
    ],
    foot: 'A line ends where the fire goes out. Front half way down, 20 °C, open ground; pressure round a can from memory, suction at its sides 0.6 of an endless cylinder’s, over its top −0.6 of the wind’s own pressure. Invented examples, medians of the model, no measurement.',
  })
}
