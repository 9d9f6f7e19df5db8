import type { AirState } from './airState.ts'
import { bedThreads } from './bedThreads.ts'
import { bend, type End, endAt, middleOf, widthOf } from './bend.ts'
import { borderOf, strandEnd, type WidthPerFlow, wayInto, wayOutOf } from './border.ts'
import { type Gate, gatesOf } from './gates.ts'
import type { SectionGeometry } from './geometry.ts'
import { matchFlows, type Strand } from './match.ts'
import { openAirCourses } from './openAir.ts'
import { type Rooms, roomsOf } from './regions.ts'
import { type Course, type Ribbon, ribbon } from './ribbon.ts'
import { spanLength } from './span.ts'

/** The air of a stove as ribbons, one half of the picture. */
export interface AirPicture {
  readonly ribbons: readonly Ribbon[]
  readonly gates: readonly Gate[]
  /** Width of a ribbon for each kilogram a second that it carries; a side of the cut carries half [mm s/kg]. */
  readonly widthPerFlow: WidthPerFlow
}

/** A ribbon fills at most this share of its opening, and is at most this wide on one side [1], [mm]. */
const FILLS = 0.82
const WIDEST = 11
/** Smaller streams than this share of the largest do not set the scale [1]. */
const MINOR = 0.2

/** The widest scale at which every stream of note fits through its opening [mm s/kg]. */
const scaleFor = (gates: readonly Gate[]): WidthPerFlow => {
  const most = Math.max(...gates.map(({ flow }) => Math.abs(flow)))
  const fits = gates
    .filter(({ flow }) => Math.abs(flow) >= MINOR * most)
    .map(({ clear, flow }) => (FILLS * clear) / Math.abs(flow))
  return Math.min(WIDEST / most, ...fits)
}

/** Gas that leaves the fuel on one side: what the room above sends on less what else comes into it [kg/s]. */
const gasFrom = (gates: readonly Gate[], above: number | null): number =>
  above === null ? 0 : -borderOf(gates, above).reduce((sum, { flow }) => sum + flow, 0)

/** Rooms that gas gets into: the one over the fuel, and whatever that flows on to. */
const gasRooms = (gates: readonly Gate[], first: number | null): ReadonlySet<number> => {
  const rooms = new Set<number>(first === null ? [] : [first])
  for (let grown = true; grown; ) {
    grown = false
    for (const { before, behind, flow } of gates) {
      const [from, to] = flow >= 0 ? [before, behind] : [behind, before]
      if (from === null || !rooms.has(from) || to === null || rooms.has(to)) continue
      rooms.add(to)
      grown = true
    }
  }
  return rooms
}

/** How far a strand lies off its gate's middle, against the way it has to shift [mm]. */
const laneOf = (gate: Gate, start: End, finish: End): number => {
  const [p, q] = [middleOf(start), middleOf(finish)]
  return gate.tin === 'wall' ? (gate.z - p.z) * Math.sign(q.z - p.z) : (gate.r - p.r) * Math.sign(q.r - p.r)
}

/** The way from gate to gate, straight up through the mouths of cans that lie between. */
const strandCourse = (start: End, finish: End, lane: number, mouths: readonly number[]): Course => {
  const [p, q] = [middleOf(start), middleOf(finish)]
  const stops =
    finish.way === 'up'
      ? mouths.filter((z) => z > p.z && z < q.z).map((z) => endAt({ r: q.r, z }, widthOf(finish), 'up'))
      : []
  const ends = [start, ...stops, finish]
  const stretches = ends.slice(1).flatMap((end, i) => bend(ends[i] as End, end, lane))
  return { stretches, start, finish }
}

const strandRibbon = (
  room: number,
  { from, fromSpan, to, toSpan }: Strand<Gate>,
  scale: WidthPerFlow,
  gas: ReadonlySet<number | null>,
  mouths: readonly number[],
): Ribbon => {
  const start = strandEnd(from, room, fromSpan, scale, wayInto(from, room))
  const finish = strandEnd(to, room, toSpan, scale, wayOutOf(to, room))
  const source = from.behind === room ? from.before : from.behind
  return ribbon(strandCourse(start, finish, laneOf(from, start, finish), mouths), {
    medium: gas.has(source) ? 'gas' : 'air',
    flow: 2 * spanLength(fromSpan),
    temperatures: [from.passage.temperature, to.passage.temperature],
  })
}

/** Rooms of all gates, the open air left out. */
const roomsAt = (gates: readonly Gate[]): readonly number[] => [
  ...new Set(gates.flatMap(({ before, behind }) => [before, behind]).filter((room) => room !== null)),
]

const bedFlow = (
  section: SectionGeometry,
  air: AirState,
  gates: readonly Gate[],
  rooms: Rooms,
  scale: WidthPerFlow,
) => {
  const { bed: room, bedTop: top } = rooms
  if (section.bed === null || room === null || top === null) return { ribbons: [], tops: [] }
  const above = rooms.roomOf(top.to)
  return bedThreads(
    section.bed,
    gates,
    { room, above, top },
    scale,
    gasFrom(gates, above),
    air.temperature.front,
  )
}

/** Air and gas on their way through the actual openings of a stove; nothing where nothing flows. */
export const airPicture = (section: SectionGeometry, air: AirState): AirPicture => {
  const rooms = roomsOf(air.passages)
  const throughTin = gatesOf(section, air.passages, rooms)
  if (throughTin.length === 0) return { ribbons: [], gates: [], widthPerFlow: 0 }
  const scale = scaleFor(throughTin)
  const fuel = bedFlow(section, air, throughTin, rooms, scale)
  const gates = [...throughTin, ...fuel.tops]
  const gas = new Set<number | null>(gasRooms(gates, rooms.roomOf(rooms.bedTop?.to ?? null)))
  if (rooms.bed !== null) gas.add(rooms.bed)
  const inside = roomsAt(gates)
    .filter((room) => room !== rooms.bed)
    .flatMap((room) =>
      matchFlows(borderOf(gates, room)).map((strand) =>
        strandRibbon(room, strand, scale, gas, rooms.mouthsIn(room)),
      ),
    )
  const outside = openAirCourses(section, gates, scale).map(({ gate, into, course }) =>
    ribbon(course, {
      medium: !into && gas.has(gate.before ?? gate.behind) ? 'gas' : 'air',
      flow: 2 * Math.abs(gate.flow),
      temperatures: [gate.passage.temperature, gate.passage.temperature],
      tail: into,
      head: !into,
    }),
  )
  return { ribbons: [...outside, ...inside, ...fuel.ribbons], gates, widthPerFlow: scale }
}
