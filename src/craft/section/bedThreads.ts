import type { AirPassage } from './airState.ts'
import type { CutBed } from './bed.ts'
import { bend, type End, endAt } from './bend.ts'
import { borderOf, gateEnd, type WidthPerFlow, wayInto } from './border.ts'
import type { Gate } from './gates.ts'
import { type Ribbon, ribbon } from './ribbon.ts'

/** Height over which air turns to gas in the picture: the front is thin [mm]. */
const FLARE = 2.5
/** Nothing rises nearer to the can's wall than this [mm]. */
const RIM = 2
/** Side air rises this far inside the can's wall, and this far apart [mm]. */
const SIDE_PITCH = 5

interface Thread {
  readonly gate: Gate
  /** Where it rises [mm]. */
  readonly r: number
  /** On this side of the cut [kg/s]. */
  readonly flow: number
}

const threadsOf = (gates: readonly Gate[], room: number, bed: CutBed): readonly Thread[] => {
  const inflows = borderOf(gates, room).filter(({ flow }) => flow > 0)
  const sides = inflows.filter(({ at }) => at.tin === 'wall').sort((a, b) => b.at.z - a.at.z)
  return [
    // What comes up round the rim of a grate rises just inside the wall.
    ...inflows
      .filter(({ at }) => at.tin === 'plate')
      .map(({ at, flow }) => ({ gate: at, r: Math.min(at.r, bed.radius - RIM), flow })),
    // The higher a row, the nearer to the wall its air rises, or the ways would cross.
    ...sides.map(({ at, flow }, i) => ({ gate: at, r: bed.radius - SIDE_PITCH * (i + 1), flow })),
  ]
}

export interface BedFlow {
  readonly ribbons: readonly Ribbon[]
  /** Where the gas leaves the fuel, as gates into the room above. */
  readonly tops: readonly Gate[]
}

/**
 * Threads of air through the raw fuel, each from its own hole; at the front they take up fuel and become gas. `gas` is
 * what leaves the top on this side of the cut [kg/s].
 */
export const bedThreads = (
  bed: CutBed,
  gates: readonly Gate[],
  { room, above, top }: { readonly room: number; readonly above: number | null; readonly top: AirPassage },
  scale: WidthPerFlow,
  gas: number,
  frontTemperature: number,
): BedFlow => {
  const threads = threadsOf(gates, room, bed)
  const air = threads.reduce((sum, { flow }) => sum + flow, 0)
  if (air <= 0) return { ribbons: [], tops: [] }
  const gain = Math.max(1, gas / air)
  const tops: Gate[] = []
  const ribbons: Ribbon[] = []
  for (const { gate, r, flow } of threads) {
    const onAxis = gate.tin === 'plate' && gate.onAxis
    const [thin, wide] = [flow * scale, flow * gain * scale]
    const at = (z: number, width: number): End => endAt({ r: onAxis ? width / 2 : r, z }, width, 'up')
    const start = gateEnd(gate, scale, wayInto(gate, room))
    const front = Math.max(bed.front, gate.z + 1)
    const below = at(front - FLARE / 2, thin)
    const over = at(Math.min(front + FLARE / 2, bed.top), wide)
    const finish = at(Math.max(bed.top, front + FLARE / 2), wide)
    ribbons.push(
      ribbon(
        { stretches: bend(start, below), start, finish: below },
        { medium: 'air', flow: 2 * flow, temperatures: [gate.passage.temperature, gate.passage.temperature] },
      ),
      ribbon(
        { stretches: [...bend(below, over), ...bend(over, finish)], start: below, finish },
        { medium: 'gas', flow: 2 * flow * gain, temperatures: [frontTemperature, frontTemperature] },
      ),
    )
    tops.push({
      passage: { ...top, temperature: frontTemperature },
      tin: 'plate',
      before: room,
      behind: above,
      r,
      z: bed.top,
      onAxis,
      clear: Number.POSITIVE_INFINITY,
      flow: flow * gain,
    })
  }
  return { ribbons, tops }
}
