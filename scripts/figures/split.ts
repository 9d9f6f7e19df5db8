import { LEAN_LIMIT, RICH_LIMIT } from '#science/steady/describe.ts'
import type { Moment } from '#science/steady/prediction.ts'
import { rangeOf } from './kit/axis.ts'
import { type Figure, figurePage } from './kit/page.ts'
import { celsius, firingOf, milligrams, momentOf, variant } from './stoves.ts'

const OWN = 18

/** How the air parts as the ring over the fuel gets more holes. */
export const splitFigure = (): Figure => {
  const counts = Array.from({ length: 33 }, (_, i) => 2 + i)
  const moments = counts.map((count) => ({
    count,
    moment: momentOf(
      firingOf(
        variant('redshank', (file) => {
          file.parts['fuel can'].openings.ring.count = count
        }),
      ),
    ),
  }))
  const line = (of: (m: Moment) => number) =>
    moments.map(({ count, moment }) => [count, moment === null ? Number.NaN : of(moment)] as const)
  const primary = line(({ air }) => milligrams(air.primary))
  const secondary = line(({ air }) => milligrams(air.secondary))
  const tertiary = line(({ air }) => milligrams(air.tertiary))
  const flame = line(({ airRatio }) => airRatio.flame)
  const outlet = line(({ airRatio }) => airRatio.outlet)
  const hot = line(({ temperature }) => celsius(temperature.flame))
  const x = { label: 'holes of 7 mm in the ring', from: 0, to: 35, ticks: 7 }
  const own = (points: readonly (readonly [number, number])[]) => points.find(([count]) => count === OWN)
  const dot = (points: readonly (readonly [number, number])[], tone: 'cool' | 'ember') => {
    const point = own(points)
    return point === undefined ? [] : [{ at: point, tone }]
  }
  return figurePage({
    title: 'Secondary holes: enough, and then too many',
    lead: 'More holes over the fuel let more air to the gas. Too few and the flame is rich and smokes; too many and it is thinned and cooled, and the draught that pulled the primary air weakens with it.',
    rows: [
      [
        {
          heading: 'Air, mg/s',
          x,
          y: { label: '', ...rangeOf([...primary, ...secondary, ...tertiary].map(([, y]) => y)) },
          series: [
            { points: secondary, tone: 'cool', label: 'secondary' },
            { points: tertiary, tone: 'muted', dash: true, label: 'tertiary' },
            { points: primary, tone: 'fuel', label: 'primary' },
          ],
          dots: dot(secondary, 'cool'),
        },
        {
          heading: 'Air over the air that the gas needs',
          x,
          y: { label: '', from: 0, to: 5 },
          shades: [{ tone: 'ember', strength: 0.1, area: { axis: 'y', from: RICH_LIMIT, to: LEAN_LIMIT } }],
          series: [
            { points: outlet, tone: 'muted', dash: true, label: 'outlet' },
            { points: flame, tone: 'cool', label: 'flame' },
          ],
          notes: [
            { at: [35, RICH_LIMIT], text: 'burns clean', anchor: 'end', dx: -6, dy: -6, tone: 'ember' },
          ],
          dots: dot(flame, 'cool'),
        },
        {
          heading: 'Flame, °C',
          x,
          y: { label: '', from: 600, to: 1800, ticks: 6 },
          series: [{ points: hot, tone: 'ember' }],
          dots: dot(hot, 'ember'),
        },
      ],
    ],
    foot: 'Dots: as drilled, 18 holes. Redshank, an invented example, front half way down, calm, 20 °C. The limits of the shaded strip, 1.1 and 3, are from memory. Medians of the model, no measurement; it predicts no smoke and no carbon monoxide.',
  })
}
