import { boilAnswer, usualWish } from '#science/answers/figures.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { mildDay } from '#science/site.ts'
import { rangeOf } from './kit/axis.ts'
import { type Figure, figurePage } from './kit/page.ts'
import type { Point } from './kit/panel.ts'
import { celsius, firingOf, variant } from './stoves.ts'

const LITRES = 1
const minutes = (seconds: number): number => seconds / 60

/** A whole burn over time, with a pot on it. */
export const burnFigure = (): Figure => {
  const firing = firingOf(variant('heron'))
  const outcome = firing.burn()
  if (!outcome.ok) throw new Error(outcome.failure.sentence)
  const { steps, events } = outcome.burn
  const boil = boilAnswer(outcome.burn, firing, usualWish, LITRES, mildDay, medianCoefficients)
  const line = (of: (step: (typeof steps)[number]) => number): Point[] =>
    steps.map((step) => [minutes(step.time + step.duration / 2), of(step)])
  const ofPhase = (char: boolean, of: (step: (typeof steps)[number]) => number): Point[] =>
    line((step) => ((step.phase === 'char') === char ? of(step) : Number.NaN))
  const last = steps[steps.length - 1]
  const end = last === undefined ? 60 : minutes(last.time + last.duration)
  const x = { label: 'minutes after lighting', from: 0, to: Math.ceil(end / 5) * 5, ticks: 7 }
  const power = line(({ firepower }) => firepower / 1000)
  const water: Point[] = boil.cooked.waterTemperature.map((T, i) => {
    const step = steps[i]
    return [step === undefined ? Number.NaN : minutes(step.time + step.duration), celsius(T)]
  })
  const on = events.find(({ kind }) => kind === 'whole bed alight')?.time ?? 0
  const floor = events.find(({ kind }) => kind === 'front at the floor')?.time
  const marks = [on, ...(floor === undefined ? [] : [floor])].map((time) => ({
    axis: 'x' as const,
    at: minutes(time),
    dash: true,
  }))
  const boils = boil.cooked.boilsAt
  const fuelTop = rangeOf(steps.map(({ rawFuel }) => 1000 * rawFuel)).to
  return figurePage({
    title: 'A burn from the match to the last glow',
    lead: 'First the fire spreads over the top of the fuel; then the front eats its way down and the gas burns over it; at last only char is left, and glows on without a flame.',
    aligned: true,
    rows: [
      [
        {
          heading: 'Firepower, kW',
          x,
          bareX: true,
          y: {
            label: '',
            ...rangeOf(
              power.map(([, y]) => y),
              { ticks: 4 },
            ),
          },
          height: 130,
          series: [
            { points: ofPhase(false, ({ firepower }) => firepower / 1000), tone: 'ember' },
            { points: ofPhase(true, ({ firepower }) => firepower / 1000), tone: 'char', label: 'char' },
          ],
          rules: marks,
          notes: [
            { at: [minutes(on), 0], text: 'whole bed alight, pot on', dx: 6, dy: -8, tone: 'muted' },
            ...(floor === undefined
              ? []
              : [
                  {
                    at: [
                      minutes(floor),
                      rangeOf(
                        power.map(([, y]) => y),
                        { ticks: 4 },
                      ).to,
                    ] as const,
                    text: 'front at the floor',
                    dx: 6,
                    dy: 14,
                    tone: 'muted' as const,
                  },
                ]),
          ],
        },
      ],
      [
        {
          heading: 'Flame, gas at the outlet, hottest outer wall, °C',
          x,
          bareX: true,
          y: { label: '', from: 0, to: 1500, ticks: 3 },
          height: 130,
          series: [
            { points: ofPhase(false, ({ flameTemperature }) => celsius(flameTemperature)), tone: 'ember' },
            {
              points: line(({ outletTemperature }) => celsius(outletTemperature)),
              tone: 'muted',
              dash: true,
              label: 'outlet',
            },
            { points: line(({ hottestOuterWall }) => celsius(hottestOuterWall)), tone: 'ink', label: 'wall' },
          ],
          rules: marks,
          notes: [{ at: [minutes(on) + 6, 1500], text: 'flame', dy: 13, tone: 'ember' }],
        },
      ],
      [
        {
          heading: 'In the can, g',
          x,
          bareX: true,
          y: { label: '', from: 0, to: fuelTop, ticks: 3 },
          height: 100,
          series: [
            {
              points: line(({ rawFuel, phase }) => (phase === 'char' ? Number.NaN : 1000 * rawFuel)),
              tone: 'fuel',
            },
            { points: line(({ char }) => 1000 * char), tone: 'char', label: 'char' },
          ],
          rules: marks,
          notes: [{ at: [1, fuelTop], text: 'raw fuel', dx: 34, dy: 14, tone: 'fuel' }],
        },
      ],
      [
        {
          heading: 'A litre of water under a lid, °C',
          x,
          y: { label: '', from: 0, to: 100, ticks: 2 },
          height: 90,
          series: [{ points: water, tone: 'cool' }],
          rules: marks,
          dots:
            boils === null ? [] : [{ at: [minutes(boils), celsius(boil.cooked.boilingPoint)], tone: 'cool' }],
          notes:
            boils === null
              ? []
              : [
                  {
                    at: [minutes(boils), 100],
                    text: `boils ${minutes(boil.time ?? 0).toFixed(0)} min after going on`,
                    dx: 8,
                    dy: 18,
                    tone: 'cool',
                  },
                ],
        },
      ],
    ],
    foot: 'Heron, an invented example with one wall and a riser, chips of 12 % moisture, calm, 20 °C at sea level, aluminium pot. Medians of the model, no measurement. Char gives off carbon monoxide long after the flame: outdoors only.',
  })
}
