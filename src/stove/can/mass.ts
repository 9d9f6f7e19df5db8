import type { Kilograms } from '#basis/units.ts'
import type { Can } from '#stove/model.ts'
import { CAN_DEFAULTS } from './defaults.ts'
import { outsideAt } from './ends.ts'
import { bodyAtEnd, insideAtEnd, slantHeight } from './taper.ts'

/** Steel, as section tables take it [kg/m3]. The tin on it (1 to 11 g/m2 a face) adds less than 1.5 %. [bib:bluebook] */
export const STEEL_DENSITY = 7850

const disc = (diameter: number): number => (Math.PI / 4) * diameter ** 2

/** Tin in one end and in the hook that holds it to the body [m3]. */
const endVolume = (can: Can, which: 'bottom' | 'top'): number => {
  const end = can[which]
  const inside = insideAtEnd(can, which).value
  const outside = bodyAtEnd(can, which).value
  if (end.kind === 'cut') return 0
  if (end.kind === 'drawn') return disc(outside) * can.endWall
  // A double seam is five layers, [bib:cfia]: chuck wall, cover hook and seaming wall of the end, wall and
  // hook of the body. The body’s own wall is counted with the body.
  const seamLine = Math.PI * ((outside + outsideAt(can, which).value) / 2)
  const hooks = seamLine * can.seamHeight * (2 * can.endWall + can.bodyWall)
  const countersink = end.kind === 'plain' ? end.countersink : CAN_DEFAULTS.countersink.value
  // Where the end was cut out, its chuck wall is left only as far down as the seam holds it.
  const chuckWall = Math.PI * inside * can.endWall * (end.kind === 'open' ? can.seamHeight : countersink)
  const left =
    end.kind === 'open' ? 0 : end.kind === 'plain' ? disc(inside) : disc(inside) - disc(end.opening.value)
  return hooks + chuckWall + left * can.endWall
}

/**
 * Mass of an empty can from its tin thickness, before anything is drilled [kg]. The side seam’s overlap,
 * the length that beads and stepped ends draw in, and lacquer are left out: a few percent together. As good as the wall
 * thickness is known: of 0.2 mm, 0.02 mm is a tenth of the mass.
 */
export const canMass = (can: Can): Kilograms => {
  const middle = can.bodyDiameter.value - can.bodyWall
  const body = Math.PI * middle * can.bodyWall * slantHeight(can)
  return (STEEL_DENSITY * (body + endVolume(can, 'bottom') + endVolume(can, 'top'))) as Kilograms
}
