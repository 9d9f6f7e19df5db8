import { long, onRuleAtLeast, onRuleAtMost } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import { bodyInside, insideHeight, isWhole } from '#stove/can/ends.ts'
import { narrowestInside } from '#stove/can/taper.ts'
import { reachDown, stepDepth, sunk } from '#stove/check/drill/drillReach.ts'
import { DRILL } from '#stove/check/rules.ts'
import type { Bit, CanPart, Opening, Part, Shelf, Stove } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'
import { bitFor, isForStepDrill, isSameSize, type NamedOpening, openingsIn } from './making.ts'

/** One row or pattern in the drill schedule. */
export interface DrillHoles extends NamedOpening {
  readonly count: number
  readonly from: 'outside' | 'inside'
  /** How the tin is held up under the bit. */
  readonly held: string
}

/** All that is drilled with one bit before it is changed. */
export interface DrillJob {
  readonly bit: string
  readonly diameter: Metres
  /** `pilot`: the small hole that the right bit follows. */
  readonly purpose: 'pilot' | 'hole'
  readonly tool: 'twist bit' | 'step drill'
  /** Null where no shelf was given. */
  readonly owned: boolean | null
  readonly count: number
  readonly holes: readonly DrillHoles[]
  /** What to mind with this bit. */
  readonly manner: string
}

/** Up to this a bit starts in a punch mark; above it wanders without a pilot [m]. Common practice, no source. */
const PILOT_ABOVE = 0.0045
/** What a pilot is drilled with where the shelf does not say [m]. Common practice, no source. */
const PILOT: Bit = { name: '3 mm', diameter: 0.003 as Metres }
const PILOT_LEAST = 0.002
const PILOT_MOST = 0.0042
/** A block that goes in easily [m]. Workshop judgement, no source. */
const PLAY = 0.004

/** The smallest bit on the shelf that serves for a pilot. */
const pilotBit = (shelf: Shelf | null): Bit => {
  const fit = (shelf?.bits ?? []).filter(
    ({ name, diameter }) => diameter >= PILOT_LEAST && diameter <= PILOT_MOST && !name.endsWith(' step'),
  )
  const near = ({ diameter }: Bit): number => Math.abs(diameter - PILOT.diameter)
  return [...fit].sort((one, other) => near(one) - near(other))[0] ?? PILOT
}

/** The end that stands open while the walls are drilled: the food came out of it; null where both stay. */
export const emptiedBy = ({ can }: CanPart): 'bottom' | 'top' | null => {
  if (can.top.kind === 'cut') return 'top'
  if (can.bottom.kind === 'cut' && !isWhole(can.bottom)) return isWhole(can.top) ? 'bottom' : 'top'
  if (!isWhole(can.top)) return 'top'
  return isWhole(can.bottom) ? null : 'bottom'
}

/** Clear width that a block has to pass [m]. */
const mouth = (part: CanPart, end: 'bottom' | 'top'): number => {
  const which = part.can[end]
  return which.kind === 'pull-off' || which.kind === 'friction'
    ? Math.min(which.opening.value, narrowestInside(part.can).value)
    : narrowestInside(part.can).value
}

const wallHeld = (part: CanPart, diameter: number): string => {
  if (diameter > DRILL.chuckCapacity.value + 1e-9)
    return `No block here: the step drill goes about ${long(stepDepth(diameter))} into the can. Hold the can in a cradle of two battens, clamped.`
  const end = emptiedBy(part)
  if (end === null)
    return 'Both ends stay on, so no block goes in: lay the can in a cradle of two battens, clamp it, and press lightly.'
  return `Put a block of wood into the can, through its open ${end}, up to ${onRuleAtMost(mouth(part, end) - PLAY)} thick: drill onto it, so that the wall does not give.`
}

/** An end of a can, drilled from outside unless the end lies too deep for that. */
const endHeld = (
  part: CanPart,
  opening: Extract<Opening, { kind: 'pattern' }>,
): { readonly from: DrillHoles['from']; readonly held: string } => {
  const face = opening.face === 'top' ? 'top' : 'bottom'
  const inside = bodyInside(part.can).value / 2
  const furthest = Math.max(...opening.holes.map(({ radius }) => radius))
  if (furthest > reachDown(opening.diameter, sunk(part, face), inside) + 1e-9)
    return { from: 'inside', held: 'From inside, the end lying flat on a board.' }
  const far = face === 'bottom' ? 'top' : 'bottom'
  if (isWhole(part.can[far]))
    return { from: 'outside', held: 'The can is closed: clamp it in a cradle and press lightly.' }
  return {
    from: 'outside',
    held: `Stand the can, ${face} up, over a post of wood a little over ${onRuleAtLeast(insideHeight(part.can))} high and up to ${onRuleAtMost(mouth(part, far) - PLAY)} thick, so that the ${face} rests on wood.`,
  }
}

