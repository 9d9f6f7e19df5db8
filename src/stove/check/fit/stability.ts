import { long, onRuleAtLeast } from '#basis/text/bothUnits.ts'
import { type Check, isCan } from '../context.ts'
import { note } from '../finding.ts'
import { called } from '../phrase.ts'
import { STAND } from '../rules.ts'
import { outerAt } from './mouth.ts'

/** How far the stove leans before the middle of what stands on it is over the edge of its foot. */
export const stability: Check = ({ stove, placed }) => {
  const feet = placed
    .filter(isCan)
    .filter(({ placement }) => placement.place === 'on ground')
    .map((foot) => ({ foot, width: outerAt(foot.part, 'bottom')?.value ?? 0 }))
    .sort((one, other) => other.width - one.width)
  const widest = feet[0]
  if (widest === undefined) return []
  const top = Math.max(...placed.map((part) => part.top))
  const lean = (Math.atan(widest.width / 2 / top) * 180) / Math.PI
  if (lean >= STAND.tipAngle.value) return []
  const wanted = 2 * top * Math.tan((STAND.tipAngle.value * Math.PI) / 180)
  const load = stove.potDiameter === null ? 'what stands on it' : 'the pot'
  return [
    note(
      'stand.tips',
      { part: widest.foot.name },
      `The stove is ${long(top)} high on a foot of ${long(widest.width)}: at a lean of ${lean.toFixed(0)}° the middle of ${load} is over its edge, and it tips.`,
      `Peg it down, stand it in a dish of sand, or give ${called(widest.foot.name)} a foot ${onRuleAtLeast(wanted)} wide.`,
    ),
  ]
}
