import { plural } from '#stove/check/phrase.ts'
import type { Part, Stove } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'
import { cansToFind } from '../shop/cans.ts'
import { drillSchedule } from '../shop/drilling.ts'
import { DEBURR_STEPS } from '../shop/finishing.ts'
import { CUTTING_CAUTIONS } from './cautions.ts'
import type { Bench } from './making/bench.ts'
import { bandSteps, boreSteps, vaneSteps, windowSteps } from './making/cutting.ts'
import { drillSteps, pilotStep } from './making/drilling.ts'
import { endSteps } from './making/ends.ts'
import { markSteps } from './making/marking.ts'
import { overviewPicture } from './picture/overview.ts'
import { itemOf } from './prepare.ts'
import type { BuildStep } from './step.ts'

const deburrStep = (bench: Bench): BuildStep => {
  const title = 'Deburr everything'
  return {
    key: 'deburr',
    title,
    sentences: ['Peel the templates off; what glue is left burns off with the first fire.', ...DEBURR_STEPS],
    parts: [...bench.stove.parts.keys()],
    makes: [],
    places: null,
    tools: ['countersink or large bit', 'half-round and round file', 'emery'],
    checks: [],
    cautions: CUTTING_CAUTIONS,
    picture: overviewPicture(
      title,
      [...bench.stove.parts].map(([name, part]) => {
        const count = [...part.openings.values()].reduce((sum, opening) => sum + holeCount(opening), 0)
        const words = count === 0 ? 'its edges' : `${plural(count, 'opening')}, both sides, and its edges`
        return itemOf(bench.stove, name, part, 'openings', `${name}: ${words}`, bench.cans)
      }),
    ),
  }
}

/** Everything that is done to the parts one by one, every opening in exactly one step. */
export const makingSteps = (stove: Stove): readonly BuildStep[] => {
  const bench: Bench = { stove, cans: cansToFind(stove, null), jobs: drillSchedule(stove, null) }
  const parts = [...stove.parts]
  const each = (
    steps: (bench: Bench, name: string, part: Part) => readonly BuildStep[],
  ): readonly BuildStep[] => parts.flatMap(([name, part]) => steps(bench, name, part))
  return [
    ...each(markSteps),
    ...pilotStep(bench),
    ...each(drillSteps),
    ...each(boreSteps),
    ...each(windowSteps),
    ...each(vaneSteps),
    ...each(bandSteps),
    ...each(endSteps),
    deburrStep(bench),
  ]
}
