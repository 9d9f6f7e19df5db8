import { BadInput, orThrow } from '#basis/problem.ts'
import type { Metres } from '#basis/units.ts'
import type { Can, CanEnd, Measured, Taper } from '#stove/model.ts'
import { CAN_DEFAULTS, wallClassOf } from './defaults.ts'
import { isSeamed } from './ends.ts'
import { canProblems } from './problems.ts'
import { readSizeCode } from './sizeCode.ts'
import { meanBody } from './taper.ts'

/**
 * What a maker measured or knows of a can; the rest comes from `CAN_DEFAULTS`. With `topBodyDiameter` it tapers,
 * and `bodyDiameter` is that at its bottom edge.
 */
export type CanMeasurements = Partial<Omit<Can, 'taper'>> &
  Pick<Can, 'height'> & { readonly topBodyDiameter?: Measured }

/** What is known of a can beyond its size code. */
export type CanOverrides = Omit<Partial<CanMeasurements>, 'code'>

const { seamOverhang, seamOverhangSpread } = CAN_DEFAULTS

const plainEnd = (): CanEnd => ({ kind: 'plain', countersink: CAN_DEFAULTS.countersink.value })

/** The diameter nobody measured, from the one somebody did; what is not known of the seam widens it. */
const acrossSeam = (measured: Measured, direction: 1 | -1): Measured => ({
  value: (measured.value + direction * 2 * seamOverhang.value) as Metres,
  tolerance: (measured.tolerance + 2 * seamOverhangSpread.value) as Metres,
})

/** Both edges of a body that tapers, the body halfway up, and the seam round the widest edge that has one. */
const taperedDiameters = (
  { seamDiameter, bodyDiameter, topBodyDiameter }: CanMeasurements,
  { bottom, top }: { readonly bottom: CanEnd; readonly top: CanEnd },
): (Pick<Can, 'seamDiameter' | 'bodyDiameter'> & { readonly taper: Taper }) | null => {
  if (topBodyDiameter === undefined) return null
  if (bodyDiameter === undefined)
    throw new BadInput([
      {
        code: 'can.taper-from',
        field: 'can.bodyDiameter',
        value: '',
        allowed: 'the body at the bottom edge, where "topBodyDiameter" says how wide it is at the top',
        fix: 'Measure the body across at its bottom edge too.',
      },
    ])
  const taper = { bottom: bodyDiameter, top: topBodyDiameter }
  const seamed = [...(isSeamed(bottom) ? [taper.bottom] : []), ...(isSeamed(top) ? [taper.top] : [])]
  const [rim] = seamed.toSorted((one, other) => other.value - one.value)
  const widest = taper.bottom.value > taper.top.value ? taper.bottom : taper.top
  return {
    seamDiameter: seamDiameter ?? (rim === undefined ? widest : acrossSeam(rim, 1)),
    bodyDiameter: meanBody(taper),
    taper,
  }
}

const diameters = (
  known: CanMeasurements,
  seamed: boolean,
): { readonly seamDiameter: Measured; readonly bodyDiameter: Measured } => {
  const { seamDiameter, bodyDiameter } = known
  if (seamDiameter !== undefined && bodyDiameter !== undefined) return { seamDiameter, bodyDiameter }
  if (seamDiameter !== undefined) return { seamDiameter, bodyDiameter: acrossSeam(seamDiameter, -1) }
  if (bodyDiameter !== undefined)
    // A can with no seam left anywhere is nowhere wider than its body.
    return { seamDiameter: seamed ? acrossSeam(bodyDiameter, 1) : bodyDiameter, bodyDiameter }
  throw new BadInput([
    {
      code: 'can.no-diameter',
      field: 'can.seamDiameter',
      value: '',
      allowed: 'a diameter over the seam, or of the body',
      fix: 'Measure the can across, outside.',
    },
  ])
}

/**
 * A can from what its maker measured; walls, seams and ends that are not given come from the table of
 * defaults [m]. Both ends are whole unless said otherwise, no beads are assumed. Throws `BadInput` where
 * the lengths cannot be a can.
 */
export const measuredCan = (known: CanMeasurements): Can => {
  const bottom = known.bottom ?? plainEnd()
  const top = known.top ?? plainEnd()
  const across =
    taperedDiameters(known, { bottom, top }) ?? diameters(known, isSeamed(bottom) || isSeamed(top))
  const walls = wallClassOf(across.seamDiameter.value)
  const can: Can = {
    code: known.code ?? null,
    ...across,
    height: known.height,
    bodyWall: known.bodyWall ?? walls.bodyWall,
    endWall: known.endWall ?? walls.endWall,
    bottom,
    top,
    seamHeight: known.seamHeight ?? CAN_DEFAULTS.seamHeight.value,
    beads: known.beads ?? [],
    sideSeam: known.sideSeam ?? null,
  }
  const problems = canProblems(can, 'can')
  if (problems.length > 0) throw new BadInput(problems)
  return can
}

/**
 * A can from its size code, closed at both ends unless said otherwise [m]. The code gives the diameter
 * over the seam and the height, the defaults the rest; what is measured goes into `overrides`. Throws
 * `BadInput` for a code that is none and for lengths that cannot be a can.
 */
export const canFromCode = (code: string, overrides: CanOverrides = {}): Can => {
  const size = orThrow(readSizeCode(code, 'code'))
  const nominal = {
    seamDiameter: { value: size.diameter, tolerance: CAN_DEFAULTS.diameterTolerance.value },
    height: { value: size.height, tolerance: CAN_DEFAULTS.heightTolerance.value },
  }
  return measuredCan({ ...nominal, ...overrides, code: size.code })
}
