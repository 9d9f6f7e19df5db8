import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import type { Drawing, Point } from '#craft/drawing.ts'
import { flatPatterns } from '#craft/flat/pattern.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'
import { drawingOf, frontOf, stripEnds } from '../shapes.ts'
import { pocketStove } from '../stoves.ts'

/** The damper's tin laid over the shell's wrap, hole over hole, both as drawn. */

const redshank = (): Stove =>
  orThrow(
    readStove(
      readFileSync(fileURLToPath(new URL('../../../examples/redshank.stove.json', import.meta.url)), 'utf8'),
    ),
  )

interface Place {
  /** Clockwise from the front [deg]. */
  readonly bearing: number
  /** Above the part's bottom edge [mm]. */
  readonly height: number
}

/** Middles of what is drilled or cut in a strip, left-out places too; windows by their corners. */
const middles = ({ shapes }: Drawing): readonly Point[] =>
  shapes.flatMap((shape): readonly Point[] => {
    if (shape.kind === 'circle' && (shape.layer === 'drill' || shape.layer === 'mark')) return [shape.centre]
    if (shape.kind !== 'polyline' || shape.layer !== 'cut' || shape.points.length !== 4) return []
    const sum = shape.points.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }))
    return [{ x: sum.x / 4, y: sum.y / 4 }]
  })

/** From the drawing alone: bearings by the front's pointer, heights by the lower edge. */
const placesOn = (drawing: Drawing, lowerEdge: number): readonly Place[] => {
  const { left, right, low } = stripEnds(drawing)
  const front = frontOf(drawing)
  const all = middles(drawing).map(({ x, y }) => ({
    bearing: (((((front - x) / (right - left)) * 360) % 360) + 360) % 360,
    height: y - low + lowerEdge,
  }))
  // What runs over the join is drawn at both ends.
  return all.filter(
    (place, index) => !all.slice(0, index).some((one) => Math.abs(one.bearing - place.bearing) < 1e-6),
  )
}

describe('damper and shell', () => {
  it.each([
    ['Redshank', redshank(), 3, 12, 0],
    // Its band hangs 2 mm high, on purpose.
    ['Lock-keeper’s pocket stove', pocketStove(), 3, 12, 2],
  ] as const)('of %s agree hole by hole within 0.01 mm, fully open', (_, stove, seam, count, lift) => {
    const drawings = flatPatterns(stove)
    const shell = stove.parts.get('shell')
    const placement = stove.assembly.find(({ part }) => part === 'damper')
    if (shell?.form !== 'can' || placement === undefined) throw new Error('a shell and a damper')
    const radius = (shell.can.bodyDiameter.value * 1000) / 2
    const holes = placesOn(drawingOf(drawings, 'Wrap of shell'), seam)
    const windows = placesOn(drawingOf(drawings, 'Flat tin of damper'), placement.raised * 1000)
    expect(holes).toHaveLength(count)
    expect(windows).toHaveLength(count)
    // Fully open: turned until the first window stands over the first hole.
    const turn = (holes[0] as Place).bearing - (windows[0] as Place).bearing
    const used = new Set<Place>()
    for (const window of windows) {
      const bearing = window.bearing + turn
      const near = holes
        .map((hole) => {
          const round = ((((bearing - hole.bearing + 180) % 360) + 360) % 360) - 180
          return {
            hole,
            away: Math.hypot((round * Math.PI * radius) / 180, window.height - lift - hole.height),
          }
        })
        .sort((a, b) => a.away - b.away)[0]
      expect(near?.away ?? Number.NaN).toBeLessThan(0.01)
      used.add(near?.hole as Place)
    }
    expect(used.size).toBe(count)
  })

  it('has a finger tab a quarter turn from the join to either side, folded at the upper edge', () => {
    const drawing = drawingOf(flatPatterns(redshank()), 'Flat tin of damper')
    const { left, right, low } = stripEnds(drawing)
    const folds = drawing.shapes.flatMap((shape) =>
      shape.kind === 'line' && shape.layer === 'fold' ? [shape] : [],
    )
    expect(folds.map(({ from, to }) => ((from.x + to.x) / 2 - left) / (right - left)).sort()).toEqual([
      expect.closeTo(0.25, 9),
      expect.closeTo(0.75, 9),
    ])
    for (const { from, to } of folds) {
      expect(Math.abs(to.x - from.x)).toBeCloseTo(16, 9)
      expect(from.y - low).toBeCloseTo(24, 9)
      expect(to.y).toBe(from.y)
    }
    const top = Math.max(
      ...drawing.shapes.flatMap((shape) =>
        shape.kind === 'polyline' && shape.layer === 'cut' ? shape.points.map(({ y }) => y) : [],
      ),
    )
    expect(top - low).toBeCloseTo(24 + 12, 9)
  })
})
