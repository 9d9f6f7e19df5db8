import type { Coefficients } from '#science/coefficients.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import type { DraughtLink, DraughtPlan } from '#science/draft/plan.ts'
import type { Front } from '#science/fire/front.ts'
import { AIR } from '#science/gas/blend.ts'
import { chemicalHeat } from '#science/gas/mixture.ts'
import type { Site } from '#science/site.ts'
import { draughtSpent } from './draughtSpent.ts'
import { forwardFlow } from './exchange.ts'
import { flameFacts } from './flameFacts.ts'
import type { Moment, Passage, Regime } from './prediction.ts'
import type { SteadyState } from './state.ts'

/** Below this flux of primary air the front smoulders [kg/(m² s)]; from memory. */
export const SMOULDER_FLUX = 0.015
/** Air ratios between which the gas burns clean [1]; from memory. */
export const RICH_LIMIT = 1.1
export const LEAN_LIMIT = 3

interface Description {
  readonly plan: DraughtPlan
  readonly state: SteadyState
  readonly position: number
  /** Wet basis [1]. */
  readonly moisture: number
  readonly site: Site
  /** Lower heating value as fired [J/kg]. */
  readonly asFired: number
  readonly coefficients: Coefficients
}

/** Air met by the gas over the air it needs; infinite in pure air [1]. */
const airRatioAt = (z: number, stoichiometricAir: number): number =>
  z > 0 ? (1 - z) / z / stoichiometricAir : Number.POSITIVE_INFINITY

const regimeOf = (flux: number, flame: number, outlet: number): Regime => {
  if (flux < SMOULDER_FLUX) return 'smoulder'
  if (outlet < RICH_LIMIT) return 'rich and smoky'
  if (flame > LEAN_LIMIT) return 'quenched lean'
  return 'clean'
}

/** Lower heating values of the burnable gases [J/mol], JANAF heats of formation [bib:chase1998]. */
const MOLAR_HEAT = { CO: 282_995, H2: 241_826, CH4: 802_301 } as const
/** Volume of a mole of ideal gas at 0 °C and 101325 Pa [m³/mol]. */
const NORMAL_MOLAR_VOLUME = 0.022413969545

const dryGas = ({ moles }: Front): Moment['gas'] => {
  const total = moles.CO + moles.CO2 + moles.H2 + moles.CH4 + moles.N2 + moles.Ar
  const heat = moles.CO * MOLAR_HEAT.CO + moles.H2 * MOLAR_HEAT.H2 + moles.CH4 * MOLAR_HEAT.CH4
  return {
    CO: moles.CO / total,
    CO2: moles.CO2 / total,
    H2: moles.H2 / total,
    CH4: moles.CH4 / total,
    N2: moles.N2 / total,
    lowerHeatingValue: heat / total / NORMAL_MOLAR_VOLUME,
  }
}

/** Heat of the gas that a link lets out unburnt, by all that leaves through it, not by what is left when air comes in beside it [W]. */
const unburntThrough = (
  { from, to }: DraughtLink,
  k: number,
  { flow, exchange, gasFraction, front }: SteadyState,
): number => {
  if ((from === OUTSIDE) === (to === OUTSIDE)) return 0
  const net = flow[k] as number
  const forward = forwardFlow(net, exchange[k] as number)
  const leaving = to === OUTSIDE ? forward : forward - net
  return leaving * chemicalHeat(front, gasFraction[to === OUTSIDE ? from : to] as number)
}

