import type { AirPassage } from './airState.ts'
import type { SectionGeometry } from './geometry.ts'
import { mm } from './half.ts'
import { type Rooms, ringOf } from './regions.ts'
import { spanLength } from './span.ts'

/**
 * A place where air or gas goes through the tin, on one side of the cut. In a wall it lies at a radius and flows
 * inwards; in a plate it lies at a height and flows upwards.
 */
export interface Gate {
  readonly passage: AirPassage
  readonly tin: 'wall' | 'plate'
  /** Room on the outer or lower side, and on the inner or upper side; null is the open air. */
  readonly before: number | null
  readonly behind: number | null
  /** Middle of what flows [mm]. */
  readonly r: number
  readonly z: number
  /** On the axis the two halves meet: what flows lies against it. */
  readonly onAxis: boolean
  /** Clear size of the opening in the cut [mm]. */
  readonly clear: number
  /** On this side of the cut, inwards or upwards positive [kg/s]. */
  readonly flow: number
}

type Bare = Omit<Gate, 'passage' | 'before' | 'behind'>

/** Holes of a pattern share its flow; one in the middle belongs to both sides. */
const patternGates = (
  holes: readonly { readonly middle: number; readonly from: number; readonly to: number }[],
  z: number,
  half: number,
): readonly Bare[] => {
  const weights = holes.map(({ middle }) => (middle < 1e-6 ? 0.5 : 1))
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  return holes.map(({ middle, from, to }, i) => {
    const onAxis = middle < 1e-6
    return {
      tin: 'plate',
      r: middle,
      z,
      onAxis,
      clear: onAxis ? (to - from) / 2 : to - from,
      flow: (half * (weights[i] ?? 0)) / total,
    }
  })
}

const openingGates = (section: SectionGeometry, passage: AirPassage, half: number): readonly Bare[] => {
  const { part, opening, height } = passage
  const z = mm(height)
  const wall = section.walls.find((one) => one.part === part)
  const gap = wall?.holes.find((hole) => hole.opening === opening)
  if (wall !== undefined && gap !== undefined)
    return [{ tin: 'wall', r: wall.radius, z, onAxis: false, clear: spanLength(gap), flow: half }]
  for (const plate of section.plates) {
    if (plate.part !== part) continue
    const holes = plate.patterns.get(opening ?? '')
    if (holes !== undefined && holes.length > 0) return patternGates(holes, plate.height, half)
    const tongue = plate.tongues.find((one) => one.opening === opening)
    if (tongue !== undefined) {
      const r = (tongue.from + tongue.to) / 2
      return [{ tin: 'plate', r, z: plate.height, onAxis: false, clear: spanLength(tongue), flow: half }]
    }
  }
  return [throatGate(passage, half)]
}

/** Where air under an open bottom is drawn, as a share of its radius [1]. */
const RIM_SHARE = 0.75

/** A bore or a ring without tin. */
const throatGate = (passage: AirPassage, half: number): Bare => {
  const { inner, outer } = ringOf(passage)
  const whole = inner < 0.01 * outer
  // Air that comes in under an open bottom keeps near the rim: it comes from the side.
  const fromBelow = whole && passage.from === null
  const onAxis = whole && !fromBelow
  return {
    tin: 'plate',
    r: onAxis ? 0 : fromBelow ? outer * RIM_SHARE : (inner + outer) / 2,
    z: mm(passage.height),
    onAxis,
    clear: outer - inner,
    flow: half,
  }
}

/** A row of holes that lets less through than this share of the most is left out: a screw hole, a leak [1]. */
const NEGLIGIBLE = 0.006

/** Every place of the half section that something flows through, but for the top of the fuel. */
export const gatesOf = (
  section: SectionGeometry,
  passages: readonly AirPassage[],
  rooms: Rooms,
): readonly Gate[] => {
  const most = Math.max(...passages.map(({ massFlow }) => Math.abs(massFlow)))
  return passages.flatMap((passage) => {
    const { kind, from, to, massFlow } = passage
    const [before, behind] = [rooms.roomOf(from), rooms.roomOf(to)]
    if (kind === 'gap' || kind === 'bed' || before === behind) return []
    if (Math.abs(massFlow) < NEGLIGIBLE * most) return []
    const half = massFlow / 2
    const bare = kind === 'opening' ? openingGates(section, passage, half) : [throatGate(passage, half)]
    return bare.map((gate) => ({ ...gate, passage, before, behind }))
  })
}
