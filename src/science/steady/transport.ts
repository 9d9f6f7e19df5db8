import { OUTSIDE } from '#science/draft/network.ts'
import type { Front } from '#science/fire/front.ts'
import { specificEnthalpy } from '#science/gas/blend.ts'
import { chemicalHeat, type GasBasis, mixtureTemperature } from '#science/gas/mixture.ts'
import type { FrontPlace, Workspace } from './workspace.ts'

/** What the flames gave and where it went. */
export interface FlameHeat {
  /** Heat set free in the gas [W]. */
  released: number
  /** Of it, into the gap's air [W]. */
  preheat: number
}

/** Heat capacity of air for the cap on preheating [J/(kg K)]. */
const AIR_HEAT = 1010
/** Air in the gap never comes nearer to the flame's temperature than this share of the difference. */
const PREHEAT_CAP = 0.8
const MAX_SWEEPS = 300

/**
 * Carries composition and enthalpy along the flows of the last solve. Gas that meets oxygen burns at once; a share of
 * the heat leaves by radiation and another through the wall into the gap. Sweeps repeat until nothing changes, which
 * settles the loop flame → wall → gap → flame too. False when a temperature leaves the range of the gas data.
 */
export const transport = (
  w: Workspace,
  basis: GasBasis,
  front: Front,
  place: FrontPlace,
  heat: FlameHeat,
): boolean => {
  const { plan, network, solver, coefficients, site, gasFraction, enthalpy, loss, gapHeat } = w
  const n = plan.nodes.length
  const freshEnthalpy = specificEnthalpy(front.unburnt, front.temperature)
  for (let sweep = 0; sweep < MAX_SWEEPS; sweep++) {
    let change = 0
    let released = 0
    for (let i = 0; i < n; i++) {
      let mass = 0
      let gas = 0
      let brought = 0
      let bound = 0
      const end = w.linksStart[i + 1] as number
      for (let e = w.linksStart[i] as number; e < end; e++) {
        const k = w.linksOf[e] as number
        const flow = solver.flow[k] as number
        const forward = flow > 0
        if ((forward ? network.to[k] : network.from[k]) !== i || flow === 0) continue
        const source = (forward ? network.from[k] : network.to[k]) as number
        const amount = forward ? flow * (network.gain[k] as number) : -flow
        let z = source === OUTSIDE ? 0 : (gasFraction[source] as number)
        let h = source === OUTSIDE ? w.airEnthalpy : (enthalpy[source] as number)
        if (k === place.link && forward) {
          z = 1
          h = freshEnthalpy
        }
        mass += amount
        gas += amount * z
        brought += amount * h + (gapHeat[k] as number)
        bound += amount * chemicalHeat(basis, z)
      }
      // A dead end takes the state of the open air.
      const z = mass > 0 ? Math.min(1, gas / mass) : 0
      const burnt = mass > 0 ? Math.max(0, bound - mass * chemicalHeat(basis, z)) : 0
      released += burnt
      const toGap = heat.released > 0 ? (burnt / heat.released) * heat.preheat : 0
      loss[i] = burnt * coefficients.flameRadiation + toGap
      const h = mass > 0 ? (brought - (loss[i] as number)) / mass : w.airEnthalpy
      change = Math.max(
        change,
        Math.abs(z - (gasFraction[i] as number)),
        Math.abs(h - (enthalpy[i] as number)) * 1e-6,
      )
      gasFraction[i] = z
      enthalpy[i] = h
    }
    heat.released = released
    if (w.gapLinks.length > 0) change = Math.max(change, preheatGap(w, basis, heat) * 1e-6)
    if (change < 1e-14) break
  }
  for (let i = 0; i < n; i++) {
    const temperature = mixtureTemperature(
      basis,
      gasFraction[i] as number,
      enthalpy[i] as number,
      (w.temperature[i] as number) || site.temperature,
    )
    if (!(temperature > 0)) return false
    w.temperature[i] = temperature
  }
  return true
}

/** Shares the wall's heat over the gap by height; returns the largest change of any share [W]. */
const preheatGap = (w: Workspace, basis: GasBasis, heat: FlameHeat): number => {
  const { plan, solver, gapHeat, site, gasFraction, enthalpy, coefficients } = w
  let hottest = site.temperature
  for (const [i, node] of plan.nodes.entries())
    if (node.space === 'flame') {
      const t = mixtureTemperature(
        basis,
        gasFraction[i] as number,
        enthalpy[i] as number,
        w.temperature[i] as number,
      )
      if (t > hottest) hottest = t
    }
  let total = 0
  let change = 0
  for (const k of w.gapLinks) {
    const link = plan.links[k] as (typeof plan.links)[number]
    const flow = solver.flow[k] as number
    const source = flow >= 0 ? link.from : link.to
    const before = source === OUTSIDE ? site.temperature : (w.temperature[source] as number)
    const most = Math.abs(flow) * AIR_HEAT * PREHEAT_CAP * Math.max(0, hottest - before)
    const share = Math.min(most, (coefficients.gapPreheat * heat.released * link.length) / w.gapLength)
    change = Math.max(change, Math.abs(share - (gapHeat[k] as number)))
    gapHeat[k] = share
    total += share
  }
  heat.preheat = total
  return change
}
