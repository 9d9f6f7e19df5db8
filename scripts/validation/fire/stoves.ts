import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { orThrow } from '#basis/problem.ts'
import published from '#reference/publishedStoves.json' with { type: 'json' }
import { boilAnswer, burnFigures, usualWish } from '#science/answers/figures.ts'
import { type Firing, fire } from '#science/answers/run.ts'
import type { Bands, SampledRun } from '#science/bands/bands.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { mildDay } from '#science/site.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import { readStove } from '#stove/document/read.ts'
import type { BandRow, CheckSet } from '../row.ts'
import { bandOf, sampled } from './sampling.ts'

const KEYS = ['efficiency', 'efficiencyCharLeft', 'withChar', 'outlet', 'wallLoss'] as const
type Key = (typeof KEYS)[number]

/** What the water boiling test puts on: five litres, no lid. */
const LITRES = 5
const wish = { ...usualWish, lid: false }

const firingOf = (name: string): Firing => {
  const file = join(import.meta.dirname, '..', 'stoves', `${name}.stove.json`)
  const outcome = orThrow(fire(orThrow(readStove(readFileSync(file, 'utf8')))))
  if (outcome.kind === 'no burn') throw new Error(`${name}: ${outcome.noBurn.sentence}`)
  return outcome.firing
}

/** Heat that the walls give to the open air with the front half way down [W]. */
const wallLossOf = ({ plan, fuel }: Firing, coefficients: Coefficients): number | null => {
  const model = createSteadyModel({ plan, fuel, site: mildDay, coefficients, burntOff: true })
  const outcome = model.solve(0.5)
  return outcome.ok ? outcome.state.wallLoss : null
}

const run = (firing: Firing, coefficients: Coefficients): SampledRun<Key> => {
  const outcome = firing.burn(coefficients)
  if (!outcome.ok) return { outcome: outcome.failure.code, figures: {} }
  const { burn } = outcome
  const figures = burnFigures(burn, firing, wish, mildDay, coefficients)
  const boil = boilAnswer(burn, firing, wish, LITRES, mildDay, coefficients)
  const steady = burn.steps.filter(({ phase, alight }) => phase === 'wood gas' && alight > 0.99)
  const half = steady[Math.floor(steady.length / 2)]
  if (half === undefined) return { outcome: 'goes out', figures: {} }
  return {
    outcome: 'burns',
    figures: {
      efficiency: 100 * boil.efficiency,
      efficiencyCharLeft: 100 * boil.efficiencyCharCredited,
      withChar: 100 * (boil.efficiency + figures.charShare),
      outlet: half.outletTemperature - 273.15,
      wallLoss: wallLossOf(firing, coefficients),
    },
  }
}

const stoveBands = (name: string): Bands<Key> => {
  const firing = firingOf(name)
  return sampled(KEYS, (coefficients) => run(firing, coefficients))
}

const FAMILY =
  '[family](../scripts/validation/stoves/family.stove.json): two walls, fuel can Ø150 mm, 200 mm of air-dry chips, natural draught, no skirt; pot Ø240 mm with 5 litres and no lid'
const FIVE_KILOWATTS =
  '[five-kilowatts](../scripts/validation/stoves/five-kilowatts.stove.json): two walls, fuel can Ø195 mm, 240 mm of air-dry chips, natural draught, no skirt; pot Ø280 mm with 5 litres and no lid'
const SINGLE_WALL =
  '[single-wall](../scripts/validation/stoves/single-wall.stove.json): one can Ø200 × 260 mm, 90 mm of chips on a grate, holes and windows straight to the open'

const { efficiency, gasStove, bareWall } = published

/** An abstract does not say whether char that is left counts as fuel used. The formula of the water boiling test says that it does not. */
const bothReadings = (
  check: string,
  value: BandRow['published'],
  bands: Bands<Key>,
  stove: string,
  source: string,
): readonly BandRow[] => [
  {
    check: `${check}, char counted as left over`,
    published: value,
    ours: bandOf(bands, 'efficiencyCharLeft'),
    unit: '%',
    stove,
    source,
  },
  {
    check: `${check}, char counted as fuel used`,
    published: value,
    ours: bandOf(bands, 'efficiency'),
    unit: '%',
    stove,
    source,
  },
]

const efficiencyRows = (family: Bands<Key>): readonly BandRow[] => [
  ...(efficiency.rows as [string, number, number][]).flatMap(([fuel, low, high]) =>
    bothReadings(`efficiency with ${fuel}`, [low, high], family, FAMILY, efficiency.source),
  ),
  {
    check: 'efficiency and char together',
    published: efficiency.withChar as [number, number],
    ours: bandOf(family, 'withChar'),
    unit: '%',
    stove: `${FAMILY}; heat of the char left added, ${efficiency.withCharNote}`,
    source: efficiency.source,
  },
]

const stoves: CheckSet = {
  title: 'whole stoves that others built and measured',
  source: 'see each row',
  standing: 'measurement',
  note: 'Our 5–95 % band from 64 sets of the coefficient table, the whole burn with its pot each time. None of these stoves is described well enough to be copied: each row names what was worked out in its place. No abstract says whether the char that is left counts as fuel used: both readings stand here, and one of the two is the right one.',
  rows: () => {
    const family = stoveBands('family')
    const large = stoveBands('five-kilowatts')
    const single = stoveBands('single-wall')
    return [
      ...efficiencyRows(family),
      ...bothReadings(
        'efficiency of a 5 kW gas stove',
        gasStove.efficiency,
        large,
        FIVE_KILOWATTS,
        `${gasStove.source} [bib:panwar2008]`,
      ),
      {
        check: 'flame temperature over a 5 kW gas stove',
        published: gasStove.flameTemperature,
        ours: bandOf(large, 'outlet'),
        unit: '°C',
        stove: `${FIVE_KILOWATTS}; mean of the gas where it leaves the stove, front half way down`,
        source: `${gasStove.source} [bib:panwar2008]`,
      },
      {
        check: 'heat through a bare metal wall',
        published: bareWall.loss,
        ours: bandOf(single, 'wallLoss'),
        unit: 'W',
        stove: `${SINGLE_WALL}; front half way down`,
        source: bareWall.source,
      },
    ]
  },
}

export const stoveSets: readonly CheckSet[] = [stoves]
export const notCompared = published.notCompared as unknown as readonly (readonly [string, string, string])[]
