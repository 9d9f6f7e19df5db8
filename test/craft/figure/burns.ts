import { orThrow } from '#basis/problem.ts'
import { type BurnOptions, setupOf } from '#cli/burn/setup.ts'
import { figureOf } from '#compose/burnFigure.ts'
import type { BurnFigureInput, FigureStep } from '#craft/figure/input.ts'
import { reportOf } from '#science/answers/burn/report.ts'
import { readStove } from '#stove/document/read.ts'
import { exampleNamed } from '../../stove/document/examples.ts'

/** A burn made up by hand, its figures round: 2 kW for ten minutes, then char that fades. */
export const plainBurn = (change: Partial<BurnFigureInput> = {}): BurnFigureInput => {
  const woodGas = Array.from(
    { length: 10 },
    (_, i): FigureStep => ({
      time: 60 * i,
      duration: 60,
      phase: i === 0 ? 'lighting' : 'wood gas',
      firepower: 2000,
      frontPosition: i / 10,
      char: 0.002 * i,
    }),
  )
  const char = Array.from(
    { length: 10 },
    (_, i): FigureStep => ({
      time: 600 + 60 * i,
      duration: 60,
      phase: 'char',
      firepower: 1000 - 100 * i,
      frontPosition: 1,
      char: 0.02 - 0.002 * i,
    }),
  )
  const steps = [...woodGas, ...char]
  return {
    title: 'A burn by hand',
    subtitle: 'Round figures',
    steps,
    band: {
      runs: 20,
      time: [0, 600, 1200],
      low: [1500, 1500, 0],
      high: [2500, 2500, 500],
    },
    pots: [
      {
        litres: 1,
        from: 60,
        boilsAt: 540,
        dryAt: null,
        start: 293.15,
        temperature: steps.map(({ time }) => Math.min(373.15, 293.15 + (80 * Math.max(0, time)) / 480)),
      },
    ],
    boilingPoint: 373.15,
    events: [
      { time: 60, text: 'alight', change: false },
      { time: 540, text: '1 L boils', change: false },
      { time: 600, text: 'front at the floor', change: false },
      { time: 1200, text: 'char cold', change: false },
    ],
    notes: ['A note that stands under the figure.'],
    ...change,
  }
}

const burnOf = (name: string, options: BurnOptions): BurnFigureInput => {
  const stove = orThrow(readStove(exampleNamed(name).text))
  const outcome = reportOf(setupOf(stove, options), 16)
  if (outcome.kind === 'no burn') throw new Error(outcome.noBurn.sentence)
  return figureOf(outcome.report)
}

/** What the command line draws, of our examples and of some that crowd the figure. */
export const burns: readonly { readonly name: string; readonly input: BurnFigureInput }[] = [
  { name: 'a burn by hand', input: plainBurn() },
  { name: 'a burn without bands, pots and events', input: plainBurn({ band: null, pots: [], events: [] }) },
  ...(
    [
      ['greylag', {}],
      ['heron', {}],
      ['redshank', {}],
      ['redshank', { damper: ['3 min: 4 deg', '6 min: 6 deg', '9 min: 8 deg', 'boil: 0 deg'], hot: true }],
      ['heron', { lid: false, altitude: '2500 m' }],
      ['greylag', { lid: false, temperature: '-10 °C', wind: '1 m/s', skirt: '8 mm x 60 mm' }],
    ] as const
  ).map(([name, options]) => ({
    name: `${name} ${JSON.stringify(options)}`,
    input: burnOf(name, options),
  })),
]
