import { long, onRuleAtLeast } from '#basis/text/bothUnits.ts'
import type { Check } from '../context.ts'
import { stop } from '../finding.ts'
import { called } from '../phrase.ts'
import { FIT } from '../rules.ts'

/** Parts that would reach into the ground: a can that hangs deeper than its host is high. */
export const aboveGround: Check = ({ placed }) =>
  placed
    .filter(({ base }) => base < -FIT.touching.value)
    .map(({ name, base }) =>
      stop(
        'fit.below-ground',
        { part: name },
        `${called(name)} would reach ${long(-base)} below the ground.`,
        `Use a part at least ${onRuleAtLeast(-base)} shorter, or raise what it is placed on.`,
      ),
    )
