import { long, onRuleAtLeast } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import { type Check, isCan } from '../context.ts'
import { stop, warn } from '../finding.ts'
import { called } from '../phrase.ts'
import { FIT } from '../rules.ts'
import { ledgeOn, mouthAt } from './mouth.ts'

/** The pot on the can or disc that stands highest. */
export const potFits: Check = ({ stove, placed }) => {
  if (stove.potDiameter === null) return []
  const carriers = placed.filter(({ part }) => part.form !== 'band').sort((one, other) => other.top - one.top)
  const carrier =
    carriers.filter(isCan).find(({ part, top }) => part.role === 'pot stand' && top === carriers[0]?.top) ??
    carriers[0]
  if (carrier === undefined) return []
  const mouth = mouthAt(carrier.part, 'top')
  if (mouth === null) return []
  const pot = { value: stove.potDiameter, tolerance: 0 as Metres }
  const ledge = ledgeOn(pot, mouth)
  const sizes = `The pot is ${long(pot.value)} wide and the top of ${called(carrier.name)} is open ${long(mouth.value)}`
  const wanted = `at least ${onRuleAtLeast(mouth.value + 2 * FIT.potOverhang.value)}`
  if (ledge.worst <= 0)
    return [
      stop(
        'pot.falls-in',
        { part: carrier.name },
        `${sizes}: it falls in.`,
        `Use a pot of ${wanted}, or lay two crossed rods over the stand.`,
      ),
    ]
  if (ledge.nominal < FIT.potOverhang.value)
    return [
      warn(
        'pot.narrow-ledge',
        { part: carrier.name },
        `${sizes}: it rests on ${long(ledge.nominal)} all round and slips in when it is nudged.`,
        `Use a pot of ${wanted}, or lay two crossed rods over the stand.`,
      ),
    ]
  return []
}
