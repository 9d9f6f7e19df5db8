import { bad, good, type Outcome } from '#basis/problem.ts'
import type { Degrees, Metres } from '#basis/units.ts'
import type { CanEnd, Part, Placement, Stove } from '#stove/model.ts'

/** A part where it stands in the stove. */
export interface PlacedPart {
  readonly name: string
  readonly part: Part
  readonly placement: Placement
  /** The part's bottom edge (a disc's lower face) above the ground [m]. */
  readonly base: Metres
  /** The part's top edge (a disc's upper face) above the ground [m]. */
  readonly top: Metres
  /** Turn of the part's front mark from the stove's front, clockwise from above [deg]. */
  readonly turned: Degrees
}

/** Height of a part along the stove's axis [m]. */
export const partHeight = (part: Part): Metres => {
  switch (part.form) {
    case 'can':
      return part.can.height.value
    case 'disc':
      return part.thickness
    case 'band':
      return part.height
  }
}

/** Upper face of a can's bottom end above its bottom edge; 0 where there is no floor to stand on [m]. */
const standingHeight = (end: CanEnd): number => (end.kind === 'plain' ? end.countersink : 0)

const baseOf = (placement: Placement, part: Part, host: PlacedPart | null): number => {
  if (host === null) return placement.raised
  switch (placement.place) {
    case 'on ground':
      return placement.raised
    case 'stands in': {
      const floor = host.part.form === 'can' ? standingHeight(host.part.can.bottom) : partHeight(host.part)
      return host.base + floor + placement.raised
    }
    case 'hangs in':
      return host.top - partHeight(part) + placement.raised
    case 'sits on':
      return host.top + placement.raised
    case 'slips over':
    case 'slips into':
      return host.base + placement.raised
  }
}

/**
 * Works out where every part of a stove stands, in assembly order. Heights in metres above the ground.
 * Refuses a placement whose part or host is not there; `readStove` has already said so in the maker's
 * words, so a stove read from a file never fails here.
 */
export const placeParts = (stove: Stove): Outcome<readonly PlacedPart[]> => {
  const placed = new Map<string, PlacedPart>()
  for (const [index, placement] of stove.assembly.entries()) {
    const part = stove.parts.get(placement.part)
    const host = placement.host === null ? null : placed.get(placement.host)
    if (part === undefined || host === undefined) {
      const missing = part === undefined ? placement.part : String(placement.host)
      return bad({
        code: 'assembly.missing',
        field: `assembly.${index}`,
        value: missing,
        allowed: `a part of this stove that is placed before it (${[...placed.keys()].join(', ') || 'none yet'})`,
        fix: 'Name a part from "parts", and place hosts before the parts they carry.',
      })
    }
    const base = baseOf(placement, part, host)
    placed.set(placement.part, {
      name: placement.part,
      part,
      placement,
      base: base as Metres,
      top: (base + partHeight(part)) as Metres,
      turned: placement.turned,
    })
  }
  return good([...placed.values()])
}
