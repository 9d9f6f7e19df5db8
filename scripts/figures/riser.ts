import { metres } from '#basis/units.ts'
import { boilAnswer, usualWish } from '#science/answers/figures.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { mildDay } from '#science/site.ts'
import type { Stove } from '#stove/model.ts'
import { rangeOf } from './kit/axis.ts'
import { type Figure, figurePage } from './kit/page.ts'
import type { Point } from './kit/panel.ts'
import { firingOf, momentOf, steps, variant } from './stoves.ts'

const TALLEST = 600

/** Heron with a riser of this height [mm]. */
const riserOf = (height: number): Stove => {
  const stove = variant('heron')
  const part = stove.parts.get('riser')
  if (part?.form !== 'can') throw new Error('Heron has no riser')
  const more = height / 1000 - part.can.height.value
  const openings = new Map(
    [...part.openings].map(([key, opening]) => [
      key,
      opening.kind === 'row' ? { ...opening, height: metres(opening.height + more) } : opening,
    ]),
  )
  const can = { ...part.can, height: { ...part.can.height, value: metres(height / 1000) } }
  return { ...stove, parts: new Map(stove.parts).set('riser', { ...part, can, openings }) }
}

/** Heat that a pot of one litre catches of the wood gas [%]. */
const efficiencyOf = (stove: Stove): number => {
  const firing = firingOf(stove)
  const { burn, ok } = firing.burn()
  const boil = boilAnswer(burn, firing, usualWish, 1, mildDay, medianCoefficients)
  return ok ? 100 * boil.efficiencyCharCredited : Number.NaN
}

/** Draught, firepower and what comes of it against the height of a riser. */
export const riserFigure = (): Figure => {
  const rows = steps(45, TALLEST, 38).map((height) => {
    const stove = riserOf(height)
    return { height, moment: momentOf(firingOf(stove)), efficiency: efficiencyOf(stove) }
  })
  type Row = (typeof rows)[number]
  const lineOf = (of: (m: NonNullable<Row['moment']>) => number): Point[] =>
    rows.map(({ height, moment }) => [height, moment === null ? Number.NaN : of(moment)])
  const suction = lineOf(({ spaces }) => -Math.min(...spaces.map(({ pressure }) => pressure)))
  const power = lineOf(({ firepower }) => firepower / 1000)
  const efficiency = rows.map(({ height, efficiency: e }): Point => [height, e])
  const best = efficiency.reduce((a, b) => (b[1] > a[1] ? b : a))
  const clean = rows.find(({ moment }) => moment?.regime === 'clean')?.height ?? 0
  const own = variant('heron').parts.get('riser')
  const ownHeight = own?.form === 'can' ? 1000 * own.can.height.value : 0
  const x = { label: 'height of the riser, mm', from: 0, to: TALLEST, ticks: 3 }
  const smoky = { tone: 'char' as const, strength: 0.1, area: { axis: 'x' as const, from: 0, to: clean } }
  return figurePage({
    title: 'A taller riser draws more, and boils less',
    lead: 'Every millimetre of hot gas lifts, so a taller riser pulls more air and makes more fire. But it pulls more air than the gas needs, and its bare tin cools what it lifts. Too short, and the gas finds too little air; the pot fares best just where that ends.',
    rows: [
      [
        {
          heading: 'Deepest suction inside, Pa',
          x,
          y: { label: '', ...rangeOf(suction.map(([, y]) => y)) },
          series: [{ points: suction, tone: 'cool' }],
          shades: [smoky],
        },
        {
          heading: 'Firepower, kW',
          x,
          y: { label: '', ...rangeOf(power.map(([, y]) => y)) },
          series: [{ points: power, tone: 'ember' }],
          shades: [smoky],
          notes: [{ at: [clean, 0], text: 'rich and smoky left of here', dx: 6, dy: -8, tone: 'muted' }],
        },
        {
          heading: 'Efficiency with a litre on, %',
          x,
          // A tick of room over the line for a word.
          y: { label: '', from: 0, to: rangeOf(efficiency.map(([, y]) => y)).to + 5 },
          series: [{ points: efficiency, tone: 'ink' }],
          shades: [smoky],
          dots: [{ at: best, tone: 'ink', hollow: true }],
          notes: [{ at: best, text: `best at ${Math.round(best[0] / 10) * 10} mm`, dx: 9, dy: -6 }],
        },
      ],
    ],
    foot: `Heron, an invented example with one wall and a riser of 84.6 mm, 45 to ${TALLEST} mm tall; its own has ${ownHeight.toFixed(0)} mm. Chips of 12 % moisture, calm, 20 °C, char that is left counted as not used. Friction along a riser’s wall is left out: it would take a few hundredths of a pascal. Medians of the model, no measurement.`,
  })
}
