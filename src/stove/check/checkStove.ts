import type { Finding, Shelf, Stove } from '#stove/model.ts'
import { airPath } from './air/airPath.ts'
import { areaRatios } from './air/areaRatios.ts'
import { dutyPlace } from './air/dutyPlace.ts'
import { floorBlocked } from './air/floorBlocked.ts'
import { fuelLine } from './air/fuelLine.ts'
import { type Check, contextOf } from './context.ts'
import { damper } from './damper/damper.ts'
import { bitOnShelf } from './drill/bitOnShelf.ts'
import { drillReach } from './drill/drillReach.ts'
import { inOrder } from './finding.ts'
import { aboveGround } from './fit/aboveGround.ts'
import { collisions } from './fit/collisions.ts'
import { goingIn } from './fit/goingIn.ts'
import { potFits } from './fit/potFits.ts'
import { sitting } from './fit/sitting.ts'
import { stability } from './fit/stability.ts'
import { taper } from './fit/taper.ts'
import { faceSpacing } from './spacing/faceSpacing.ts'
import { rowEdges } from './spacing/rowEdges.ts'
import { rowSpacing } from './spacing/rowSpacing.ts'
import { rowsMeet } from './spacing/rowsMeet.ts'
import { sideSeam } from './spacing/sideSeam.ts'

/** Every check, by name. */
export const CHECKS = {
  aboveGround,
  airPath,
  areaRatios,
  bitOnShelf,
  collisions,
  damper,
  drillReach,
  dutyPlace,
  faceSpacing,
  floorBlocked,
  fuelLine,
  goingIn,
  potFits,
  rowEdges,
  rowSpacing,
  rowsMeet,
  sideSeam,
  sitting,
  stability,
  taper,
} as const satisfies Readonly<Record<string, Check>>

/**
 * What is wrong with a stove, or worth knowing, before anything is cut: worst first, then by part and
 * opening, the same order on every machine. With a shelf, bits are looked for on it and suggested from it.
 * Throws `BadInput` for an assembly that names parts that are not there, which a stove file never does
 * once it has been read.
 */
export const checkStove = (stove: Stove, shelf: Shelf | null): readonly Finding[] => {
  const context = contextOf(stove, shelf)
  return inOrder(Object.values(CHECKS).flatMap((check) => check(context)))
}
