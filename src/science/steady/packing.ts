import { COLDEST, HOTTEST } from '#science/gas/mixture.ts'
import type { Workspace } from './workspace.ts'

/** The state that one round of the iteration hands to the next, as one vector of like-scaled numbers. */
export interface Packing {
  readonly size: number
  pack(w: Workspace, into: Float64Array): void
  unpack(w: Workspace, from: Float64Array): void
}

/** Temperatures count in thousands of kelvin beside mass fractions. */
const KELVIN = 1e-3

const kept = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value))

export const packingOf = (
  nodes: number,
  links: number,
  walls: number,
  gapLinks: readonly number[],
): Packing => ({
  size: 2 * nodes + links + walls + 3 * gapLinks.length,
  pack: (w, into) => {
    let at = 0
    for (let i = 0; i < nodes; i++) into[at++] = (w.temperature[i] as number) * KELVIN
    for (let i = 0; i < nodes; i++) into[at++] = w.gasFraction[i] as number
    for (let k = 0; k < links; k++) into[at++] = w.share[k] as number
    for (let s = 0; s < walls; s++) into[at++] = (w.walls.temperature[s] as number) * KELVIN
    for (const k of gapLinks) {
      into[at++] = (w.walls.gapTemperature[k] as number) * KELVIN
      into[at++] = (w.gapWall[k] as number) * KELVIN
      into[at++] = w.gapConductance[k] as number
    }
  },
  unpack: (w, from) => {
    let at = 0
    for (let i = 0; i < nodes; i++) w.temperature[i] = kept((from[at++] as number) / KELVIN, COLDEST, HOTTEST)
    for (let i = 0; i < nodes; i++) w.gasFraction[i] = kept(from[at++] as number, 0, 1)
    for (let k = 0; k < links; k++) w.share[k] = kept(from[at++] as number, 0, 1)
    for (let s = 0; s < walls; s++)
      w.walls.temperature[s] = kept((from[at++] as number) / KELVIN, COLDEST, HOTTEST)
    for (const k of gapLinks) {
      w.walls.gapTemperature[k] = kept((from[at++] as number) / KELVIN, COLDEST, HOTTEST)
      w.gapWall[k] = kept((from[at++] as number) / KELVIN, COLDEST, HOTTEST)
      w.gapConductance[k] = Math.max(0, from[at++] as number)
    }
  },
})
