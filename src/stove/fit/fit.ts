import type { Metres } from '#basis/units.ts'
import type { WhichEnd } from '#stove/can/ends.ts'
import type { Can, Measured } from '#stove/model.ts'
import type { Clearance, Fit, FitKind } from './fitKind.ts'
import {
  canMating,
  canName,
  type Disc,
  discMating,
  type Mating,
  type Mouth,
  type Ring,
  ringMating,
} from './mating.ts'
import { fitSentence } from './sentence.ts'
import { FIT_THRESHOLDS } from './thresholds.ts'

export type { Clearance, Fit, FitKind } from './fitKind.ts'

export interface FitOptions {
  readonly innerName?: string
  readonly outerName?: string
  /** Which end of the outer can to try; either end where it may be turned over. */
  readonly through?: WhichEnd | 'either'
}

/** Where dimensions stand in their tolerance: 1 is inner large and outer small, −1 the other way. */
type Tightness = -1 | 0 | 1

/** From loose to tight. Every comparison below moves one way with tightness, so no rank is passed by twice. */
interface Ranked {
  readonly rank: number
  readonly kind: FitKind
  /** Whether the second goes into the first rather than the first into the second. */
  readonly over: boolean
}

const widestMouth = ({ mouths }: Mating): Mouth | null =>
  mouths.reduce<Mouth | null>(
    (widest, mouth) => (widest === null || mouth.opening.value > widest.opening.value ? mouth : widest),
    null,
  )

const at = (measured: Measured, sign: number): number => measured.value + sign * measured.tolerance

/** Opening less the width that is to pass [m], or null where there is no opening or nobody knows the width. */
const play = (mouth: Mouth | null, width: Measured | null, tightness: number): number | null =>
  mouth === null || width === null ? null : at(mouth.opening, -tightness) - at(width, tightness)

/** Whether a lip is so little wider than the opening that it can be pressed past, and what follows it goes through. */
const snaps = (
  lipPlay: number | null,
  mouth: Mouth | null,
  body: Measured | null,
  tightness: number,
): boolean =>
  lipPlay !== null &&
  mouth !== null &&
  body !== null &&
  lipPlay >= -FIT_THRESHOLDS.snap.value * at(mouth.opening, -tightness) &&
  at(mouth.opening, -tightness) >= at(body, tightness)

const rankAt = (inner: Mating, outer: Mating, tightness: Tightness): Ranked => {
  const outerMouth = widestMouth(outer)
  const innerMouth = widestMouth(inner)
  const into = play(outerMouth, inner.widest, tightness)
  // Seen from the outer one, which goes into the inner one, tight is loose.
  const over = play(innerMouth, outer.widest, -tightness)
  if (into !== null && outerMouth !== null && into >= 0)
    return into >= FIT_THRESHOLDS.dropsIn.value * at(outerMouth.opening, -tightness)
      ? { rank: 0, kind: 'drops in', over: false }
      : { rank: 1, kind: 'slides in', over: false }
  if (over !== null && over >= 0) return { rank: 6, kind: 'goes over the outside', over: true }
  if (snaps(into, outerMouth, inner.bodyUnderLip, tightness))
    return { rank: 2, kind: 'snaps on the lip', over: false }
  if (snaps(over, innerMouth, outer.bodyUnderLip, -tightness))
    return { rank: 5, kind: 'snaps on the lip', over: true }
  const isUnderRecess =
    outerMouth === null &&
    inner.widest !== null &&
    at(inner.widest, tightness) <= at(outer.recess, -tightness)
  if (isUnderRecess) return { rank: 3, kind: 'does not go', over: false }
  const edgeOnEdge = inner.bareEdged && (outerMouth?.bareEdge ?? false)
  return { rank: 4, kind: edgeOnEdge ? 'does not go' : 'sits on the rim', over: false }
}

const clearanceOf = (inner: Mating, outer: Mating, over: boolean): Clearance | null => {
  const [going, host] = over ? [outer, inner] : [inner, outer]
  const mouth = widestMouth(host)
  const nominal = play(mouth, going.widest, 0)
  const least = play(mouth, going.widest, 1)
  const most = play(mouth, going.widest, -1)
  if (nominal === null || least === null || most === null) return null
  return { nominal: nominal as Metres, least: least as Metres, most: most as Metres }
}

const fitOf = (inner: Mating, outer: Mating): Fit => {
  const nominal = rankAt(inner, outer, 0)
  const tightest = rankAt(inner, outer, 1)
  const loosest = rankAt(inner, outer, -1)
  const mouth = widestMouth(nominal.over ? inner : outer)
  const told = {
    kind: nominal.kind,
    atTightest: tightest.kind,
    atLoosest: loosest.kind,
    certain: tightest.rank === loosest.rank,
    clearance: clearanceOf(inner, outer, nominal.over),
    through: mouth?.end ?? null,
  }
  return { ...told, sentence: fitSentence(told, inner, outer, nominal.over) }
}

/**
 * How one can goes with another, at the diameters as measured and at both ends of their tolerances [m].
 * Both are taken as round. The outer can may be turned over unless `through` names one of its ends.
 */
export const fitCans = (inner: Can, outer: Can, options: FitOptions = {}): Fit =>
  fitOf(
    canMating(inner, options.innerName ?? canName(inner), 'either'),
    canMating(outer, options.outerName ?? canName(outer), options.through ?? 'either'),
  )

/** How a can goes with a flat ring: through its opening, on it, or over it [m]. */
export const fitRing = (can: Can, ring: Ring, name: string = canName(can)): Fit =>
  fitOf(canMating(can, name, 'either'), ringMating(ring))

/** How a flat disc goes with a can: in through one of its ends, or on its rim [m]. */
export const fitDisc = (disc: Disc, can: Can, options: FitOptions = {}): Fit =>
  fitOf(
    discMating({ ...disc, name: options.innerName ?? disc.name ?? 'the disc' }),
    canMating(can, options.outerName ?? canName(can), options.through ?? 'either'),
  )

/** Every can with every other: the inner’s name, then the outer’s. */
export const fitMatrix = (cans: ReadonlyMap<string, Can>): ReadonlyMap<string, ReadonlyMap<string, Fit>> => {
  const named = [...cans]
  return new Map(
    named.map(([innerName, inner]) => [
      innerName,
      new Map(
        named
          .filter(([outerName]) => outerName !== innerName)
          .map(([outerName, outer]) => [outerName, fitCans(inner, outer, { innerName, outerName })]),
      ),
    ]),
  )
}
