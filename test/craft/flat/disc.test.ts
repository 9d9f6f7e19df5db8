import { describe, expect, it } from 'vitest'
import { degrees, fromMillimetres } from '#basis/units.ts'
import { flatPatterns } from '#craft/flat/pattern.ts'
import { tongueSide } from '#craft/flat/vanes.ts'
import type { VanesOpening } from '#stove/model.ts'
import { circlesOf, drawingOf } from '../shapes.ts'
import { bareShell, pocketStove } from '../stoves.ts'

const one = (face: 'bottom' | 'top') =>
  flatPatterns(
    bareShell(
      90,
      {
        lone: {
          kind: 'pattern',
          duty: 'primary',
          face,
          layout: 'rings',
          diameter: fromMillimetres(6),
          bit: null,
          holes: [{ radius: fromMillimetres(20), bearing: degrees(90) }],
        },
      },
      { top: { kind: 'drawn' } },
    ),
  )

/** Where the lone hole lies from the middle of its disc. */
const fromMiddle = (drawing: ReturnType<typeof one>[number]): { readonly x: number; readonly y: number } => {
  const [edge] = circlesOf(drawing.shapes, 'paper')
  const [hole] = circlesOf(drawing.shapes, 'drill')
  if (edge === undefined || hole === undefined) throw new Error('an edge and a hole')
  return { x: hole.centre.x - edge.centre.x, y: hole.centre.y - edge.centre.y }
}

describe('an end of a can', () => {
  it('seen from above has its bearings clockwise, the front at the foot', () => {
    const { x, y } = fromMiddle(drawingOf(one('top'), 'Top of shell, from above'))
    expect(x).toBeCloseTo(-20, 9)
    expect(y).toBeCloseTo(0, 9)
  })

  it('seen from below has them anticlockwise', () => {
    const { x, y } = fromMiddle(drawingOf(one('bottom'), 'Bottom of shell, from below'))
    expect(x).toBeCloseTo(20, 9)
    expect(y).toBeCloseTo(0, 9)
  })

  it('has paper that lies flat in the recess of a seamed end', () => {
    const [edge] = circlesOf(drawingOf(one('bottom'), 'Bottom of shell, from below').shapes, 'paper')
    // Body 90 mm, wall 0.2 mm, end 0.22 mm: 89.16 mm between the sides of the recess.
    expect(2 * (edge?.radius ?? 0)).toBeLessThan(89.16)
    expect(2 * (edge?.radius ?? 0)).toBeGreaterThan(87.5)
  })
})

describe('a concentrator', () => {
  const drawing = drawingOf(flatPatterns(pocketStove()), 'Disc of concentrator, from above')
  const words = drawing.notes.join(' ').replaceAll('\u00a0', ' ')

  it('is cut to its size, with its bore', () => {
    expect(circlesOf(drawing.shapes, 'cut').map(({ radius }) => radius)).toEqual([41, 13])
  })

  it('has a fold and three cuts for every vane, as long and wide as they should be', () => {
    const folds = drawing.shapes.filter((shape) => shape.layer === 'fold')
    const cuts = drawing.shapes.filter((shape) => shape.layer === 'cut' && shape.kind === 'polyline')
    expect(folds).toHaveLength(8)
    expect(cuts).toHaveLength(8)
    for (const fold of folds)
      if (fold.kind === 'line')
        expect(Math.hypot(fold.to.x - fold.from.x, fold.to.y - fold.from.y)).toBeCloseTo(14, 9)
    for (const cut of cuts) {
      if (cut.kind !== 'polyline') continue
      expect(cut.closed).toBe(false)
      const sides = cut.points
        .slice(1)
        .map((point, index) =>
          Math.hypot(point.x - (cut.points[index]?.x ?? 0), point.y - (cut.points[index]?.y ?? 0)),
        )
      for (const [index, side] of [7.5, 14, 7.5].entries()) expect(sides[index]).toBeCloseTo(side, 9)
    }
  })

  it('says how its vanes are bent, and strikes their circles', () => {
    expect(words).toContain('8 vanes 7.5 mm (19/64 in) wide, from radius 19 mm (3/4 in) to 33 mm (1 5/16 in)')
    expect(words).toContain(
      'bend it up 40° along the dash-dot line, so that the gas turns clockwise seen from above',
    )
    expect(circlesOf(drawing.shapes, 'mark').map(({ radius }) => radius)).toEqual([19, 33, 37])
  })
})

describe('the side of its hinge a tongue lies on', () => {
  const side = (bend: VanesOpening['bend'], hand: VanesOpening['hand']): string =>
    tongueSide({ bend, hand } as VanesOpening)

  it('is the way the gas turns if bent up, the other way if bent down', () => {
    expect(side('up', 'clockwise')).toBe('clockwise')
    expect(side('up', 'anticlockwise')).toBe('anticlockwise')
    expect(side('down', 'clockwise')).toBe('anticlockwise')
    expect(side('down', 'anticlockwise')).toBe('clockwise')
  })

  it('agrees with the gas that slides along the tongue, worked out in space', () => {
    // The tongue's plane holds its hinge (along y) and rises or falls towards its free edge at +x by θ.
    // Gas comes up (0, 0, 1); what the plane leaves of that motion is its part within the plane.
    const slide = (rise: number): number => {
      const along = { x: Math.cos(rise), z: Math.sin(rise) }
      return along.z * along.x
    }
    expect(slide(Math.PI / 5)).toBeGreaterThan(0)
    expect(slide(-Math.PI / 5)).toBeLessThan(0)
  })
})

describe('a can with nothing to drill and no edge to cut it off along', () => {
  const endsOf = (more: Parameters<typeof bareShell>[2]) => flatPatterns(bareShell(90, {}, more))

  it('gets a drawing of the end that is cut out of it, along the inside of its wall, and says which', () => {
    const [drawing, ...rest] = endsOf({ top: { kind: 'open' } })
    expect(rest).toEqual([])
    // Body 90 mm, wall 0.2 mm.
    expect(circlesOf(drawing?.shapes ?? [], 'cut').map(({ radius }) => 2 * radius)).toEqual([
      expect.closeTo(89.6, 6),
    ])
    expect(drawing?.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))).toContain(
      'cut out along this line',
    )
    expect(drawing?.notes.join(' ')).toContain('Cut the top end out along the wall')
  })

  it('gets one drawing for two ends that are alike, and none where both stay', () => {
    expect(endsOf({ bottom: { kind: 'open' }, top: { kind: 'open' } }).map(({ title }) => title)).toEqual([
      'Both ends of shell, cut out',
    ])
    expect(endsOf({ top: { kind: 'drawn' } })).toEqual([])
  })
})
