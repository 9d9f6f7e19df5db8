import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { rangeOf, ticksOf } from '#scripts/figures/kit/axis.ts'
import { spreadLabels } from '#scripts/figures/kit/drawPanel.ts'
import { figureNames, madeFigure, PICTURES } from '#scripts/figures.ts'

const figures = figureNames.map((name) => ({ name, figure: madeFigure(name) }))

describe.each(figures)('docs/pictures/$name', ({ name, figure }) => {
  test('is current; else run node scripts/figures.ts', () => {
    // Not toBe: of forty thousand letters a reader wants to know only that they differ.
    expect(readFileSync(join(PICTURES, name), 'utf8') === figure.svg).toBe(true)
  })

  test('has every word on the page and no two on each other', () => {
    const { words, width, height } = figure
    expect(words.length).toBeGreaterThan(5)
    for (const { text, left, right, top, bottom } of words) {
      expect(left, text).toBeGreaterThanOrEqual(0)
      expect(right, text).toBeLessThanOrEqual(width)
      expect(top, text).toBeGreaterThanOrEqual(0)
      expect(bottom, text).toBeLessThanOrEqual(height)
    }
    const clashes = words.flatMap((a, i) =>
      words
        .slice(i + 1)
        .filter(
          (b) =>
            Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
            Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1,
        )
        .map((b) => `“${a.text}” and “${b.text}”`),
    )
    expect(clashes).toEqual([])
  })

  test('draws numbers only', () => {
    expect(figure.svg).not.toMatch(/NaN|Infinity|undefined/)
  })
})

test('docs/pictures holds no figure of the physics that nothing draws', () => {
  const found = readdirSync(PICTURES).filter((name) => name.startsWith('physics'))
  expect(found.sort()).toEqual([...figureNames].sort())
})

describe('axes', () => {
  test('tick at multiples of 1, 2 or 5', () => {
    expect(ticksOf({ label: '', from: 0, to: 1 })).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1])
    expect(ticksOf({ label: '', from: -0.3, to: 0.3, ticks: 6 })).toEqual([
      -0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3,
    ])
    expect(ticksOf({ label: '', from: 3, to: 11, ticks: 2 })).toEqual([5, 10])
  })

  test('reach to whole ticks round what they show', () => {
    expect(rangeOf([3, 47])).toEqual({ from: 0, to: 50 })
    expect(rangeOf([-1.2, 3.9])).toEqual({ from: -2, to: 4 })
    expect(rangeOf([Number.NaN, 2])).toEqual({ from: 0, to: 2 })
  })
})

test('labels keep apart, in order, and within the panel', () => {
  const placed = spreadLabels([50, 10, 51, 52, 98], 15, 0, 100)
  const sorted = [...placed].sort((a, b) => a - b)
  for (let i = 1; i < sorted.length; i++)
    expect((sorted[i] as number) - (sorted[i - 1] as number)).toBeGreaterThan(14.5)
  expect(placed[0]).toBeLessThan(placed[2] as number)
  expect(placed[2]).toBeLessThan(placed[3] as number)
  expect(Math.max(...placed)).toBeLessThanOrEqual(100)
  expect(placed[1]).toBeCloseTo(10, 6)
})
