import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { degrees, fromMillimetres } from '#basis/units.ts'
import type { Drawing } from '#craft/drawing.ts'
import { lengthRound } from '#craft/flat/development.ts'
import { flatPatterns } from '#craft/flat/pattern.ts'
import { PAPER_THICKNESS } from '#craft/flat/wrap.ts'
import reference from '#reference/wrapLength.json' with { type: 'json' }
import { circlesOf, drawingOf, frontOf, stripEnds, textsOf } from '../shapes.ts'
import { bareShell, pocketStove, round, row } from '../stoves.ts'

const wrapOf = (
  body: number,
  openings: Parameters<typeof bareShell>[1],
  more?: Parameters<typeof bareShell>[2],
) => drawingOf(flatPatterns(bareShell(body, openings, more)), 'Wrap of shell')

describe('the length of a wrap', () => {
  it('is the circumference where there is no thickness (arc pitch rows, geometry)', () => {
    for (const { diameter_mm, count, arc_mm } of reference.arcPitch)
      expect((lengthRound(fromMillimetres(diameter_mm), fromMillimetres(0)) * 1000) / count).toBeCloseTo(
        arc_mm,
        5,
      )
  })

  it('is 0.31 mm more for copy paper of 0.1 mm (seam and tinplate table)', () => {
    const { thickness_mm, adds_mm } = reference.paper
    expect(PAPER_THICKNESS * 1000).toBeCloseTo(thickness_mm, 9)
    const body = fromMillimetres(98)
    const added = (lengthRound(body, PAPER_THICKNESS) - lengthRound(body, fromMillimetres(0))) * 1000
    expect(added).toBeCloseTo(adds_mm, 2)
  })

  it('of a band is that of its own tin, halfway through', () => {
    const { left, right } = stripEnds(drawingOf(flatPatterns(pocketStove()), 'Flat tin of damper'))
    expect(right - left).toBeCloseTo(Math.PI * (83.2 + 0.2), 6)
  })
})

describe('a crowded row, whose ends meet between two holes or in one', () => {
  /** Level arms of punch crosses: they lie at the height of the holes. */
  const crosses = (shapes: Drawing['shapes']): number => {
    const levels = circlesOf(shapes, 'drill').map(({ centre }) => centre.y)
    return shapes.filter(
      (shape) =>
        shape.kind === 'line' &&
        shape.layer === 'dimension' &&
        shape.from.y === shape.to.y &&
        levels.some((y) => Math.abs(y - shape.from.y) < 1e-9),
    ).length
  }

  // 330.97 mm over 40 is 8.27 mm a place: between holes of 6.35 mm the join finds 1.9 mm, less than the arms of two crosses.
  it('draws a hole once where only its cross reaches over the end', () => {
    const { shapes } = wrapOf(105.25, { ring: row(round(6.35), 40, 40) })
    expect(circlesOf(shapes, 'drill')).toHaveLength(40)
    expect(crosses(shapes)).toBe(40)
  })

  // 5 mm a place: two rows of 4 mm holes half a pitch apart leave no gap anywhere.
  it('gives the punch one cross a hole, also where a hole is drawn at both ends', () => {
    const rows = (height: number, turned: number) => row(round(4), 48, height, { bearing: degrees(turned) })
    const { shapes } = wrapOf(76.4, { low: rows(30, 0), high: rows(50, 3.75) })
    expect(crosses(shapes)).toBe(2 * 48)
    const drilled = shapes.filter(
      ({ kind, layer }) => layer === 'drill' && (kind === 'circle' || kind === 'arc'),
    )
    expect(drilled.length).toBeGreaterThan(2 * 48)
  })
})

