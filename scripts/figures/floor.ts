import type { Moment } from '#science/steady/prediction.ts'
import { rangeOf } from './kit/axis.ts'
import { type Figure, figurePage } from './kit/page.ts'
import { firingOf, milligrams, momentOf, steps, variant } from './stoves.ts'

const HOLES = 19
const area = (bit: number): number => (HOLES * Math.PI * bit * bit) / 4

/** How primary air and firepower follow the area of the holes in the floor. */
export const floorFigure = (): Figure => {
  const own = 4
  const at = (bit: number) => {
    const stove = variant('redshank', (file) => {
      file.parts['fuel can'].openings.floor.hole = { bit: `${bit.toFixed(3)} mm` }
    })
    return { x: area(bit), bit, moment: momentOf(firingOf(stove)) }
  }
  const points = steps(1, 10, 37).map(at)
  const here = at(own)
  const line = (of: (m: NonNullable<(typeof here)['moment']>) => number) =>
    points.map(({ x, moment }) => [x, moment === null ? Number.NaN : of(moment)] as const)
  const air = line(({ air }) => milligrams(air.primary))
  const power = line(({ firepower }) => firepower / 1000)
  const dropOf = (test: (passage: Moment['passages'][number]) => boolean) =>
    line(({ passages }) =>
      passages.reduce((sum, passage) => sum + (test(passage) ? passage.pressureDrop : 0), 0),
    )
  const floor = dropOf(({ opening }) => opening === 'floor')
  const bed = dropOf(({ kind }) => kind === 'bed')
  const x = { label: 'area of the floor holes, mm²', from: 0, to: 1500, ticks: 5 }
  const dots = (value: number, tone: 'cool' | 'ember') => [{ at: [area(own), value] as const, tone }]
  const first = here.moment
  const least = points.find(({ moment }) => moment !== null && moment.regime !== 'smoulder')?.x ?? 0
  return figurePage({
    title: 'Wider floor holes, more air, more fire',
    lead: 'Primary air makes the wood gas: firepower follows it nearly line by line. It grows with the floor holes only until the fuel itself is the tightest place; a bigger drill then buys little.',
    rows: [
      [
        {
          heading: 'Primary air, mg/s',
          x,
          y: { label: '', ...rangeOf(air.map(([, y]) => y)) },
          series: [{ points: air, tone: 'cool' }],
          shades: [{ tone: 'char', strength: 0.08, area: { axis: 'x', from: 0, to: least } }],
          notes: [
            {
              at: [least, 0],
              text: 'smoulders left of here',
              dx: 7,
              dy: -8,
              tone: 'muted',
            },
            {
              at: [area(own), first === null ? 0 : milligrams(first.air.primary)],
              text: 'as drilled, 4 mm',
              dx: 10,
              dy: 14,
            },
          ],
          dots: first === null ? [] : dots(milligrams(first.air.primary), 'cool'),
        },
        {
          heading: 'Firepower, kW',
          x,
          y: { label: '', ...rangeOf(power.map(([, y]) => y)) },
          series: [{ points: power, tone: 'ember' }],
          dots: first === null ? [] : dots(first.firepower / 1000, 'ember'),
        },
        {
          heading: 'Pressure it takes, Pa',
          x,
          y: { label: '', ...rangeOf([...floor, ...bed].map(([, y]) => y)) },
          series: [
            { points: floor, tone: 'ink', label: 'floor' },
            { points: bed, tone: 'fuel', label: 'bed' },
          ],
        },
      ],
    ],
    foot: 'Redshank, an invented example: 19 floor holes of 1 to 10 mm, chips of 12 % moisture, front half way down, calm, 20 °C at sea level. Medians of the model, no measurement.',
  })
}