const heldAs = (part: Part, opening: Opening, diameter: number): Pick<DrillHoles, 'from' | 'held'> => {
  if (part.form !== 'can')
    return { from: 'outside', held: 'Flat on a board of scrap wood, clamped down on two sides.' }
  return opening.kind === 'pattern'
    ? endHeld(part, opening)
    : { from: 'outside', held: wallHeld(part, diameter) }
}

const mannerOf = (tool: DrillJob['tool'], diameter: number, purpose: DrillJob['purpose']): string => {
  if (purpose === 'pilot')
    return 'Every punch mark of these rows, before any bit is changed. Fast, light pressure.'
  if (tool === 'step drill')
    return `Slowly; stop as soon as the step of ${long(diameter)} is through, and mark that step with a felt pen first.`
  return diameter > 0.008
    ? 'Slowly and clamped: a bit as wide as this grabs thin tin as it breaks through.'
    : 'Middling speed; ease off as it breaks through.'
}

/** The bit of the shelf that is taken for a size: above 13 mm a step drill before a bit of reduced shank. */
const fromShelf = (shelf: Shelf | null, name: string, diameter: number): Bit | null => {
  const same = (shelf?.bits ?? []).filter((bit) => isSameSize(bit.diameter, diameter))
  const wide = diameter > DRILL.chuckCapacity.value
  return (
    same.find((bit) => bit.name === name) ??
    same.find((bit) => bit.name.endsWith(' step') === wide) ??
    same[0] ??
    null
  )
}

/**
 * What is drilled with which bit, in an order in which each bit is put in once: the pilot for all that needs one, then
 * from the smallest bit to the largest.
 */
export const drillSchedule = (stove: Stove, shelf: Shelf | null): readonly DrillJob[] => {
  const pilot = pilotBit(shelf)
  const piloted: DrillHoles[] = []
  const jobs: { bit: string; diameter: Metres; step: boolean; owned: boolean | null; holes: DrillHoles[] }[] =
    []
  for (const { part, opening, in: body, what } of openingsIn(stove)) {
    const wanted = bitFor(what)
    if (wanted === null) continue
    const owned = fromShelf(shelf, wanted.name, wanted.diameter)
    const bit = owned ?? wanted
    const holes = { part, opening, count: holeCount(what), ...heldAs(body, what, wanted.diameter) }
    // A pilot goes through onto the block whatever follows it.
    if (wanted.diameter > PILOT_ABOVE) piloted.push({ ...holes, ...heldAs(body, what, pilot.diameter) })
    const job = jobs.find((one) => one.bit === bit.name)
    if (job !== undefined) job.holes.push(holes)
    else
      jobs.push({
        bit: bit.name,
        diameter: wanted.diameter,
        step: isForStepDrill(bit),
        owned: shelf === null ? null : owned !== null,
        holes: [holes],
      })
  }
  const total = (holes: readonly DrillHoles[]): number => holes.reduce((sum, { count }) => sum + count, 0)
  const pilotJob: readonly DrillJob[] =
    piloted.length === 0
      ? []
      : [
          {
            bit: pilot.name,
            diameter: pilot.diameter,
            purpose: 'pilot',
            tool: 'twist bit',
            owned: shelf === null ? null : shelf.bits.some(({ name }) => name === pilot.name),
            count: total(piloted),
            holes: piloted,
            manner: mannerOf('twist bit', pilot.diameter, 'pilot'),
          },
        ]
  return [
    ...pilotJob,
    ...jobs
      .sort((one, other) => one.diameter - other.diameter)
      .map(({ bit, diameter, step, owned, holes }): DrillJob => {
        const tool = step ? 'step drill' : 'twist bit'
        return {
          bit,
          diameter,
          purpose: 'hole',
          tool,
          owned,
          count: total(holes),
          holes,
          manner: mannerOf(tool, diameter, 'hole'),
        }
      }),
  ]
}