/** Turns the arrays of a solved state into what a maker asks. */
export const describeMoment = ({
  plan,
  state,
  position,
  moisture,
  site,
  asFired,
  coefficients,
}: Description): Moment => {
  const { nodes, links, bed } = plan
  const { front, flow, gasFraction, temperature } = state
  const flameNode = links[bed.segments[bed.segments.length - 1]?.link ?? -1]?.to ?? OUTSIDE
  const nodeTemperature = (node: number): number =>
    node === OUTSIDE ? site.temperature : (temperature[node] as number)

  let secondary = 0
  let tertiary = 0
  let secondaryHeat = 0
  let outMass = 0
  let outGas = 0
  let outHeat = 0
  let unburnt = 0
  for (const [k, link] of links.entries()) {
    const m = flow[k] as number
    const from = m >= 0 ? link.from : link.to
    const to = m >= 0 ? link.to : link.from
    const amount = Math.abs(m)
    if (to === OUTSIDE && from !== OUTSIDE) {
      const z = gasFraction[from] as number
      outMass += amount
      outGas += amount * z
      outHeat += amount * nodeTemperature(from)
    }
    unburnt += unburntThrough(link, k, state)
    const intoFlame = to !== OUTSIDE && nodes[to]?.space === 'flame'
    const fromAir = from === OUTSIDE || nodes[from]?.space === 'air'
    if (intoFlame && fromAir && link.kind !== 'bed') {
      if (to === flameNode) {
        secondary += amount
        secondaryHeat += amount * nodeTemperature(from)
      } else tertiary += amount
    }
  }
  // With no space over the fuel the gas leaves the bed itself, unburnt.
  if (flameNode === OUTSIDE) unburnt += state.dryFuelRate * front.gas * front.gasHeat
  const rows = rowsOf(links)
  const spent = rows.map((members) => draughtSpent(plan, members, state, coefficients))
  const power = spent.reduce((sum, one) => sum + one, 0)
  const zFlame = flameNode === OUTSIDE ? 1 : (gasFraction[flameNode] as number)
  const zOut = outMass > 0 ? outGas / outMass : 1
  const airDensity = site.pressure / (AIR.gasConstant * site.temperature)
  const primaryFlux = state.primaryAir / bed.area
  const airRatio = {
    flame: airRatioAt(zFlame, front.stoichiometricAir),
    outlet: airRatioAt(zOut, front.stoichiometricAir),
  }
  const fuelRate = state.dryFuelRate / (1 - moisture)
  return {
    frontPosition: position,
    regime: regimeOf(primaryFlux, airRatio.flame, airRatio.outlet),
    firepower: fuelRate * asFired - state.dryFuelRate * front.char * front.charHeat - unburnt,
    fuelRate,
    superficialVelocity: primaryFlux / airDensity,
    primaryFlux,
    air: {
      primary: state.primaryAir,
      secondary,
      tertiary,
      secondaryToPrimary: secondary / state.primaryAir,
    },
    flueGas: outMass,
    airRatio,
    temperature: {
      front: front.temperature,
      flame: nodeTemperature(flameNode),
      outlet: outMass > 0 ? outHeat / outMass : front.temperature,
      secondaryAir: secondary > 0 ? secondaryHeat / secondary : site.temperature,
    },
    flame: flameFacts(plan, state, site, coefficients),
    outerWalls: outerWalls(plan, state),
    gas: dryGas(front),
    passages: rows.map((members, i) =>
      describePassage(plan, members, state, site, power > 0 ? (spent[i] as number) / power : 0),
    ),
    spaces: nodes.map((node, i) => ({
      name: node.name,
      height: node.height,
      pressure: state.pressure[i] as number,
      temperature: temperature[i] as number,
    })),
    balance: { mass: state.massResidual, energy: state.energyResidual },
    effort: { rounds: state.iterations, newtonSteps: state.newtonSteps },
  }
}

/** Links of one opening belong together: wind parts a row into holes that feel alike. */
const rowsOf = (links: readonly DraughtLink[]): readonly (readonly number[])[] => {
  const rows = new Map<string, number[]>()
  for (const [k, link] of links.entries()) {
    const key = link.kind === 'opening' ? `${link.name}|${link.from}|${link.to}` : String(k)
    rows.set(key, [...(rows.get(key) ?? []), k])
  }
  return [...rows.values()]
}

const describePassage = (
  { links }: DraughtPlan,
  members: readonly number[],
  state: SteadyState,
  site: Site,
  lossShare: number,
): Passage => {
  const link = links[members[0] as number] as DraughtLink
  let massFlow = 0
  let area = 0
  let count = 0
  let volumeFlow = 0
  let drive = 0
  let forward = 0
  let heat = 0
  let viscosity = 0
  for (const k of members) {
    const m = state.flow[k] as number
    const one = links[k] as DraughtLink
    const upstream = m >= 0 ? one.from : one.to
    const temperature = upstream === OUTSIDE ? site.temperature : (state.temperature[upstream] as number)
    massFlow += m
    if (m > 0) forward += m
    area += one.area
    count += one.count
    volumeFlow += m / (state.density[k] as number)
    drive += (state.drive[k] as number) * one.area
    heat += temperature / members.length
    viscosity += (state.viscosity[k] as number) / members.length
  }
  const reynolds = (Math.abs(massFlow) / area) * (link.hydraulicDiameter / viscosity)
  return {
    name: link.name,
    kind: link.kind,
    part: link.part,
    opening: link.opening,
    duty: link.duty,
    count,
    area,
    from: link.from === OUTSIDE ? null : link.from,
    to: link.to === OUTSIDE ? null : link.to,
    height: link.height,
    hydraulicDiameter: link.hydraulicDiameter,
    massFlow,
    backFlow: massFlow >= 0 ? forward - massFlow : forward,
    velocity: volumeFlow / area,
    reynolds,
    pressureDrop: drive / area,
    lossShare,
    temperature: heat,
  }
}

const outerWalls = ({ walls }: DraughtPlan, state: SteadyState): Moment['outerWalls'] =>
  walls
    .flatMap((stretch, s) =>
      stretch.outside.kind === 'open air'
        ? [
            {
              part: stretch.part,
              height: (stretch.bottom + stretch.top) / 2,
              temperature: state.wallTemperature[s] as number,
            },
          ]
        : [],
    )
    .sort((a, b) => b.temperature - a.temperature)