describe('a row on a wrap', () => {
  const rows = fc.record({
    body: fc.double({ min: 60, max: 240, noNaN: true }),
    count: fc.integer({ min: 1, max: 36 }),
    bearing: fc.double({ min: 0, max: 359.9, noNaN: true }),
    height: fc.double({ min: 12, max: 100, noNaN: true }),
  })

  it('closes exactly: every pitch, the one over the join included, is the length over the count', () => {
    fc.assert(
      fc.property(rows, ({ body, count, bearing, height }) => {
        const drawing = wrapOf(body, { ring: row(round(3), count, height, { bearing: degrees(bearing) }) })
        const { left, right } = stripEnds(drawing)
        const across = circlesOf(drawing.shapes, 'drill')
          .map(({ centre }) => centre.x - left)
          .filter((x) => x >= -1e-9 && x < right - left - 1e-9)
          .sort((a, b) => a - b)
        expect(across).toHaveLength(count)
        const length = right - left
        expect(length).toBeCloseTo(Math.PI * (body + 0.1), 6)
        const pitches = across.map((x, index) => (across[index + 1] ?? (across[0] as number) + length) - x)
        for (const pitch of pitches) expect(pitch).toBeCloseTo(length / count, 6)
      }),
    )
  })

  it('lies at its height above the paper’s lower edge, which rests on the seam', () => {
    const drawing = wrapOf(90, { low: row(round(6), 8, 20), high: row(round(6), 8, 61.5) })
    const { low } = stripEnds(drawing)
    const heights = new Set(
      circlesOf(drawing.shapes, 'drill').map(({ centre }) => Number((centre.y - low + 3).toFixed(6))),
    )
    expect(heights).toEqual(new Set([20, 61.5]))
  })

  it('runs from right to left seen from outside, as bearings clockwise from above do', () => {
    // Someone stands before the front; x to their right, y away from them, the can's axis at the origin.
    const radius = 45
    const bearing = 40
    const place = {
      x: -radius * Math.sin((bearing * Math.PI) / 180),
      y: -radius * Math.cos((bearing * Math.PI) / 180),
    }
    // Clockwise seen from above: from the front (0, -r) over their left (-r, 0) to the back.
    expect(place.x).toBeLessThan(0)
    const drawing = wrapOf(2 * radius, { one: row(round(5), 1, 30, { bearing: degrees(bearing) }) })
    const [hole] = circlesOf(drawing.shapes, 'drill')
    const { left, right } = stripEnds(drawing)
    const fromFront = (hole?.centre.x ?? 0) - frontOf(drawing)
    expect(Math.sign(fromFront)).toBe(Math.sign(place.x))
    expect(fromFront).toBeCloseTo((-bearing / 360) * (right - left), 6)
  })

  it('leaves out what is left out, and shows it crossed out', () => {
    const drawing = wrapOf(90, { intake: row(round(10), 12, 30, { leftOut: [1, 7] }) })
    expect(circlesOf(drawing.shapes, 'drill')).toHaveLength(10)
    const ghosts = circlesOf(drawing.shapes, 'mark')
    expect(ghosts).toHaveLength(2)
    const front = frontOf(drawing)
    expect(ghosts.some(({ centre }) => Math.abs(centre.x - front) < 1e-6)).toBe(true)
    for (const { centre, radius } of ghosts) {
      const strokes = drawing.shapes.filter(
        (shape) =>
          shape.kind === 'line' &&
          shape.layer === 'mark' &&
          Math.abs((shape.from.x + shape.to.x) / 2 - centre.x) < 1e-6 &&
          Math.abs(Math.hypot(shape.to.x - shape.from.x, shape.to.y - shape.from.y) - 2 * radius) < 1e-6,
      )
      expect(strokes).toHaveLength(2)
    }
    expect(drawing.notes.join(' ')).toContain('Places 1 (0°), 7 (180°), crossed out, stay whole.')
  })
})

describe('where the ends of a wrap meet', () => {
  const joinBearing = (drawing: ReturnType<typeof wrapOf>): number => {
    const { left, right } = stripEnds(drawing)
    return ((frontOf(drawing) - left) / (right - left)) * 360
  }

  it('is opposite the front where no hole is in the way', () => {
    expect(joinBearing(wrapOf(90, { intake: row(round(8), 5, 30) }))).toBeCloseTo(180, 6)
  })

  it('is on the side seam where one is known', () => {
    const drawing = wrapOf(90, { intake: row(round(8), 5, 30) }, { sideSeam: degrees(100) })
    expect(joinBearing(drawing)).toBeCloseTo(100, 6)
    expect(drawing.notes.join(' ')).toContain('The ends meet at 100°, on the can’s side seam.')
  })

  it('moves aside from a hole and cuts none', () => {
    const drawing = wrapOf(90, { intake: row(round(8), 4, 30) })
    const { left, right } = stripEnds(drawing)
    for (const { centre, radius } of circlesOf(drawing.shapes, 'drill')) {
      expect(centre.x - radius).toBeGreaterThan(left + 1)
      expect(centre.x + radius).toBeLessThan(right - 1)
    }
  })

  it('shows a hole it cannot help cutting whole on the overlap and in part at the bare end', () => {
    const drawing = wrapOf(80, {
      one: row(round(9), 20, 20),
      two: row(round(9), 20, 32, { bearing: degrees(9) }),
    })
    const { left, right } = stripEnds(drawing)
    const cut = drawing.shapes.flatMap((shape) =>
      shape.kind === 'arc' && shape.layer === 'drill' ? [shape] : [],
    )
    expect(cut.length).toBeGreaterThan(0)
    for (const part of cut) {
      const whole = circlesOf(drawing.shapes, 'drill').find(
        ({ centre }) =>
          Math.abs(centre.x - part.centre.x - (right - left)) < 1e-6 && centre.y === part.centre.y,
      )
      expect(whole?.radius).toBe(part.radius)
      // What is left of the hole begins and ends on the end of the paper.
      for (const angle of [part.from, part.to])
        expect(part.centre.x + part.radius * Math.cos((angle * Math.PI) / 180)).toBeCloseTo(left, 6)
    }
  })
})

describe('what is written on a wrap', () => {
  it('gives size, count and height of a row in both units, and what the lower edge rests on', () => {
    const words = textsOf(wrapOf(110, { intake: row(round(12.7, '1/2 in'), 9, 24) }).shapes)
      .map(({ text }) => text.replaceAll('\u00a0', ' '))
      .join('\n')
    expect(words).toContain('intake: 9 × Ø 12.7 mm (1/2 in)')
    expect(words).toContain('centres 24 mm (15/16 in) up from the bottom edge')
    expect(words).toContain('lower edge rests on the bottom seam, 3 mm (1/8 in) above the can’s bottom edge')
    expect(words).toContain('FRONT')
    expect(words).toContain('Wrap of shell')
  })
})
