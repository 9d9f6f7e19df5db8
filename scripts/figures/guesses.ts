import { boilAnswer, burnFigures, usualWish } from '#science/answers/figures.ts'
import { sampleBands } from '#science/bands/bands.ts'
import { coefficientTable } from '#science/coefficients.ts'
import { mildDay } from '#science/site.ts'
import { type Figure, figurePage } from './kit/page.ts'
import type { Panel } from './kit/panel.ts'
import { firingOf, variant } from './stoves.ts'

const SAMPLES = 200
const SEED = 1
const KEYS = ['power', 'time', 'efficiency'] as const

/** How far three answers may be out, and which coefficients move them most. */
export const guessesFigure = (): Figure => {
  const firing = firingOf(variant('heron'))
  const bands = sampleBands(
    KEYS,
    (coefficients) => {
      const outcome = firing.burn(coefficients)
      if (!outcome.ok) return { outcome: outcome.failure.code, figures: {} }
      const figures = burnFigures(outcome.burn, firing, usualWish, mildDay, coefficients)
      const boil = boilAnswer(outcome.burn, firing, usualWish, 1, mildDay, coefficients)
      return {
        outcome: 'burns',
        figures: {
          power: figures.firepower / 1000,
          time: figures.woodGasTime / 60,
          efficiency: 100 * boil.efficiencyCharCredited,
        },
      }
    },
    { samples: SAMPLES, seed: SEED },
  )
  const panel = (key: (typeof KEYS)[number], heading: string, unit: string, digits: number): Panel => {
    const band = bands.figures[key]
    const matters = bands.matters[key].slice(0, 5)
    const say = (value: number): string => value.toFixed(digits)
    const words = band === null ? '' : `${say(band.median)} ${unit} (${say(band.low)} to ${say(band.high)})`
    return {
      heading: `${heading} ${words}`,
      x: { label: 'rank correlation with it', from: -1, to: 1, ticks: 4 },
      y: { label: '', from: 0, to: 5, ticks: 1, text: () => '' },
      height: 190,
      rules: [{ axis: 'x', at: 0 }],
      series: matters.map(({ correlation }, i) => ({
        points: [
          [0, 4.35 - i],
          [correlation, 4.35 - i],
        ],
        tone: correlation > 0 ? 'ember' : 'cool',
        width: 9,
      })),
      notes: matters.map(({ coefficient }, i) => ({
        at: [-1, 4.35 - i] as const,
        text: coefficient,
        dx: 0,
        dy: -9,
        tone: 'ink' as const,
      })),
    }
  }
  return figurePage({
    title: 'What the guesses do',
    lead: `The same burn ${SAMPLES} times, every uncertain number drawn anew each time. Nine in ten runs lie in the range over each panel; the bars say which numbers move it, up or down.`,
    rows: [
      [
        panel('power', 'Firepower', 'kW', 2),
        panel('time', 'Wood gas', 'min', 0),
        panel('efficiency', 'Efficiency', '%', 0),
      ],
    ],
    foot: `Heron, an invented example, a litre of water under a lid, char that is left counted as not used. ${Object.keys(coefficientTable).length} coefficients, each on its own; what they are is in the coefficient table.`,
  })
}
