import type { AirPassage } from './airState.ts'

/** Rim of a passage that is a flat ring [mm]. */
export interface Ring {
  readonly inner: number
  readonly outer: number
}

/**
 * Rims of a flat ring from its area and hydraulic diameter [mm]: area π(o² − i²), and 4A/P = 2(o − i), which of a
 * whole disc is its diameter.
 */
export const ringOf = ({ area, hydraulicDiameter }: AirPassage): Ring => {
  const width = hydraulicDiameter / 2
  const sum = area / (Math.PI * width)
  return { inner: Math.max(0, ((sum - width) / 2) * 1000), outer: ((sum + width) / 2) * 1000 }
}

/** A throat that is not a ring but a whole disc: what it joins looks like one room. */
const WHOLE_DISC = 1

/** Which room of the picture each space belongs to; rooms are named by one of their spaces. The open air is null. */
export interface Rooms {
  readonly roomOf: (space: number | null) => number | null
  /** The room filled with fuel, or null. */
  readonly bed: number | null
  /** The passage by which the gas leaves the fuel. */
  readonly bedTop: AirPassage | null
  /** Heights of the can mouths within a room, from below [mm]: what rises has to be inside by then. */
  readonly mouthsIn: (room: number) => readonly number[]
}

/** Joins spaces that no tin parts: stretches of one gap, layers of the bed, can upon can without a plate between. */
export const roomsOf = (passages: readonly AirPassage[]): Rooms => {
  const parent = new Map<number, number>()
  const root = (space: number): number => {
    const up = parent.get(space)
    return up === undefined || up === space ? space : root(up)
  }
  const join = (a: number, b: number): void => {
    parent.set(root(a), root(b))
  }
  const beds = passages.filter(({ kind }) => kind === 'bed')
  const inBed = new Set(beds.map(({ from }) => from))
  const mouths: AirPassage[] = []
  for (const passage of passages) {
    const { kind, from, to } = passage
    if (from === null || to === null) continue
    if (kind === 'gap' || (kind === 'bed' && inBed.has(to))) join(from, to)
    if (kind !== 'throat' || ringOf(passage).inner >= WHOLE_DISC) continue
    join(from, to)
    mouths.push(passage)
  }
  const top = beds.find(({ to }) => !inBed.has(to)) ?? null
  const roomOf = (space: number | null): number | null => (space === null ? null : root(space))
  return {
    roomOf,
    bed: top === null ? null : roomOf(top.from),
    bedTop: top,
    mouthsIn: (room) =>
      mouths
        .filter(({ from }) => roomOf(from) === room)
        .map(({ height }) => height * 1000)
        .sort((a, b) => a - b),
  }
}
