import type { FrontPlace } from '#science/steady/frontPlace.ts'
import type { SteadyState } from '#science/steady/state.ts'
import type { Workspace } from '#science/steady/workspace.ts'

/** Where the heat and the mass of a whole burn went. Heat counts from the elements at 25 °C; differences are what matter. */
export interface BurnTotals {
  /** Dry fuel that became gas and char, and char that glowed away [kg]. */
  readonly dryFuelBurnt: number
  readonly charBurnt: number
  readonly charLeft: number
  /** Mass that came in as air and left as flue gas [kg]. */
  readonly air: number
  readonly flueGas: number
  /** Heat to the open air from the walls; radiated by flame and char past the walls; stored in the walls [J]. */
  readonly wallLoss: number
  readonly radiated: number
  readonly wallStored: number
  /** In less out over what came in [1]; mass ≤ 1e-6, energy ≤ 1e-4. */
  readonly massResidual: number
  readonly energyResidual: number
}

/** Adds up the flows of every step. Kahan's sums are not needed: a burn has some hundred steps. */
export class Ledger {
  private fuel = 0
  private glowed = 0
  private air = 0
  private flue = 0
  private charMade = 0
  private water = 0
  private wallLoss = 0
  private radiated = 0
  private wallStored = 0
  private energyMiss = 0
  private heatIn = 0

  add(w: Workspace, now: SteadyState, place: FrontPlace, dt: number): void {
    const { front } = now
    const glows = front.char === 0
    const rate = now.dryFuelRate
    if (glows) this.glowed += rate * dt
    else {
      this.fuel += rate * dt
      this.charMade += rate * front.char * dt
      this.water += (rate * w.fuel.moisture * dt) / (1 - w.fuel.moisture)
    }
    let air = 0
    let flue = 0
    for (const [k, link] of w.plan.links.entries()) {
      const flow = now.flow[k] as number
      const inward = link.from < 0 ? flow : link.to < 0 ? -flow : 0
      if (inward > 0) air += inward
      // Straight from the bed into the open there is more gas than air went in.
      else flue += k === place.link ? -inward * (w.network.gain[k] as number) : -inward
    }
    this.air += air * dt
    this.flue += flue * dt
    let outward = 0
    let stored = 0
    for (let s = 0; s < w.walls.stretches.length; s++) {
      outward += w.walls.outward[s] as number
      stored += w.walls.stored[s] as number
    }
    let past = rate * front.glow
    for (let i = 0; i < w.plan.nodes.length; i++)
      past += w.coefficients.flameRadiation * (w.burnt[i] as number) * (1 - (w.walls.sideShare[i] as number))
    this.wallLoss += outward * dt
    this.wallStored += stored * dt
    this.radiated += past * dt
    // Gas side closes by itself (energyResidual); the walls' own balance is what is left to check.
    const wallsTake = rate * front.loss + this.sideRadiation(w) - w.ledger.fromWalls
    const heat = rate * w.fuel.higherHeatingValue
    this.heatIn += heat * dt
    this.energyMiss += (now.energyResidual * heat + wallsTake - outward - stored) * dt
  }

  private sideRadiation(w: Workspace): number {
    let sum = 0
    for (let i = 0; i < w.plan.nodes.length; i++)
      sum += w.coefficients.flameRadiation * (w.burnt[i] as number) * (w.walls.sideShare[i] as number)
    return sum
  }

  totals(charLeft: number, dryCharge: number): BurnTotals {
    const massIn = this.fuel + this.water + this.air
    const massMiss = massIn - (this.charMade - this.glowed) - this.flue
    return {
      dryFuelBurnt: Math.min(this.fuel, dryCharge),
      charBurnt: this.glowed,
      charLeft,
      air: this.air,
      flueGas: this.flue,
      wallLoss: this.wallLoss,
      radiated: this.radiated,
      wallStored: this.wallStored,
      massResidual: massIn > 0 ? massMiss / massIn : 0,
      energyResidual: this.heatIn > 0 ? this.energyMiss / this.heatIn : 0,
    }
  }
}
