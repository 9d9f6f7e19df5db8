import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { solidKernel } from '#cli/solidKernel.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'
import type { Body } from '#web/space/scene.ts'
import { drawnView, spaceScene } from '#web/space/solids.ts'

const stoveOf = (name: string): Stove =>
  orThrow(readStove(readFileSync(`examples/${name}.stove.json`, 'utf8')))

const corners = ({ positions, normals }: Body) =>
  Array.from({ length: positions.length / 3 }, (_, i) => ({
    at: [...positions.subarray(3 * i, 3 * i + 3)] as [number, number, number],
    normal: [...normals.subarray(3 * i, 3 * i + 3)] as [number, number, number],
  }))

describe('a stove in space', () => {
  it('has round walls shaded round: on the plain outside of the shell normals point straight out', async () => {
    const stove = stoveOf('redshank')
    const { bodies } = spaceScene(await solidKernel(), { stove, arrangement: 'whole' })
    const shell = stove.parts.get('shell')
    if (shell?.form !== 'can') throw new Error('Redshank has a shell')
    const radius = (shell.can.bodyDiameter.value * 1000) / 2
    const outside = corners(bodies.find(({ name }) => name === 'shell') as Body).filter(
      ({ at: [x, y], normal: [nx, ny, nz] }) =>
        Math.abs(Math.hypot(x, y) - radius) < 1e-3 && x * nx + y * ny > 0 && Math.abs(nz) < 0.1,
    )
    expect(outside.length).toBeGreaterThan(200)
    // Rims of holes meet the wall at a right angle and stay sharp; everything else is the wall itself.
    const straight = outside.filter(
      ({ at: [x, y], normal: [nx, ny] }) => (x * nx + y * ny) / Math.hypot(x, y) > 0.999,
    )
    expect(straight.length / outside.length).toBeGreaterThan(0.95)
  })

  it.each(['redshank', 'heron', 'greylag'])('puts every rim of %s where its tin is', async (name) => {
    const stove = stoveOf(name)
    const { bodies, outlines } = spaceScene(await solidKernel(), { stove, arrangement: 'whole' })
    for (const { part, opening, lines } of outlines) {
      const shape = stove.parts.get(part)?.openings.get(opening)
      if (shape === undefined || shape.kind === 'vanes') continue
      const body = bodies.find((one) => one.name === part) as Body
      expect(lines.length, `${part} ${opening}`).toBeGreaterThan(0)
      // A point of a rim has a corner of the solid’s own rim beside it: 0.3 mm off the tin, and half a facet away, which a chord of 0.06 mm lets be 4.9 mm long on 100 mm.
      const step = Math.max(6, 6 * Math.floor(lines.length / 6 / 60))
      for (let at = 0; at < lines.length; at += step) {
        let nearest = Infinity
        for (let i = 0; i < body.positions.length; i += 3)
          nearest = Math.min(
            nearest,
            Math.hypot(
              body.positions[i]! - lines[at]!,
              body.positions[i + 1]! - lines[at + 1]!,
              body.positions[i + 2]! - lines[at + 2]!,
            ),
          )
        expect(nearest, `${part} ${opening}`).toBeLessThan(
          shape.kind === 'row' && shape.hole.shape !== 'round' ? 8 : 3,
        )
      }
    }
  })

  it('cut open, keeps nothing in front of the cut; the fuel lies in its can', async () => {
    const { bodies, outlines } = spaceScene(await solidKernel(), {
      stove: stoveOf('redshank'),
      arrangement: 'cut',
    })
    for (const body of bodies) for (const { at } of corners(body)) expect(at[1]).toBeLessThan(1e-3)
    for (const { lines } of outlines)
      for (let at = 0; at < lines.length; at += 6)
        expect(lines[at + 1]! + lines[at + 4]!).toBeLessThanOrEqual(0)
    expect(bodies.some(({ stuff }) => stuff === 'fuel')).toBe(true)
  })

  it('is as high as it stands, and higher taken apart', async () => {
    const kernel = await solidKernel()
    const of = (arrangement: 'whole' | 'exploded') =>
      spaceScene(kernel, { stove: stoveOf('greylag'), arrangement })
    expect(of('exploded').height).toBeGreaterThan(of('whole').height * 1.3)
  })

  it('is drawn where it cannot be shown', async () => {
    const kernel = await solidKernel()
    const svg = drawnView(kernel, { stove: stoveOf('heron'), arrangement: 'cut', dark: true })
    expect(svg).toMatch(/^<svg[\s\S]+<path[\s\S]+<\/svg>\s*$/)
    expect(svg).toContain('Heron, cut')
  })
})
