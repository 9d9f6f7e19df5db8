import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type BurnFigure, burnFigure } from '#craft/figure/burnFigure.ts'
import { placeEvents } from '#craft/figure/drawEvents.ts'
import { clockText, clockTicks, multiples, roundStep, scaleOf } from '#craft/figure/scale.ts'
import { luminance } from '#craft/section/colour.ts'
import type { Lettering } from '#craft/section/sheet.ts'
import { darkTheme, lightTheme } from '#craft/section/theme.ts'
import { offPage, overlaps } from '../letteringBoxes.ts'
import { burns, plainBurn } from './burns.ts'

const texts = ({ letterings }: BurnFigure): readonly string[] => letterings.map(({ text }) => text)

describe.each([960, 390])('at a width of %i', (width) => {
  test.each(burns)('$name has no word over another, and none off the page', ({ input }) => {
    const figure = burnFigure(input, { width })
    expect(overlaps(figure.letterings)).toEqual([])
    expect(offPage(figure.letterings, figure.width, figure.height)).toEqual([])
  })

  test.each(burns)('$name is one sound picture, the same every time', ({ input }) => {
    const { svg } = burnFigure(input, { width })
    expect(svg).not.toMatch(/NaN|Infinity|undefined|null/)
    expect(svg).not.toMatch(/https?:(?!\/\/www\.w3\.org\/2000\/svg")/)
    // Elements are closed where they open, or hold text.
    expect(svg.match(/<text/g)?.length).toBe(svg.match(/<\/text>/g)?.length)
    expect(burnFigure(input, { width }).svg).toBe(svg)
  })

  test.each(burns)('$name says both axes in words and every event', ({ input }) => {
    const figure = burnFigure(input, { width })
    const said = texts(figure).join(' ')
    for (const words of ['Firepower', 'kW on the left, Btu/h on the right', 'Fuel', 'time after lighting'])
      expect(said).toContain(words)
    for (const { text } of input.events) expect(said).toContain(text)
    if (input.pots.length > 0) expect(said).toContain('°C on the left, °F on the right')
    expect(said.includes('shaded: 5 to 95 %')).toBe(input.band !== null)
  })
})

/** Points of the first path of a colour, in order. */
const pathOf = (svg: string, attribute: string): readonly (readonly [number, number])[] => {
  const path = svg.split('\n').find((line) => line.startsWith('<path') && line.includes(attribute))
  const d = /d="([^"]+)"/.exec(path ?? '')?.[1] ?? ''
  return [...d.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const)
}

describe('a burn by hand', () => {
  const { svg, letterings } = burnFigure(plainBurn(), { width: 960 })
  const tick = (text: string, left: boolean): Lettering =>
    letterings.find((one) => one.text === text && one.x < 480 === left) as Lettering
  /** Height of a value of firepower on the page, told by the ticks [W]. */
  const height = (watts: number): number => {
    const [zero, two] = [tick('0', true), tick('2', true)]
    return zero.y + ((two.y - zero.y) * watts) / 2000
  }
  // The line of firepower is the thick one of ember that fills nothing.
  const line = pathOf(svg, `stroke="${lightTheme.ember}" stroke-width="2.6"`)
  const at = (seconds: number): number => {
    const [first, last] = [line[0], line[line.length - 1]]
    return (first?.[0] ?? 0) + (((last?.[0] ?? 0) - (first?.[0] ?? 0)) * seconds) / 1200
  }

  test('draws firepower where the ticks say it is', () => {
    const offset = (line[0]?.[1] ?? 0) - height(2000)
    for (const [x, y] of line.filter(([x]) => x < at(600) - 1)) {
      expect(y - offset).toBeCloseTo(height(2000), 1)
      expect(x).toBeGreaterThanOrEqual(at(0))
    }
    expect((line[line.length - 1]?.[1] ?? 0) - offset).toBeCloseTo(height(100), 0)
  })

  test('lets firepower fall at once when the front is at the floor, and not across a step', () => {
    const there = line.filter(([x]) => Math.abs(x - at(600)) < 0.02).map(([, y]) => y)
    expect(there).toHaveLength(2)
    expect((there[1] ?? 0) - (there[0] ?? 0)).toBeCloseTo(height(1000) - height(2000), 0)
  })

  test('shades the band round it', () => {
    const band = pathOf(svg, `fill="${lightTheme.ember}"`)
    const offset = (line[0]?.[1] ?? 0) - height(2000)
    expect(band).toHaveLength(6)
    expect(band.map(([, y]) => Math.round(y - offset - height(0)) + 0)).toEqual(
      [2500, 2500, 500, 0, 1500, 1500].map((watts) => Math.round(height(watts) - height(0))),
    )
  })

  test('tells the same firepower on both sides', () => {
    // 1 kW is 3412 Btu/h, 3600/1055.06.
    const [zero, four] = [tick('0', false), tick('4000', false)]
    const perBtu = (four.y - zero.y) / 4000
    const perWatt = (tick('2', true).y - tick('0', true).y) / 2000
    expect(perBtu / perWatt).toBeCloseTo(1 / 3.412142, 3)
  })
})

