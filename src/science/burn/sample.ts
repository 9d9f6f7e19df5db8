import { describeMoment } from '#science/steady/describe.ts'
import type { FrontPlace } from '#science/steady/frontPlace.ts'
import type { Moment } from '#science/steady/prediction.ts'
import type { SteadyState } from '#science/steady/state.ts'
import type { Workspace } from '#science/steady/workspace.ts'
import type { BurnSample, BurnState } from './record.ts'

/** All that flows at one moment of a burn. `asFired` is the fuel's lower heating value as fired [J/kg]. */
export const momentOf = (w: Workspace, now: SteadyState, state: BurnState, asFired: number): Moment => {
  const { plan, fuel, site, coefficients } = w
  const glows = state.phase === 'char'
  return describeMoment({
    plan,
    state: now,
    position: state.front,
    moisture: glows ? 0 : fuel.moisture,
    site,
    asFired: glows ? now.front.charHeat : asFired,
    coefficients,
  })
}

/** The same moment as the burn keeps it, in a maker's terms. */
export const sampleOf = (
  w: Workspace,
  now: SteadyState,
  place: FrontPlace,
  state: BurnState,
  moment: Moment,
): BurnSample => {
  const { plan, site, coefficients } = w
  let hottest = site.temperature
  for (const [s, stretch] of w.walls.stretches.entries())
    if (stretch.outside.kind === 'open air') hottest = Math.max(hottest, w.walls.temperature[s] as number)
  let flameRadiation = 0
  for (let i = 0; i < plan.nodes.length; i++)
    flameRadiation +=
      coefficients.flameRadiation * (w.burnt[i] as number) * (1 - (w.walls.sideShare[i] as number))
  return {
    time: state.time,
    phase: state.phase,
    frontPosition: state.front,
    alight: place.active,
    regime: state.phase === 'wood gas' ? moment.regime : null,
    firepower: moment.firepower,
    fuelRate: moment.fuelRate,
    primaryAir: moment.air.primary,
    secondaryAir: moment.air.secondary,
    tertiaryAir: moment.air.tertiary,
    airRatio: moment.airRatio,
    flameTemperature: moment.temperature.flame,
    outletTemperature: moment.temperature.outlet,
    hottestOuterWall: hottest,
    hearth: {
      flueGas: moment.flueGas,
      flameRadiation,
      charGlow: now.dryFuelRate * now.front.glow,
      charTemperature: now.front.temperature,
      flameHeight: moment.flame.height,
      strikesPot: moment.flame.strikesPot === true,
    },
    rawFuel: (1 - state.front) * w.fuel.bulkDensity * plan.bed.area * plan.bed.depth,
    char: state.char,
  }
}
