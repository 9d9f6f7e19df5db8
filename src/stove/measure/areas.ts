import type { SquareMetres } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import { type Profile, profileOf } from '#stove/assembly/profile.ts'
import { bodyInside } from '#stove/can/ends.ts'
import type { CanPart, Duty, Stove } from '#stove/model.ts'
import { openingArea } from '#stove/opening/area.ts'
import { fuelBedOf, fuelCanOf } from './fuelBed.ts'
import { type OpeningPlace, placedOpenings } from './openingPlace.ts'
import { type RingGap, ringGaps, tightestSection } from './ringGap.ts'
import { waysOut } from './waysOut.ts'

/** One place all air or gas has to go through, in the order it does. */
export interface Stage {
  readonly what: 'intake' | 'gap' | 'primary and secondary' | 'passage' | 'riser' | 'tertiary' | 'outlet'
  /** Part it lies in; of several, the first. */
  readonly part: string
  readonly area: SquareMetres
}

/** Open areas of a stove, with dampers fully open. */
export interface AirAreas {
  readonly byDuty: Readonly<Record<Duty, SquareMetres>>
  /** Clear section of the fuel can; null without one. */
  readonly bed: SquareMetres | null
  readonly gaps: readonly RingGap[]
  readonly stages: readonly Stage[]
}

const DUTIES: readonly Duty[] = ['intake', 'primary', 'secondary', 'tertiary', 'outlet', 'passage', 'fixing']

const sum = (places: readonly OpeningPlace[]): number =>
  places.reduce((total, { opening }) => total + openingArea(opening), 0)

const stage = (what: Stage['what'], part: string, area: number): Stage => ({
  what,
  part,
  area: area as SquareMetres,
})

/** A hole with a can standing in it, such as the bore of a lid ring, is no passage. */
const isFilled = ({ part, bottom, opening }: OpeningPlace, profile: Profile): boolean =>
  opening.kind === 'bore' &&
  profile.walls.some(
    (wall) =>
      wall.part !== part.name &&
      wall.outerRadius <= opening.diameter / 2 &&
      wall.bottom < bottom - 1e-4 &&
      wall.top >= bottom - 1e-4,
  )

/** Passages of one part lie side by side, those of different parts one after the other. */
const passages = (places: readonly OpeningPlace[], profile: Profile): readonly Stage[] => {
  const free = places.filter((place) => place.opening.duty === 'passage' && !isFilled(place, profile))
  const parts = [...new Set(free.map(({ part }) => part))].sort((one, other) => one.base - other.base)
  return parts.map((part) => stage('passage', part.name, sum(free.filter((place) => place.part === part))))
}

const risers = (placed: readonly PlacedPart[]): readonly Stage[] =>
  placed.flatMap(({ name, part }) =>
    part.form === 'can' && part.role === 'riser'
      ? [stage('riser', name, (Math.PI / 4) * bodyInside((part as CanPart).can).value ** 2)]
      : [],
  )

/** Between the intake and the secondary row, at the tightest place on the way. */
const gapStage = (
  places: readonly OpeningPlace[],
  gaps: readonly RingGap[],
  profile: Profile,
  placed: readonly PlacedPart[],
): readonly Stage[] => {
  const fuelCan = fuelCanOf(placed)
  const gap = gaps.find(({ inner }) => inner === fuelCan?.name)
  const secondary = places.filter(({ part, opening }) => part === fuelCan && opening.duty === 'secondary')
  const intake = places.filter(({ part, opening }) => part.name === gap?.outer && opening.duty === 'intake')
  if (gap === undefined || secondary.length === 0 || intake.length === 0) return []
  const heights = [...secondary, ...intake].map(({ bottom, top }) => (bottom + top) / 2)
  const area = tightestSection(gap, Math.min(...heights), Math.max(...heights), profile, placed)
  return [stage('gap', gap.outer, area)]
}

const named = (places: readonly OpeningPlace[], duty: Duty): readonly OpeningPlace[] =>
  places.filter(({ opening }) => opening.duty === duty)

/** Total open areas by duty, gaps between cans, and the places on the way of air and gas. */
export const areasOf = (
  stove: Stove,
  placed: readonly PlacedPart[],
  profile: Profile = profileOf(placed),
): AirAreas => {
  const places = placedOpenings(placed)
  const gaps = ringGaps(profile, placed)
  const byDuty = Object.fromEntries(DUTIES.map((duty) => [duty, sum(named(places, duty)) as SquareMetres]))
  const inner = [...named(places, 'primary'), ...named(places, 'secondary')]
  const several = (what: Stage['what'], from: readonly OpeningPlace[]): readonly Stage[] =>
    from[0] === undefined ? [] : [stage(what, from[0].part.name, sum(from))]
  return {
    byDuty: byDuty as Record<Duty, SquareMetres>,
    bed: fuelBedOf(stove, placed)?.section ?? null,
    gaps,
    stages: [
      ...gapStage(places, gaps, profile, placed),
      ...several('intake', named(places, 'intake')),
      ...several('primary and secondary', inner),
      ...passages(places, profile),
      ...risers(placed),
      ...waysOut(stove, placed, places).map(({ part, area }) => stage('outlet', part, area)),
    ],
  }
}
