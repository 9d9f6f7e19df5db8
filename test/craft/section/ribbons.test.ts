import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { placesAlong } from '#craft/section/bend.ts'
import { type SectionGeometry, sectionGeometry } from '#craft/section/geometry.ts'
import type { HalfPoint } from '#craft/section/half.ts'
import type { Ribbon } from '#craft/section/ribbon.ts'
import { airPicture } from '#craft/section/ribbons.ts'
import { burning } from './scenes.ts'

const widthAt = (ribbon: Ribbon, end: 'start' | 'finish'): number => {
  const stretch = end === 'start' ? ribbon.stretches[0] : ribbon.stretches.at(-1)
  if (stretch === undefined) return 0
  const i = end === 'start' ? 0 : 3
  return Math.hypot(stretch.left[i].r - stretch.right[i].r, stretch.left[i].z - stretch.right[i].z)
}

const STEPS = 160
const middleLine = (ribbon: Ribbon): readonly HalfPoint[] =>
  placesAlong(
    ribbon.stretches,
    Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS),
  ).map(({ at }) => at)

/** Tin that a step from one point to the next goes through, by name. */
const tinBetween = (section: SectionGeometry, a: HalfPoint, b: HalfPoint): readonly string[] => {
  const found: string[] = []
  const crosses = (from: number, to: number, at: number): boolean => (from - at) * (to - at) < 0
  for (const { part, radius, pieces, form } of section.walls) {
    if (form === 'band' || !crosses(a.r, b.r, radius)) continue
    const z = a.z + ((b.z - a.z) * (radius - a.r)) / (b.r - a.r)
    if (pieces.some((piece) => z > (piece[0]?.z ?? 0) + 0.05 && z < (piece.at(-1)?.z ?? 0) - 0.05))
      found.push(`wall of ${part} at ${z.toFixed(1)} mm`)
  }
  for (const { part, height, pieces } of section.plates) {
    if (!crosses(a.z, b.z, height)) continue
    const r = a.r + ((b.r - a.r) * (height - a.z)) / (b.z - a.z)
    if (pieces.some(({ from, to }) => r > from + 0.05 && r < to - 0.05))
      found.push(`plate of ${part} at ${r.toFixed(1)} mm`)
  }
  return found
}

describe.each(burning)('the air of $name', ({ stove, burn }) => {
  const section = orThrow(sectionGeometry(stove, burn.halfway.frontPosition))
  const { ribbons, gates, widthPerFlow } = airPicture(section, burn.halfway)

  test('is drawn', () => {
    expect(ribbons.length).toBeGreaterThan(5)
    expect(widthPerFlow).toBeGreaterThan(0)
  })

  test('is as wide as its flow, at both ends of every ribbon', () => {
    for (const ribbon of ribbons) {
      const width = (ribbon.flow / 2) * widthPerFlow
      expect(widthAt(ribbon, 'finish')).toBeCloseTo(width, 6)
      // The first stretch of gas is where air takes up fuel, and widens.
      expect(widthAt(ribbon, 'start')).toBeLessThan(width * (1 + 1e-6) + 1e-9)
    }
  })

  test('goes through holes only, never through tin', () => {
    const wrong = ribbons.flatMap((ribbon) => {
      const line = middleLine(ribbon)
      return line.flatMap((at, i) => {
        const next = line[i + 1]
        return next === undefined ? [] : tinBetween(section, at, next)
      })
    })
    expect(wrong).toEqual([])
  })

  test('fits through the openings that matter', () => {
    const most = Math.max(...gates.map(({ flow }) => Math.abs(flow)))
    for (const { clear, flow } of gates)
      if (Math.abs(flow) > most / 4) expect(Math.abs(flow) * widthPerFlow).toBeLessThan(clear)
  })

  test('leaves as much as comes in and is made from fuel', () => {
    const sum = (some: readonly Ribbon[]): number => some.reduce((total, { flow }) => total + flow, 0)
    const into = sum(ribbons.filter(({ tail }) => tail))
    const out = sum(ribbons.filter(({ head }) => head))
    const fuelGas = out - into
    // Primary air takes up fuel: a good half to a whole of its own weight, physics.md section 4.
    const primary = burn.halfway.air.primary
    expect(fuelGas).toBeGreaterThan(0.3 * primary)
    expect(fuelGas).toBeLessThan(1.1 * primary)
  })

  test('rises from cool to hot, never below what it began with', () => {
    for (const { from, to, tail } of ribbons) {
      if (tail) expect(from.temperature).toBeLessThan(burn.halfway.temperature.flame)
      expect(to.temperature).toBeGreaterThan(270)
    }
    expect(Math.max(...ribbons.map(({ to }) => to.temperature))).toBeGreaterThan(800)
  })
})
