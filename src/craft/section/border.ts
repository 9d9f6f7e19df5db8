import { type End, endAt, type Way } from './bend.ts'
import type { Gate } from './gates.ts'
import type { BorderFlow } from './match.ts'
import { type Span, spanLength, spanMiddle } from './span.ts'

/** Millimetres of ribbon for a kilogram a second on one side of the cut. */
export type WidthPerFlow = number

/** Where a gate's flow lies along its tin: a stretch of height in a wall, of radius in a plate [mm]. */
export const gateSpan = (gate: Gate, scale: WidthPerFlow): Span => {
  const width = Math.abs(gate.flow) * scale
  const middle = gate.tin === 'wall' ? gate.z : gate.onAxis ? width / 2 : gate.r
  return { from: middle - width / 2, to: middle + width / 2 }
}

/** Whether the room lies behind the gate: inside a wall, above a plate. */
const isBehind = (gate: Gate, room: number | null): boolean => gate.behind === room

/** Side of a room that a gate lies on, and how far along it, going round: floor outwards, wall up, lid inwards, core down. */
const placeOnBorder = (gate: Gate, room: number): readonly [side: number, along: number] => {
  const behind = isBehind(gate, room)
  if (gate.tin === 'wall') return behind ? [1, gate.z] : [3, -gate.z]
  return behind ? [0, gate.r] : [2, -gate.r]
}

/** Flows over a room's border in the order they are met going round it. */
export const borderOf = (gates: readonly Gate[], room: number): readonly BorderFlow<Gate>[] =>
  gates
    .filter((gate) => gate.before === room || gate.behind === room)
    .map((gate) => ({ gate, place: placeOnBorder(gate, room) }))
    .sort((a, b) => a.place[0] - b.place[0] || a.place[1] - b.place[1])
    .map(({ gate }) => ({ at: gate, flow: isBehind(gate, room) ? gate.flow : -gate.flow }))

const REVERSED: Readonly<Record<Way, Way>> = { in: 'out', out: 'in', up: 'down', down: 'up' }

/** The way into a room at a gate. */
export const wayInto = (gate: Gate, room: number | null): Way => {
  const forward = gate.tin === 'wall' ? 'in' : 'up'
  return isBehind(gate, room) ? forward : REVERSED[forward]
}

export const wayOutOf = (gate: Gate, room: number | null): Way => REVERSED[wayInto(gate, room)]

/**
 * End of a strand at a gate of a room. `part` is the strand's stretch of the gate's flow, counted in the direction of
 * going round the room [kg/s].
 */
export const strandEnd = (gate: Gate, room: number, part: Span, scale: WidthPerFlow, way: Way): End => {
  const span = gateSpan(gate, scale)
  // Floor and wall are gone along outwards and upwards, lid and core the other way.
  const middle = isBehind(gate, room)
    ? span.from + spanMiddle(part) * scale
    : span.to - spanMiddle(part) * scale
  const at = gate.tin === 'wall' ? { r: gate.r, z: middle } : { r: middle, z: gate.z }
  return endAt(at, spanLength(part) * scale, way)
}

/** End of the whole of a gate's flow. */
export const gateEnd = (gate: Gate, scale: WidthPerFlow, way: Way): End => {
  const span = gateSpan(gate, scale)
  const middle = spanMiddle(span)
  return endAt(
    gate.tin === 'wall' ? { r: gate.r, z: middle } : { r: middle, z: gate.z },
    spanLength(span),
    way,
  )
}
