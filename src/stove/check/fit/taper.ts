import { long } from '#basis/text/bothUnits.ts'
import { taperAngle } from '#stove/can/taper.ts'
import { type Check, isCan } from '../context.ts'
import { note } from '../finding.ts'
import { called } from '../phrase.ts'

/** Cans that taper: what is exact about them and what is not. */
export const taper: Check = ({ placed }) =>
  placed.filter(isCan).flatMap(({ name, part: { can } }) => {
    if (can.taper === undefined) return []
    const { bottom, top } = can.taper
    return [
      note(
        'can.tapers',
        { part: name },
        `The body of ${called(name)} tapers from ${long(bottom.value)} at its bottom edge to ${long(top.value)} at its top edge, ${Math.abs(taperAngle(can)).toFixed(1)}° a side. Air, heat, the section and the solids count it as a cylinder of ${long(can.bodyDiameter.value)}, its mean; fits count it where it is tightest, and templates follow the cone.`,
        'Nothing to do where both edges were measured. What is predicted of ring gaps along this wall is a mean: the gap is wider at one end and narrower at the other.',
      ),
    ]
  })
