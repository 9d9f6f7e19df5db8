import { readFileSync } from 'node:fs'
import { orThrow } from '#basis/problem.ts'
import { randomStream } from '#basis/random.ts'
import { fraction } from '#basis/units.ts'
import { standardPressure } from '#science/atmosphere.ts'
import { type Coefficients, coefficientTable, medianCoefficients } from '#science/coefficients.ts'
import { planDraught } from '#science/draft/build.ts'
import { fuelOf } from '#science/fuel/charge.ts'
import { mildDay, type Site } from '#science/site.ts'
import type { SteadyInput } from '#science/steady/input.ts'
import { readStove } from '#stove/document/read.ts'
import type { FuelCharge, Stove } from '#stove/model.ts'
import { CAMPAIGN_SEED } from '../../science/campaign.ts'
import { dampered, layouts } from '../../science/layouts.ts'
import { randomCase } from '../../science/randomStove.ts'
import { riserStove, twoWall } from '../../science/stoves.ts'

/** A steady state for two programs to find: everything it depends on, as plain data. */
export interface SteadyCase extends SteadyInput {
  readonly name: string
  /** Of the front, 0 at the top of the fuel and 1 at its floor. */
  readonly position: number
}

interface Chosen {
  readonly site?: Site
  readonly moisture?: number
  readonly coefficients?: Coefficients
  readonly burntOff?: boolean
}

const steadyCase = (
  name: string,
  stove: Stove,
  position: number,
  { site = mildDay, moisture, coefficients = medianCoefficients, burntOff = true }: Chosen = {},
): SteadyCase => {
  const outcome = planDraught(stove)
  const fuel = fuelOf(stove, moisture)
  if (!outcome.ok || !fuel.ok) throw new Error(`${name} has no plan`)
  return {
    name,
    position,
    plan: outcome.plan,
    fuel: fuel.value,
    site,
    coefficients,
    burntOff,
  }
}

const EXAMPLES = new URL('../../../examples/', import.meta.url)
const example = (name: string): Stove =>
  orThrow(readStove(readFileSync(new URL(`${name}.stove.json`, EXAMPLES), 'utf8')))

const layout = (name: string): Stove => {
  const build = layouts[name]
  if (build === undefined) throw new Error(`no layout is called ${name}`)
  return build()
}

const charged = (stove: Stove, charge: Partial<FuelCharge>): Stove => ({
  ...stove,
  fuel: { ...stove.fuel, ...charge },
})

/** Every coefficient at one end of its range: a number that one of the two programs leaves out cannot hide. */
const allAt = (end: 'low' | 'high'): Coefficients =>
  Object.fromEntries(
    Object.entries(coefficientTable).map(([key, row]) => [key, row[end]]),
  ) as unknown as Coefficients

const wind = (speed: number, from: number): Site => ({ ...mildDay, wind: { speed, from } })

/** Stoves of the random campaign that burn at these places of the front. */
const DRAWN: readonly (readonly [number, number])[] = [
  [1, 0.5],
  [2, 0.2],
  [3, 0.5],
  [5, 0.35],
  [7, 0.8],
  [9, 0.5],
]

const drawn = (seed: number, position: number): SteadyCase => {
  const { stove, moisture, site } = randomCase(randomStream(CAMPAIGN_SEED).fork(seed))
  return steadyCase(`random stove ${seed} of seed ${CAMPAIGN_SEED}`, stove, position, { site, moisture })
}

export const steadyCases = (): readonly SteadyCase[] => [
  steadyCase('redshank, just lit', example('redshank'), 0.005),
  steadyCase('redshank, half way', example('redshank'), 0.5),
  steadyCase('redshank, nearly through', example('redshank'), 0.95),
  steadyCase('heron, half way', example('heron'), 0.5),
  steadyCase('greylag, half way', example('greylag'), 0.5),
  steadyCase('redshank in a breeze', example('redshank'), 0.5, { site: wind(1.5, 40) }),
  steadyCase('greylag in a wind on its front', example('greylag'), 0.4, { site: wind(3, 0) }),
  steadyCase('heron with wet fuel', example('heron'), 0.5, { moisture: 0.28 }),
  steadyCase('greylag on a mountain in frost', example('greylag'), 0.6, {
    site: { ...mildDay, temperature: 266.15, pressure: standardPressure(3500) },
  }),
  steadyCase('redshank of new, bright cans', example('redshank'), 0.3, { burntOff: false }),
  steadyCase('two walls, every coefficient low', twoWall(), 0.5, { coefficients: allAt('low') }),
  steadyCase('two walls, every coefficient high', twoWall(), 0.5, { coefficients: allAt('high') }),
  steadyCase('two walls, twigs, damper half shut', dampered(8, twoWall({ fuel: 'twigs' })), 0.45),
  steadyCase('riser of 250 mm', riserStove(250), 0.25),
  steadyCase('pellets with a tenth of fines', charged(twoWall(), { fines: fraction(0.1) }), 0.5),
  steadyCase('sticks stood upright', charged(twoWall(), { kind: 'twigs', packing: 'upright' }), 0.5),
  ...[
    'two intake rows and two secondary rows',
    'primary rows in the wall beside the fuel',
    'concentrator with a bore and vanes',
    'open gap at the top, no ring',
    'perforated floor with a raised grate over it',
  ].map((name) => steadyCase(name, layout(name), 0.4)),
  steadyCase(
    'intake hole left out, wind into it',
    layout('intake with a hole left out on the wind side'),
    0.5,
    { site: wind(2, 72) },
  ),
  ...DRAWN.map(([seed, position]) => drawn(seed, position)),
]
