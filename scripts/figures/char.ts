import { type Coefficients, medianCoefficients } from '#science/coefficients.ts'
import { fuelTable } from '#science/fuel/table.ts'
import { rangeOf } from './kit/axis.ts'
import { type Figure, figurePage } from './kit/page.ts'
import type { Point, Series } from './kit/panel.ts'
import { type Example, firingOf, momentOf, steps, variant } from './stoves.ts'

const positions = steps(0.01, 0.99, 33)

const lineOf = (name: Example, coefficients: Coefficients): Point[] => {
  const firing = firingOf(variant(name))
  return positions.map((position) => {
    const moment = momentOf(firing, { position, coefficients })
    return [100 * position, moment === null ? Number.NaN : moment.firepower / 1000]
  })
}

/** Firepower as the front sinks, and what the char over it does. */
export const charFigure = (): Figure => {
  const linesOf = (name: Example, fuel: string): Series[] => {
    const raw = fuelTable.get(fuel)?.voidFraction ?? 0.5
    const like = (charVoid: number, charShrink: number, charSettle: number): Coefficients => ({
      ...medianCoefficients,
      charVoid,
      charShrink,
      charSettle,
    })
    return [
      { points: lineOf(name, like(0.9, 1, 1)), tone: 'cool', label: 'char no hindrance' },
      { points: lineOf(name, medianCoefficients), tone: 'ember', width: 3, label: 'as modelled' },
      { points: lineOf(name, like(raw, 1, 1)), tone: 'char', label: 'packed like raw fuel' },
    ]
  }
  const pellets = linesOf('greylag', 'pellets-8mm')
  const chips = linesOf('redshank', 'wood-chips')
  const x = { label: 'way of the front, % of the bed', from: 0, to: 100, ticks: 4 }
  const top = (series: readonly Series[]): number =>
    rangeOf(series.flatMap(({ points }) => points.map(([, y]) => y))).to
  return figurePage({
    title: 'Char gets in the way',
    lead: 'As the front sinks it leaves char above itself, and hot gas has to pass it. Hot gas is lighter than air and yet more viscous, so the same pores resist it several times as much. How loosely the char lies is a guess, and it matters, most of all with pellets.',
    rows: [
      [
        {
          heading: 'Greylag, 8 mm pellets: firepower, kW',
          x,
          y: { label: '', from: 0, to: top(pellets) },
          series: pellets,
        },
        {
          heading: 'Redshank, chips: firepower, kW',
          x,
          y: { label: '', from: 0, to: top(chips) },
          series: chips,
        },
      ],
    ],
    foot: 'As modelled: char pieces 0.85 of the raw size, 55 % air between them, 0.75 of the depth, all three from memory. Invented examples, calm, 20 °C. Medians of the model, no measurement.',
  })
}
