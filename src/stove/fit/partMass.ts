import { type Kilograms, type Metres, toRadians } from '#basis/units.ts'
import { canMass, STEEL_DENSITY } from '#stove/can/mass.ts'
import type { Opening, Part } from '#stove/model.ts'
import { openingArea } from '#stove/opening/area.ts'

/** Tin cut away for an opening [m2]. A vane is bent out of its disc and takes nothing away. */
const cutAway = (opening: Opening): number => (opening.kind === 'vanes' ? 0 : openingArea(opening))

const cutAwayVolume = (part: Part): number => {
  let volume = 0
  for (const opening of part.openings.values()) {
    const wall =
      part.form !== 'can' ? part.thickness : opening.kind === 'row' ? part.can.bodyWall : part.can.endWall
    volume += cutAway(opening) * wall
  }
  return volume
}

/** A strip that goes once round a body, laid flat [m]. */
export const bandLength = (bodyDiameter: Metres, thickness: Metres): Metres =>
  (Math.PI * (bodyDiameter + thickness)) as Metres

/** How far vanes stand out of the face they are bent from [m]. */
export const vaneRise = (opening: Opening): Metres =>
  (opening.kind === 'vanes' ? opening.width * Math.sin(toRadians(opening.angle)) : 0) as Metres

/**
 * Mass of a part as cut, from its tin thickness [kg]. Screws, handles and feet are not known here. A band needs
 * the length it is cut to.
 */
export const partMass = (part: Part, length: Metres): Kilograms => {
  const removed = STEEL_DENSITY * cutAwayVolume(part)
  switch (part.form) {
    case 'can':
      return (canMass(part.can) - removed) as Kilograms
    case 'disc':
      return (STEEL_DENSITY * (Math.PI / 4) * part.diameter.value ** 2 * part.thickness -
        removed) as Kilograms
    case 'band':
      return (STEEL_DENSITY * length * part.height * part.thickness - removed) as Kilograms
  }
}
