import { describe, expect, test } from 'vitest'
import { lineWidth } from '#craft/section/sheet.ts'
import { plainSetup } from '#science/answers/burn/setup.ts'
import { liveBurn } from '#science/answers/live/liveBurn.ts'
import {
  bandPath,
  endOfBurn,
  powerPath,
  powerTicks,
  stripMarks,
  stripOf,
  timeAt,
  timeTicks,
  waterPath,
  waterTicks,
} from '#web/course/strip.ts'
import { example, exampleNames } from '../../science/burn/firing.ts'

const burnOf = (name: (typeof exampleNames)[number]) => {
  const outcome = liveBurn(plainSetup(example(name)))
  if (outcome.kind !== 'burn') throw new Error(`${name} burns`)
  return outcome.burn
}

const points = (path: string): readonly (readonly [number, number])[] =>
  path
    .replace(/[MZ]/g, '')
    .split('L')
    .map((pair) => pair.split(' ').map(Number) as unknown as readonly [number, number])

describe.each(exampleNames)('the strip of %s', (name) => {
  const burn = burnOf(name)
  const alone = { before: null, band: null }

  test.each([320, 624, 1500])('keeps its curves within its field, %i px wide', (width) => {
    const strip = stripOf(width, 152, burn, alone)
    for (const path of [powerPath(strip, burn), waterPath(strip, burn)]) {
      for (const [x, y] of points(path)) {
        expect(x).toBeGreaterThanOrEqual(strip.left - 0.01)
        expect(x).toBeLessThanOrEqual(strip.right + 0.01)
        expect(y).toBeGreaterThanOrEqual(strip.top - 0.01)
        expect(y).toBeLessThanOrEqual(strip.bottom + 0.01)
      }
    }
  })

  test.each([320, 624, 1500])('sets no word of an event over another, %i px wide', (width) => {
    const strip = stripOf(width, 152, burn, alone)
    const marks = stripMarks(strip, burn)
    expect(marks.length).toBeGreaterThan(0)
    for (const line of [0, 1]) {
      const spans = marks
        .filter((mark) => mark.line === line)
        .map(({ x, text, anchor }) => {
          const long = lineWidth(text, 13)
          return anchor === 'start' ? [x, x + long] : [x - long, x]
        })
        .sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0))
      for (const [i, span] of spans.entries())
        if (i > 0) expect(span[0]).toBeGreaterThan(spans[i - 1]?.[1] ?? 0)
    }
  })

  test('has its area under the curve for the heat of the burn', () => {
    const strip = stripOf(1000, 152, burn, alone)
    const path = points(powerPath(strip, burn))
    const perPixel = [strip.until / (strip.right - strip.left), strip.power.to / (strip.bottom - strip.top)]
    let area = 0
    for (const [i, [x, y]] of path.entries()) {
      const before = path[i - 1]
      if (before !== undefined)
        area +=
          (x - before[0]) * (strip.bottom - (y + before[1]) / 2) * (perPixel[0] ?? 0) * (perPixel[1] ?? 0)
    }
    const heat = burn.steps.reduce((sum, { firepower, duration }) => sum + firepower * duration, 0)
    // Straight between the middles of steps: what it gains on one side of a bend it loses on the other, nearly.
    expect(Math.abs(area / heat - 1)).toBeLessThan(0.02)
  })

  test('finds the time of a place, and no time outside the burn', () => {
    const strip = stripOf(700, 152, burn, alone)
    expect(timeAt(strip, strip.left)).toBe(0)
    expect(timeAt(strip, -100)).toBe(0)
    expect(timeAt(strip, 1e4)).toBe(endOfBurn(burn))
    expect(timeAt(strip, strip.time.at(333))).toBeCloseTo(333, 6)
  })

  test('makes room for a longer burn, and a higher band, beside it', () => {
    const longer = burnOf('greylag')
    expect(stripOf(700, 152, burn, { before: longer, band: null }).until).toBe(
      Math.max(endOfBurn(burn), endOfBurn(longer)),
    )
    const band = { time: [0, 100], low: [0, 0], high: [9000, 9000] }
    const strip = stripOf(700, 152, burn, { before: null, band })
    expect(strip.power.to).toBeGreaterThanOrEqual(9000)
    expect(points(bandPath(strip, band))).toHaveLength(4)
  })

  test('has ticks with their figures within the field', () => {
    const strip = stripOf(700, 152, burn, alone)
    for (const units of ['mm', 'in', 'both'] as const)
      for (const { y } of [...powerTicks(strip, units), ...waterTicks(strip, units)]) {
        expect(y).toBeGreaterThanOrEqual(strip.top - 0.01)
        expect(y).toBeLessThanOrEqual(strip.bottom + 0.01)
      }
    // Water boils at the same height whatever it is read in, and 1 kW is 3412 Btu/h.
    expect(waterTicks(strip, 'in')[2]?.y).toBeCloseTo(waterTicks(strip, 'mm')[2]?.y ?? 0, 6)
    const [kilowatt, btu] = [powerTicks(strip, 'mm')[1], powerTicks(strip, 'in')[1]]
    const share = (tick: typeof btu) => (strip.bottom - (tick?.y ?? 0)) / Number(tick?.text)
    expect(share(kilowatt) / share(btu)).toBeCloseTo(3.412, 3)
    const xs = timeTicks(strip).map(({ x }) => x)
    for (const [i, x] of xs.entries()) if (i > 0) expect(x - (xs[i - 1] ?? 0)).toBeGreaterThanOrEqual(70)
  })
})
