import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { solidKernel } from '#cli/solidKernel.ts'
import { readStove } from '#stove/document/read.ts'
import { firstHit, type Look, openingAt, rimsOf } from '#web/space/pick.ts'
import { spaceScene } from '#web/space/solids.ts'

const sceneOf = async (arrangement: 'whole' | 'cut') =>
  spaceScene(await solidKernel(), {
    stove: orThrow(readStove(readFileSync('examples/greylag.stove.json', 'utf8'))),
    arrangement,
  })

/** Seen by a pinhole from a bearing, level at a height: a millimetre at the axis is a pixel. */
const lookFrom = (
  bodies: Awaited<ReturnType<typeof sceneOf>>['bodies'],
  bearing: number,
  height: number,
): Look => {
  const angle = (bearing * Math.PI) / 180
  const [fx, fy] = [Math.sin(angle), Math.cos(angle)]
  const far = 900
  return {
    eye: [far * fx, far * fy, height],
    project: (x, y, z) => {
      const away = far - (x * fx + y * fy)
      return away <= 0 ? null : { x: (far * (y * fx - x * fy)) / away, y: (far * (height - z)) / away }
    },
    solids: bodies.map(({ positions }) => positions),
  }
}

describe('a press in space', () => {
  it('means the opening whose hole it lies in, whatever of it is nearest', async () => {
    const { bodies, outlines } = await sceneOf('whole')
    const rims = rimsOf(outlines)
    const outer = ['intake', 'windows', 'breathers']
    for (const name of outer) {
      const rim = rims.find((one) => one.opening === name)
      if (rim === undefined) throw new Error(`Greylag has ${name}`)
      const [x, y, z] = rim.middle
      const look = lookFrom(bodies, (Math.atan2(x, y) * 180) / Math.PI, z)
      expect(openingAt(rims, look, { x: 0, y: 0 }, 0)?.opening, name).toBe(name)
    }
  })

  it('never means one that tin hides: the ring of the fuel can behind its shell', async () => {
    const whole = await sceneOf('whole')
    const rims = rimsOf(whole.outlines)
    const ring = rims.filter(({ opening }) => opening === 'ring')
    expect(ring.length).toBeGreaterThan(10)
    for (const { middle } of ring) {
      const [x, y, z] = middle
      const look = lookFrom(whole.bodies, (Math.atan2(x, y) * 180) / Math.PI, z)
      expect(openingAt(rims, look, { x: 0, y: 0 }, 4)?.opening ?? null).not.toBe('ring')
    }
    const cut = await sceneOf('cut')
    const open = rimsOf(cut.outlines)
    // Cut open and seen from the front, the holes of the far half are in sight.
    const far = open.filter(({ opening, middle }) => opening === 'ring' && middle[1] < -40)
    expect(far.length).toBeGreaterThan(0)
    const found = far.filter(({ middle: [x, y, z] }) => {
      const look = lookFrom(cut.bodies, 0, z)
      const at = look.project(x, y, z)
      return at !== null && openingAt(open, look, at, 0)?.opening === 'ring'
    })
    expect(found.length).toBeGreaterThan(0)
  })

  it('takes the nearest hole within reach, and none beyond it', async () => {
    const { bodies, outlines } = await sceneOf('whole')
    const rims = rimsOf(outlines)
    const intake = rims.find(({ opening }) => opening === 'intake')
    if (intake === undefined) throw new Error('Greylag has an intake')
    const [x, y, z] = intake.middle
    const look = lookFrom(bodies, (Math.atan2(x, y) * 180) / Math.PI, z)
    // The hole is 15.9 mm wide: 10 px below its middle is some 2 px beside it.
    expect(openingAt(rims, look, { x: 0, y: 10 }, 6)?.opening).toBe('intake')
    expect(openingAt(rims, look, { x: 0, y: 10 }, 0)).toBeNull()
    expect(openingAt(rims, look, { x: 400, y: 0 }, 20)).toBeNull()
  })

  it('parts outlines into as many rims as there are holes, on either face of the wall', async () => {
    const { outlines } = await sceneOf('whole')
    const intake = outlines.filter(({ opening }) => opening === 'intake')
    expect(rimsOf(intake)).toHaveLength(2 * 13)
  })

  it('meets a triangle where it is', () => {
    const triangle = Float32Array.from([0, 0, 5, 10, 0, 5, 0, 10, 5])
    expect(firstHit(triangle, [1, 1, 0], [0, 0, 1])).toBeCloseTo(5, 12)
    expect(firstHit(triangle, [1, 1, 10], [0, 0, -1])).toBeCloseTo(5, 12)
    expect(firstHit(triangle, [9, 9, 0], [0, 0, 1])).toBe(Number.POSITIVE_INFINITY)
    expect(firstHit(triangle, [1, 1, 6], [0, 0, 1])).toBe(Number.POSITIVE_INFINITY)
  })
})
