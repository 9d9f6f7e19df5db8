import { openingArea } from '#stove/opening/area.ts'
import type { AirPassage } from './airState.ts'
import { isLit } from './bed.ts'
import { gateSpan, type WidthPerFlow } from './border.ts'
import type { Gate } from './gates.ts'
import type { SectionGeometry } from './geometry.ts'
import type { HalfPoint } from './half.ts'
import { OUTSIDE_REACH } from './openAir.ts'
import type { CutPlate } from './plates.ts'
import { spanMiddle } from './span.ts'
import { depthWords, openingWords, partWords, passageWords, temperatureText } from './wording.ts'

/** Words about one place of the section. */
export interface SectionLabel {
  readonly of: 'opening' | 'part' | 'fuel'
  /** The part an opening is cut in. */
  readonly part?: string
  /** The place on one half [mm]. */
  readonly at: HalfPoint
  /** Whether a dot marks the place; the tail of a ribbon needs none. */
  readonly dot: boolean
  /** How far the pointer leaves the place upwards before it goes level, so that it runs along no tin [mm]. */
  readonly lift: number
  readonly name: string
  /** Size code of a can, or nothing. */
  readonly code: string
  /** Size in millimetres and in inches; one line where there is room. */
  readonly size: readonly [metric: string, inch: string] | null
  readonly more: readonly string[]
}

/** From the top down, by where the pointer goes level. */
export const byHeight = (a: SectionLabel, b: SectionLabel): number => b.at.z + b.lift - a.at.z - a.lift

/** Pointers keep this far from the tin they point at when they go level [mm]. */
const LIFT = 5

interface Place {
  readonly at: HalfPoint
  readonly lift: number
}

/** Place of an opening to point at: its hole in the cut; of a plate, the outermost of its holes. */
const placeOf = (section: SectionGeometry, part: string, opening: string): Place | null => {
  const wall = section.walls.find((one) => one.part === part)
  const gap = wall?.holes.find((hole) => hole.opening === opening)
  if (wall !== undefined && gap !== undefined) return { at: { r: wall.radius, z: spanMiddle(gap) }, lift: 0 }
  for (const plate of section.plates) {
    if (plate.part !== part) continue
    const hole = plate.patterns.get(opening)?.at(-1)
    if (hole !== undefined) return { at: { r: hole.middle, z: plate.height }, lift: -LIFT }
    const tongue = plate.tongues.find((one) => one.opening === opening)
    if (tongue !== undefined) return { at: { r: tongue.to, z: plate.height + tongue.rise / 2 }, lift: 0 }
    const over = Math.max(0, ...plate.tongues.map(({ rise }) => rise))
    if (section.stove.parts.get(part)?.openings.get(opening)?.kind === 'bore')
      return { at: { r: plate.reach.from, z: plate.height }, lift: over + LIFT }
  }
  return null
}

/** A damper that covers less than this says nothing [1]. */
const OPEN = 0.995

const damperWords = (area: number, whole: number): readonly string[] =>
  area < OPEN * whole ? [`damper leaves ${Math.round((100 * area) / whole)} % open`] : []

/** Where the ribbon of a row begins, where it comes from the open air; else beside the ribbon, in what the hole has room for. */
const besideRibbon = (
  section: SectionGeometry,
  gate: Gate | undefined,
  { at, lift }: Place,
  scale: WidthPerFlow,
): Place & { readonly dot: boolean } => {
  if (gate === undefined || gate.tin === 'plate') return { at, lift, dot: true }
  if (gate.before === null && gate.flow > 0)
    return { at: { r: section.radius + OUTSIDE_REACH, z: gate.z }, lift, dot: false }
  const { from } = gateSpan(gate, scale)
  return { at: { r: at.r, z: (from + gate.z - gate.clear / 2) / 2 }, lift, dot: true }
}

