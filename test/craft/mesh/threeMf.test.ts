import { describe, expect, it } from 'vitest'
import { solidKernel } from '#cli/solidKernel.ts'
import { writeThreeMf } from '#craft/mesh/threeMf.ts'
import { meshVolume } from '#craft/solid/mesh.ts'
import { stoveSolids } from '#craft/solid/solids.ts'
import { needs } from '../../outsideProgram.ts'
import { examples } from '../solid/stoves.ts'
import { python } from './python.ts'

const kernel = await solidKernel()

interface Said {
  readonly unit: string
  readonly names: readonly string[]
  readonly dates: readonly (readonly number[])[]
  readonly metadata: Readonly<Record<string, string>>
  readonly objects: readonly { readonly name: string; readonly type: string; readonly volume: number }[]
  readonly items: readonly string[]
}

const script = new URL('readThreeMf.py', import.meta.url)
const metadata = {
  title: 'Tea & “toast” <hot>',
  description: 'Carbon monoxide.',
  application: 'Tinwright 0.1.0',
}

describe('3MF', () => {
  it.for(examples.map((stove) => [stove.name, stove] as const))(
    '%s: read back by Python',
    ([, stove], context) => {
      needs(context, 'python3')
      const meshes = stoveSolids(kernel, stove).map(({ mesh }) => mesh)
      const said = python<Said>(script, writeThreeMf(meshes, metadata))
      expect(said.unit).toBe('millimeter')
      expect(said.names).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model'])
      expect(said.metadata).toEqual({
        Title: metadata.title,
        Description: metadata.description,
        Application: metadata.application,
      })
      expect(said.objects.map(({ name }) => name)).toEqual([...stove.parts.keys()])
      expect(said.items).toEqual(meshes.map((_, index) => String(index + 1)))
      for (const [index, { volume, type }] of said.objects.entries()) {
        expect(type).toBe('model')
        expect(volume / meshVolume(meshes[index]!)).toBeCloseTo(1, 4)
      }
      expect(said.dates).toEqual(said.names.map(() => [1980, 1, 1, 0, 0, 0]))
    },
  )

  it('gives the same bytes wherever and whenever it is written', () => {
    const [mesh] = stoveSolids(kernel, examples[0]!).map((one) => one.mesh)
    const zone = process.env.TZ
    const written = ['UTC', 'Pacific/Auckland', 'America/Lima'].map((name) => {
      process.env.TZ = name
      return Buffer.from(writeThreeMf([mesh!], metadata)).toString('base64')
    })
    if (zone === undefined) delete process.env.TZ
    else process.env.TZ = zone
    expect(new Set(written).size).toBe(1)
  })
})
