import type { CubicMetres } from '#basis/units.ts'
import type { Can } from '#stove/model.ts'
import { insideHeight } from './ends.ts'
import { insideAtEnd } from './taper.ts'

/**
 * Room inside a can, brim-full where an end is open [m3]: a plain cylinder of the body’s inside diameter
 * between the ends, of a can that tapers a truncated cone, πh/12 (D² + Dd + d²). A model, for cans nobody filled: against the 20 published capacities [bib:cmi] a closed
 * can from its size code comes out between 3 % low and 8.5 % high, the shortest can worst. Most of it is that a
 * can is not measured brim-full: filled to 3/16 in below the rim, as the US rule for water capacity has it
 * [bib:cfr130], the same cylinder stays within 5.5 %. Beads, stepped ends and necks are left out.
 */
export const canCapacity = (can: Can): CubicMetres => {
  const [low, high] = [insideAtEnd(can, 'bottom').value, insideAtEnd(can, 'top').value]
  return ((Math.PI / 12) * (low * low + low * high + high * high) * insideHeight(can)) as CubicMetres
}
