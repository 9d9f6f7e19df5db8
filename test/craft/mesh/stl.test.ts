import { expect, it } from 'vitest'
import { solidKernel } from '#cli/solidKernel.ts'
import { writeStl } from '#craft/mesh/stl.ts'
import { stoveSolids } from '#craft/solid/solids.ts'
import { examples } from '../solid/stoves.ts'

const kernel = await solidKernel()
const meshes = stoveSolids(kernel, examples[0]!).map(({ mesh }) => mesh)
const count = meshes.reduce((sum, { triangles }) => sum + triangles.length / 3, 0)

it('is a header of 80 letters, a count, and 50 bytes a triangle', () => {
  const bytes = writeStl(meshes, 'Tinwright 0.1.0, millimetres')
  expect(bytes.length).toBe(84 + 50 * count)
  expect(new DataView(bytes.buffer).getUint32(80, true)).toBe(count)
  expect(new TextDecoder().decode(bytes.slice(0, 80))).toBe('Tinwright 0.1.0, millimetres'.padEnd(80))
})

it('gives every triangle a unit normal that points the way its corners turn', () => {
  const view = new DataView(writeStl(meshes, 'x').buffer)
  for (let at = 84; at < view.byteLength; at += 50) {
    const [nx, ny, nz, ax, ay, az, bx, by, bz, cx, cy, cz] = Array.from({ length: 12 }, (_, k) =>
      view.getFloat32(at + 4 * k, true),
    ) as [number, number, number, number, number, number, number, number, number, number, number, number]
    expect(Math.hypot(nx, ny, nz)).toBeCloseTo(1, 5)
    const [ux, uy, uz, vx, vy, vz] = [bx - ax, by - ay, bz - az, cx - ax, cy - ay, cz - az]
    const along = nx * (uy * vz - uz * vy) + ny * (uz * vx - ux * vz) + nz * (ux * vy - uy * vx)
    expect(along).toBeGreaterThan(0)
  }
})

it('puts blanks for letters the format does not know, and refuses a header that reads as its text form', () => {
  expect(new TextDecoder().decode(writeStl([], 'Größe Ω').slice(0, 8))).toBe('Gr  e   ')
  expect(() => writeStl([], 'solid stove')).toThrow(RangeError)
})
