import { type End, lengthOf, middleOf, placesAlong, type RibbonPlace, type Stretch } from './bend.ts'
import type { HalfPoint } from './half.ts'

/** Air or gas on its way, as wide as there is much of it. One half of the picture; millimetres. */
export interface Ribbon {
  readonly stretches: readonly Stretch[]
  readonly medium: 'air' | 'gas'
  /** Of both sides together [kg/s]. */
  readonly flow: number
  readonly from: RibbonEnd
  readonly to: RibbonEnd
  /** Whether it comes from the open air, or ends there. */
  readonly tail: boolean
  readonly head: boolean
  /** Where arrows sit that say which way it flows. */
  readonly arrows: readonly RibbonPlace[]
}

export interface RibbonEnd {
  readonly at: HalfPoint
  /** [K] */
  readonly temperature: number
}

/** Between two arrows, and the shortest ribbon that has one [mm]. */
const ARROW_PITCH = 24
const SHORTEST_WITH_ARROW = 8

const arrowsOn = (
  stretches: readonly Stretch[],
  fromOpen: boolean,
  toOpen: boolean,
): readonly RibbonPlace[] => {
  const length = lengthOf(stretches)
  if (length < SHORTEST_WITH_ARROW) return []
  // An open end has its own arrow head.
  const count = toOpen ? Math.floor(length / ARROW_PITCH) : Math.max(1, Math.round(length / ARROW_PITCH))
  const shares = Array.from({ length: count }, (_, i) => (i + (fromOpen ? 0.6 : 0.5)) / count)
  return placesAlong(
    stretches,
    shares.filter((share) => share < 1),
  )
}

export interface Course {
  readonly stretches: readonly Stretch[]
  readonly start: End
  readonly finish: End
}

export const ribbon = (
  { stretches, start, finish }: Course,
  {
    medium,
    flow,
    temperatures,
    tail = false,
    head = false,
    arrows = true,
  }: {
    readonly medium: Ribbon['medium']
    readonly flow: number
    readonly temperatures: readonly [from: number, to: number]
    readonly tail?: boolean
    readonly head?: boolean
    readonly arrows?: boolean
  },
): Ribbon => ({
  stretches,
  medium,
  flow,
  from: { at: middleOf(start), temperature: temperatures[0] },
  to: { at: middleOf(finish), temperature: temperatures[1] },
  tail,
  head,
  arrows: arrows ? arrowsOn(stretches, tail, head) : [],
})