/** A label for every opening but fixings, from the top down. */
export const openingLabels = (
  section: SectionGeometry,
  passages: readonly AirPassage[],
  gates: readonly Gate[],
  scale: WidthPerFlow,
): readonly SectionLabel[] =>
  section.placed
    .flatMap(({ name: part, part: { form, openings } }) =>
      form === 'band' ? [] : [...openings].map(([opening, shape]) => ({ part, opening, shape })),
    )
    .filter(({ shape }) => shape.duty !== 'fixing')
    .flatMap(({ part, opening, shape }) => {
      const place = placeOf(section, part, opening)
      if (place === null) return []
      const of = passages.filter((one) => one.part === part && one.opening === opening)
      const gate = gates.find(({ passage }) => of.includes(passage))
      const words = openingWords(shape)
      const area = of.reduce((sum, one) => sum + one.area, 0)
      return [
        {
          ...besideRibbon(section, gate, place, scale),
          name: opening,
          part,
          of: 'opening' as const,
          code: '',
          size: [words.metric, words.inch] as const,
          more: [
            ...(words.more === '' ? [] : [words.more]),
            ...of.map(passageWords),
            ...(shape.kind === 'row' && of.length > 0 ? damperWords(area, openingArea(shape)) : []),
          ],
        },
      ]
    })
    .sort(byHeight)

const BAND_OFF = 1.2

/** Where to point at a plate: at its rim where that stands out over all else, else from inside it. */
const rimOf = (section: SectionGeometry, { part, reach, height }: CutPlate): Place => {
  const standsOut =
    section.walls.every(
      ({ radius, reach: { from, to } }) => radius < reach.to || from > height + LIFT || to < height,
    ) &&
    section.plates.every(
      (other) => other.part === part || Math.abs(other.height - height) > LIFT || other.reach.to < reach.to,
    )
  if (standsOut) return { at: { r: reach.to, z: height }, lift: 0 }
  const isGrate = section.stove.parts.get(part)?.role === 'grate'
  return { at: { r: Math.max(reach.from, reach.to - LIFT), z: height }, lift: isGrate ? -LIFT : LIFT }
}

/** Distance from a height to the nearest of several things; the tin's ends count too. */
const clearance = (z: number, obstacles: readonly number[]): number =>
  Math.min(...obstacles.map((obstacle) => Math.abs(obstacle - z)))

/** A label for every part, pointing at tin away from holes, streams and other pointers; from the top down. */
export const partLabels = (
  section: SectionGeometry,
  gates: readonly Gate[],
  others: readonly SectionLabel[],
): readonly SectionLabel[] => {
  const streams = gates.filter(({ before, behind }) => before === null || behind === null).map(({ z }) => z)
  const taken = others.map(({ at }) => at.z)
  const labels = section.placed.map(({ name, part }): SectionLabel => {
    const wall = section.walls.find((one) => one.part === name)
    const plate = section.plates.find((one) => one.part === name)
    let { at, lift } = plate === undefined ? { at: { r: 0, z: 0 }, lift: 0 } : rimOf(section, plate)
    if (wall !== undefined) {
      const holes = wall.holes.flatMap(({ from, to }) => [from, to, (from + to) / 2])
      const ends = [wall.reach.from, wall.reach.to]
      const heights = Array.from(
        { length: Math.floor(wall.reach.to - wall.reach.from) },
        (_, i) => wall.reach.from + i + 0.5,
      ).filter((z) => wall.holes.every(({ from, to }) => z < from || z > to))
      const best = heights.reduce(
        (found, z) => {
          const score = clearance(z, [...holes, ...ends, ...streams, ...taken])
          return score > found.score + 1e-9 ? { z, score } : found
        },
        { z: wall.reach.from + 1, score: -1 },
      )
      taken.push(best.z)
      // A band is drawn off its can, or both would be one line.
      lift = 0
      at = { r: wall.radius + (wall.form === 'band' ? BAND_OFF : 0), z: best.z }
    } else taken.push(at.z)
    return { of: 'part', at, lift, dot: true, name, ...partWords(part), more: [] }
  })
  return labels.sort(byHeight)
}

/** Labels of what lies in the fuel can, from the top down. */
export const bedLabels = (
  section: SectionGeometry,
  frontTemperature: number | null,
): readonly SectionLabel[] => {
  const { bed } = section
  if (bed === null) return []
  const label = (
    z: number,
    name: string,
    size: SectionLabel['size'],
    more: readonly string[],
  ): SectionLabel => ({
    of: 'fuel',
    at: { r: bed.radius - LIFT, z },
    lift: 0,
    dot: true,
    name,
    code: '',
    size,
    more,
  })
  const raw = label((bed.floor + bed.front) / 2, 'raw fuel', depthWords(bed.filledTo - bed.floor), [])
  if (!isLit(bed)) return [raw]
  const front = label(
    bed.front,
    'front',
    null,
    frontTemperature === null ? [] : [temperatureText(frontTemperature)],
  )
  return [label((bed.front + bed.top) / 2, 'char', null, []), front, raw]
}