test('a change from outside is a jump, not a slope', () => {
  const calm = plainBurn()
  const steps = calm.steps.map((step) =>
    step.time >= 300 && step.time < 600 ? { ...step, firepower: 1200 } : step,
  )
  const line = (change: boolean): number => {
    const events = [{ time: 300, text: 'damper', change }]
    return pathOf(
      burnFigure({ ...calm, steps, events }).svg,
      `stroke="${lightTheme.ember}" stroke-width="2.6"`,
    ).length
  }
  expect(line(true)).toBe(line(false) + 2)
})

describe.each([
  ['light', lightTheme],
  ['dark', darkTheme],
])('in the %s theme', (_, theme) => {
  /** Contrast of WCAG 2.2 between two colours. */
  const contrast = (a: string, b: string): number => {
    const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y)
    return (light + 0.05) / (dark + 0.05)
  }

  test('lines stand out from the paper without their colour', () => {
    // 3 : 1 for what has to be seen, WCAG 2.2, 1.4.11.
    for (const colour of [theme.ember, theme.airEdge, theme.muted])
      expect(contrast(colour, theme.paper)).toBeGreaterThanOrEqual(3)
    expect(contrast(theme.rawFuel, theme.char)).toBeGreaterThan(2.5)
  })

  test('is drawn in its own paper and ink', () => {
    const { svg } = burnFigure(plainBurn(), { theme })
    expect(svg).toContain(`fill="${theme.paper}"`)
    expect(svg).toContain(`fill="${theme.ink}"`)
  })
})

describe('labels of events', () => {
  const time = scaleOf(0, 1000, 50, 850)
  const someEvents = fc.array(
    fc.record({
      time: fc.integer({ min: 0, max: 1000 }),
      text: fc.constantFrom('lit', '1 L boils', 'whole top alight, pot on', 'damper turned to 12°'),
      change: fc.boolean(),
    }),
    { maxLength: 9 },
  )

  test('never stand on each other, nor on the line of another that does not run off the page', () => {
    fc.assert(
      fc.property(someEvents, (events) => {
        const placed = placeEvents(events, time, 880)
        expect(placed).toHaveLength(events.length)
        for (const one of placed)
          for (const other of placed) {
            if (one === other) continue
            const [from, to] =
              one.anchor === 'start' ? [one.x, one.x + one.width] : [one.x - one.width, one.x]
            const [start, end] =
              other.anchor === 'start' ? [other.x, other.x + other.width] : [other.x - other.width, other.x]
            if (one.row === other.row) expect(from < end && start < to).toBe(false)
            // A line leads down from its own row.
            if (other.row > one.row && other.anchor === 'start' && one.anchor === 'start')
              expect(other.x > from && other.x < to).toBe(false)
          }
      }),
    )
  })

  test('stay on the page', () => {
    fc.assert(
      fc.property(someEvents, (events) => {
        for (const { x, width, anchor } of placeEvents(events, time, 880))
          expect(anchor === 'start' ? x + width : x).toBeLessThanOrEqual(880)
      }),
    )
  })
})

describe('ticks', () => {
  test('come at round steps that are no more than asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.integer({ min: 2, max: 9 }),
        (span, most) => {
          const step = roundStep(span, most)
          expect(span / step).toBeLessThanOrEqual(most * (1 + 1e-6))
          expect(String(step.toExponential())[0]).toMatch(/[125]/)
          for (const value of multiples(step, 0, span)) expect(value).toBeLessThanOrEqual(span * (1 + 1e-6))
        },
      ),
    )
  })

  test('of time are whole minutes of a clock, apart from each other', () => {
    for (const minutes of [3, 17, 45, 120, 400]) {
      const scale = scaleOf(0, minutes * 60, 0, 800)
      const ticks = clockTicks(scale, 76)
      expect(ticks[0]).toBe(0)
      expect(ticks.length).toBeGreaterThan(2)
      for (const [i, tick] of ticks.entries()) {
        expect(tick % 60).toBe(0)
        if (i > 0) expect(scale.at(tick) - scale.at(ticks[i - 1] as number)).toBeGreaterThanOrEqual(76)
      }
    }
    expect([0, 1200, 3600, 4800].map(clockText)).toEqual(['0', '20 min', '1 h', '1 h 20'])
  })
})
