import { COLDEST, HOTTEST } from '#science/gas/mixture.ts'
import type { WallModel } from './wallModel.ts'
import type { Packing } from './workspace.ts'

/** Temperatures count in thousands of kelvin beside mass fractions. */
const KELVIN = 1e-3

const kept = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value))

/** The packing for a plan of so many nodes and links. */
export const packingOf = (nodes: number, links: number, { stretches, gaps }: WallModel): Packing => ({
  size: 2 * nodes + links + stretches.length + gaps.length,
  pack: ({ temperature, gasFraction, share, walls }, into) => {
    let at = 0
    for (let i = 0; i < nodes; i++) into[at++] = (temperature[i] as number) * KELVIN
    for (let i = 0; i < nodes; i++) into[at++] = gasFraction[i] as number
    for (let k = 0; k < links; k++) into[at++] = share[k] as number
    for (let s = 0; s < stretches.length; s++) into[at++] = (walls.temperature[s] as number) * KELVIN
    for (let g = 0; g < gaps.length; g++) into[at++] = (walls.gapTemperature[g] as number) * KELVIN
  },
  unpack: ({ temperature, gasFraction, share, walls }, from) => {
    let at = 0
    for (let i = 0; i < nodes; i++) temperature[i] = kept((from[at++] as number) / KELVIN, COLDEST, HOTTEST)
    for (let i = 0; i < nodes; i++) gasFraction[i] = kept(from[at++] as number, 0, 1)
    for (let k = 0; k < links; k++) share[k] = kept(from[at++] as number, 0, 1)
    for (let s = 0; s < stretches.length; s++)
      walls.temperature[s] = kept((from[at++] as number) / KELVIN, COLDEST, HOTTEST)
    for (let g = 0; g < gaps.length; g++)
      walls.gapTemperature[g] = kept((from[at++] as number) / KELVIN, COLDEST, HOTTEST)
  },
})
