import { long } from '#basis/text/bothUnits.ts'
import { called, plural } from '#stove/check/phrase.ts'
import type { Opening, Stove } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'

/** Screws, wire and feet: what holds the stove together. */
export interface Fastener {
  readonly count: number
  readonly what: string
  readonly where: string
  /** The part they go in with; null for what carries the pot. */
  readonly goesWith: string | null
}

/** Outside of screw threads [m]: metric, and by number and fraction of an inch. From memory. */
const THREADS: readonly (readonly [name: string, diameter: number])[] = [
  ['M2 (#2)', 0.002],
  ['M2.5 (#3)', 0.0025],
  ['M3 (#4)', 0.003],
  ['M3.5 (#6)', 0.0035],
  ['M4 (#8)', 0.004],
  ['M5 (#10)', 0.005],
  ['M6 (1/4 in)', 0.006],
  ['M8 (5/16 in)', 0.008],
]

/** The thickest screw that goes through a hole. */
const screwFor = (diameter: number): string =>
  [...THREADS].reverse().find(([, thread]) => thread <= diameter + 1e-4)?.[0] ?? 'wire'

/** Long enough to carry a grate, short enough to stay out of the fuel [m]. Workshop judgement, no source. */
const SCREW_LENGTH = 0.012

const PLAIN = 'plain or stainless steel, never galvanised or zinc-plated'

const roundOf = (opening: Opening): number | null =>
  opening.kind === 'pattern'
    ? opening.diameter
    : opening.kind === 'row' && opening.hole.shape === 'round'
      ? opening.hole.diameter
      : null

/** What slips into a part and lies on the screws in its wall; null for none. */
const carriedBy = (stove: Stove, part: string): string | null =>
  stove.assembly.find(({ place, host }) => place === 'slips into' && host === part)?.part ?? null

const inFixings = (stove: Stove): readonly Fastener[] =>
  [...stove.parts].flatMap(([part, { openings }]) =>
    [...openings].flatMap(([name, opening]): readonly Fastener[] => {
      const diameter = roundOf(opening)
      if (opening.duty !== 'fixing' || diameter === null) return []
      const screw = screwFor(diameter)
      const count = holeCount(opening)
      const where = `in the ${plural(count, 'hole')} of ${called(name)} on ${called(part)}`
      const goesWith = carriedBy(stove, part) ?? part
      return screw === 'wire'
        ? [{ count, what: `ends of steel wire up to ${long(diameter)} thick`, where, goesWith }]
        : [
            {
              count,
              what: `${screw} screws with nuts, about ${long(SCREW_LENGTH)} long, ${PLAIN}`,
              where: `${where}, heads outside, nuts inside`,
              goesWith,
            },
          ]
    }),
  )

/** A host's wall with screw holes for what slips into it. */
const hasFixing = (stove: Stove, host: string | null): boolean =>
  [...(stove.parts.get(host ?? '')?.openings.values() ?? [])].some(
    ({ duty, kind }) => duty === 'fixing' && kind === 'row',
  )

const inAssembly = (stove: Stove): readonly Fastener[] =>
  stove.assembly.flatMap(({ part, place, host, raised }): readonly Fastener[] => {
    const body = stove.parts.get(part)
    if (body?.form === 'band')
      return [
        {
          count: 1,
          what: `M3 (#4) screw with nut, as short as you have, ${PLAIN}; or a fold of the overlap`,
          where: `through the overlap of ${called(part)}, clear of its openings; tight enough to stay, loose enough to turn`,
          goesWith: part,
        },
      ]
    if (place === 'on ground' && raised > 0)
      return [
        {
          count: 3,
          what: `feet ${long(raised)} high: long screws, or stones`,
          where: `under ${called(part)}`,
          goesWith: part,
        },
      ]
    if (place === 'stands in' && raised > 0)
      return [
        {
          count: 3,
          what: `spacers ${long(raised)} high: screws, or rings of tin`,
          where: `under ${called(part)}, on the floor of ${called(host ?? '')}`,
          goesWith: part,
        },
      ]
    if (place === 'slips into' && raised > 0 && !hasFixing(stove, host))
      return [
        {
          count: 3,
          what: `bits of steel wire or tabs of tin, ${PLAIN}`,
          where: `in the wall of ${called(host ?? '')}, ${long(raised)} above its bottom edge, where ${called(part)} does not hold by itself`,
          goesWith: part,
        },
      ]
    return []
  })

/** Everything that holds the stove together, from its fixing holes and from how its parts sit. */
export const fastenersOf = (stove: Stove): readonly Fastener[] => [
  ...inFixings(stove),
  ...inAssembly(stove),
  ...((stove.potGap ?? 0) > 0
    ? [
        {
          count: 3,
          what: `steel rods or long screws that hold the pot ${long(stove.potGap ?? 0)} above the rim, ${PLAIN}`,
          where: 'on the top rim, a third of the way round from each other',
          goesWith: null,
        },
      ]
    : []),
]
