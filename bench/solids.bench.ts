import { readFileSync } from 'node:fs'
import { orThrow } from '#basis/problem.ts'
import { solidKernel } from '#cli/solidKernel.ts'
import { arranged } from '#craft/solid/arrange.ts'
import { stoveSolids } from '#craft/solid/solids.ts'
import { viewSvg } from '#craft/view/svg.ts'
import { viewOf } from '#craft/view/view.ts'
import { readStove } from '#stove/document/read.ts'
import { timing } from './measure.ts'
import type { Row, Rows } from './row.ts'

const EXAMPLES = ['redshank', 'heron', 'greylag'] as const

const stoveOf = (name: string) =>
  orThrow(readStove(readFileSync(new URL(`../examples/${name}.stove.json`, import.meta.url), 'utf8')))

/** The solids of a stove, and the picture of it that the plan begins with; a plan has a second for everything. */
export const rows: Rows = async () => {
  const kernel = await solidKernel()
  const measured: Row[] = []
  for (const name of EXAMPLES) {
    const stove = stoveOf(name)
    const solids = stoveSolids(kernel, stove)
    const meshes = arranged(kernel, stove, solids, 'whole')
    const triangles = meshes.reduce((sum, mesh) => sum + mesh.triangles.length / 3, 0)
    const build = await timing(() => stoveSolids(kernel, stove))
    const draw = await timing(() => viewSvg(viewOf(meshes, { fit: { width: 110, height: 160 } }), stove.name))
    measured.push(
      {
        name: `solids of ${name} (${triangles} triangles)`,
        value: build.median * 1000,
        unit: 'ms',
        bar: { atMost: 150 },
      },
      { name: `view of ${name}, whole, as SVG`, value: draw.median * 1000, unit: 'ms', bar: { atMost: 150 } },
    )
  }
  return measured
}
