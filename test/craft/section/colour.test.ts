import { describe, expect, test } from 'vitest'
import { heatColour, luminance } from '#craft/section/colour.ts'
import { darkTheme, lightTheme, type Theme } from '#craft/section/theme.ts'

/** Contrast of two colours, WCAG 2.2 definition: (L1 + 0.05)/(L2 + 0.05) [1]. */
const contrast = (a: string, b: string): number => {
  const [low, high] = [luminance(a), luminance(b)].sort((p, q) => p - q) as [number, number]
  return (high + 0.05) / (low + 0.05)
}

test('luminance is that of sRGB', () => {
  // The primaries' shares of white, IEC 61966-2-1.
  expect(luminance('#ffffff')).toBeCloseTo(1, 9)
  expect(luminance('#ff0000')).toBeCloseTo(0.2126, 9)
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9)
})

describe.each<[string, Theme]>([
  ['light', lightTheme],
  ['dark', darkTheme],
])('the %s theme', (_, theme) => {
  test('sets words in inks that WCAG 2.2 AA calls legible', () => {
    for (const ink of [theme.ink, theme.muted]) expect(contrast(ink, theme.paper)).toBeGreaterThanOrEqual(4.5)
  })

  test('tells temperatures apart without colour: lightness runs one way', () => {
    const greys = Array.from({ length: 31 }, (_, i) => luminance(heatColour(theme, 293 + i * 50)))
    const steps = greys.slice(1).map((grey, i) => grey - (greys[i] ?? 0))
    const way = Math.sign((greys.at(-1) ?? 0) - (greys[0] ?? 0))
    expect(steps.every((step) => step * way >= 0)).toBe(true)
    expect(contrast(heatColour(theme, 293), heatColour(theme, 1500))).toBeGreaterThan(3)
  })

  test('has arrows that stand out from what they lie on', () => {
    expect(contrast(theme.arrowOnAir, heatColour(theme, 293))).toBeGreaterThan(3)
    for (const kelvin of [1100, 1300, 1500])
      expect(contrast(theme.arrowOnGas, heatColour(theme, kelvin))).toBeGreaterThan(3)
  })

  test('gives the ends of its scale beyond it', () => {
    expect(heatColour(theme, 100)).toBe(theme.heat[0]?.[1])
    expect(heatColour(theme, 3000)).toBe(theme.heat.at(-1)?.[1])
  })
})
