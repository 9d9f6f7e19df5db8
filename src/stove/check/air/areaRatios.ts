import { wide } from '#basis/text/bothUnits.ts'
import { bodyInside } from '#stove/can/ends.ts'
import { type AirAreas, areasOf } from '#stove/measure/areas.ts'
import { fuelCanOf } from '#stove/measure/fuelBed.ts'
import { type OpeningPlace, placedOpenings } from '#stove/measure/openingPlace.ts'
import { type WayOut, waysOut } from '#stove/measure/waysOut.ts'
import type { Duty, Finding } from '#stove/model.ts'
import { openingArea } from '#stove/opening/area.ts'
import type { Check, CheckContext } from '../context.ts'
import { note, SAY, warn } from '../finding.ts'
import { called, figure, percent } from '../phrase.ts'
import { AREAS, type RangeRule } from '../rules.ts'
import { areaRemedy } from './areaRemedy.ts'

interface Question {
  readonly context: CheckContext
  readonly areas: AirAreas
  readonly of: (duty: Duty) => readonly OpeningPlace[]
}

/** How bad it is that a ratio is outside its range; null inside it. */
const gradeRatio = (ratio: number, { low, high }: RangeRule): Finding['severity'] | null => {
  const off = ratio < low ? low / ratio : ratio > high ? ratio / high : 1
  return off <= 1 + 1e-9 ? null : off > AREAS.far.value ? 'warn' : 'note'
}

/** A finding about all openings of one duty: named by the opening where there is only one. */
const whereOf = (
  places: readonly OpeningPlace[],
): { readonly part: string; readonly opening: string | null } => ({
  part: places[0]?.part.name ?? '',
  opening: places.length === 1 ? (places[0]?.name ?? null) : null,
})

const rangeOf = ({ low, high }: RangeRule, by: number) => ({ low: low * by, high: high * by })

const secondaryToBed = ({ context, areas, of }: Question): readonly Finding[] => {
  const places = of('secondary')
  if (areas.bed === null || places.length === 0) return []
  const area = areas.byDuty.secondary
  const ratio = area / areas.bed
  const rule = AREAS.secondaryToBed
  const severity = gradeRatio(ratio, rule)
  if (severity === null) return []
  const effect =
    ratio < rule.low
      ? 'too little air reaches the gas, and the flame is long and sooty'
      : 'the jets are weak and cool the flame'
  return [
    SAY[severity](
      'areas.secondary-to-bed',
      whereOf(places),
      `The secondary openings come to ${wide(area)}, ${percent(ratio)} of the fuel can’s section; a natural draught wants about ${rule.low * 100} to ${rule.high * 100} %: ${effect}.`,
      areaRemedy(places, rangeOf(rule, areas.bed), area, context.shelf),
    ),
  ]
}

/**
 * What a face can hold of round holes one width apart: hexagonal at a pitch of two diameters they are
 * π/(8 √3) of it, and a hole's width is kept free along the wall; derived [m²]. Infinite for openings in walls.
 */
const roomFor = ([only, ...more]: readonly OpeningPlace[]): number => {
  if (only === undefined || more.length > 0 || only.opening.kind !== 'pattern')
    return Number.POSITIVE_INFINITY
  const { part } = only.part
  const face = part.form === 'can' ? bodyInside(part.can) : part.form === 'disc' ? part.diameter : null
  if (face === null) return Number.POSITIVE_INFINITY
  return (Math.PI / (8 * Math.sqrt(3))) * Math.PI * Math.max(0, face.value / 2 - only.opening.diameter) ** 2
}

/** Makers’ start is no need: where the prediction burns clean there is nothing to mend. */
const morePrimary = (wanted: number, room: number): string => {
  const leave = 'Leave it where a prediction burns clean.'
  return wanted <= room
    ? `${leave} Where the fuel smoulders, bring them towards ${wide(wanted)} in all.`
    : `${leave} Where the fuel smoulders, make more of them: there is room for about ${wide(room)} with a hole’s width of tin between holes; for more, drill a row low in the wall beside the fuel.`
}

const primaryToSecondary = ({ context, areas, of }: Question): readonly Finding[] => {
  const places = of('primary')
  const { primary, secondary } = areas.byDuty
  if (places.length === 0 || secondary <= 0) return []
  const ratio = primary / secondary
  const rule = AREAS.primaryToSecondary
  if (gradeRatio(ratio, rule) === null) return []
  return [
    note(
      'areas.primary-to-secondary',
      whereOf(places),
      `The primary openings come to ${wide(primary)}, ${figure(ratio)} times the secondary ones; makers often start from about four times, for the fuel itself holds that air back.`,
      ratio < rule.low
        ? morePrimary(rule.low * secondary, roomFor(places))
        : areaRemedy(places, rangeOf(rule, secondary), primary, context.shelf),
    ),
  ]
}

/** Share of the draught spent in the first of two openings in a row: Δp ∝ (ṁ/A)². */
const spentInFirst = (ratio: number): number => 1 / (1 + ratio ** 2)

const intakeToInner = ({ context, areas, of }: Question): readonly Finding[] => {
  const fuelCan = fuelCanOf(context.placed)
  // On the fuel can itself an intake is primary or secondary air under another name.
  const places = of('intake').filter(({ part }) => part.name !== fuelCan?.name)
  const { intake, primary, secondary } = areas.byDuty
  const inner = primary + secondary
  if (places.length === 0 || inner <= 0) return []
  const ratio = intake / inner
  if (gradeRatio(ratio, AREAS.intakeToInner) === null) return []
  const say = ratio < AREAS.starvedIntake.value ? warn : note
  return [
    say(
      'areas.intake-small',
      whereOf(places),
      `The intake comes to ${wide(intake)}, ${figure(ratio)} times the primary and secondary openings together: with those free, ${percent(spentInFirst(ratio))} of the draught is spent in the intake.`,
      areaRemedy(places, rangeOf(AREAS.intakeToInner, inner), intake, context.shelf),
    ),
  ]
}

const passageToBed = ({ areas, of }: Question): readonly Finding[] => {
  const { bed } = areas
  if (bed === null) return []
  return areas.stages
    .filter(({ what }) => what === 'passage')
    .flatMap(({ part, area }) => {
      const ratio = area / bed
      const rule = AREAS.passageToBed
      if (gradeRatio(ratio, rule) === null) return []
      const effect = ratio < rule.low ? 'it holds the gas back' : 'it hardly squeezes the flame'
      const places = of('passage').filter((place) => place.part.name === part)
      return [
        note(
          'areas.passage-to-bed',
          { part, opening: whereOf(places).opening },
          `The gas finds ${wide(area)} open in ${called(part)}, ${percent(ratio)} of the fuel can’s section: ${effect}.`,
          `Most work between ${percent(rule.low)} and ${percent(rule.high)}: ${wide(rule.low * bed)} to ${wide(rule.high * bed)}.`,
        ),
      ]
    })
}

const outletRemedy = ({ context, of }: Question, ways: readonly WayOut[], wanted: number): string => {
  const places = of('outlet')
  const own = places.reduce((sum, { opening }) => sum + openingArea(opening), 0)
  const total = ways.reduce((sum, { area }) => sum + area, 0)
  if (places.length > 0)
    return areaRemedy(
      places,
      { low: own + wanted - total, high: Number.POSITIVE_INFINITY },
      own,
      context.shelf,
    )
  const [way] = ways
  if (way === undefined) return ''
  return way.by === 'under pot'
    ? `Stand the pot ${figure(wanted / total)} times as high over the rim: ${wide(wanted)} in all is wanted.`
    : way.by === 'open top'
      ? `Open the top of ${called(way.part)} wider: ${wide(wanted)} in all is wanted.`
      : `Cut windows close under the rim of ${called(way.part)}: ${wide(wanted)} in all is wanted.`
}

const outletToPassage = (question: Question): readonly Finding[] => {
  const { context, areas, of } = question
  const ways = waysOut(context.stove, context.placed, placedOpenings(context.placed))
  const passages = areas.stages.filter(({ what }) => what === 'passage' || what === 'riser')
  const [way] = ways
  if (way === undefined || passages.length === 0) return []
  const tightest = Math.min(...passages.map(({ area }) => area))
  const area = ways.reduce((sum, one) => sum + one.area, 0)
  const ratio = area / tightest
  const severity = gradeRatio(ratio, AREAS.outletToPassage)
  if (severity === null) return []
  const places = of('outlet')
  return [
    SAY[severity](
      'areas.outlet-small',
      places.length > 0 ? whereOf(places) : { part: way.part },
      `The outlet comes to ${wide(area)}, ${figure(ratio)} times the tightest place before it: flue gas backs up and comes out lower down.`,
      outletRemedy(question, ways, AREAS.outletToPassage.low * tightest),
    ),
  ]
}

const gapToSecondary = ({ areas }: Question): readonly Finding[] =>
  areas.stages
    .filter(({ what }) => what === 'gap')
    .flatMap(({ part, area }) => {
      const { secondary } = areas.byDuty
      const severity = gradeRatio(area / secondary, AREAS.gapToSecondary)
      if (secondary <= 0 || severity === null) return []
      return [
        SAY[severity](
          'areas.gap-narrow',
          { part },
          `The gap inside ${called(part)} leaves ${wide(area)} at its tightest on the way to the secondary holes, ${figure(area / secondary)} times their area: ${percent(spentInFirst(area / secondary))} of that air’s draught is spent there.`,
          `Use a wider ${called(part)} or a narrower fuel can, so that at least ${wide(AREAS.gapToSecondary.low * secondary)} stays free.`,
        ),
      ]
    })

/** A ring left open over the secondary row takes air that should go through its holes. */
const leakAtRim = ({ context, areas }: Question): readonly Finding[] => {
  const { secondary } = areas.byDuty
  const fuelCan = fuelCanOf(context.placed)
  const gap = areas.gaps.find(({ inner }) => inner === fuelCan?.name)
  if (gap === undefined || secondary <= 0) return []
  const ratio = gap.atTop / secondary
  const severity = gradeRatio(ratio, AREAS.leakToSecondary)
  if (severity === null) return []
  return [
    SAY[severity](
      'areas.leak-at-rim',
      { part: gap.inner },
      `The gap between ${called(gap.inner)} and ${called(gap.outer)} is open at the top by ${wide(gap.atTop)}, ${figure(ratio)} times the secondary openings: warm air slips past them.`,
      'Close it with a ring or a wider disc that lies on both cans.',
    ),
  ]
}

/** Open areas against the fuel can's section and against each other. */
export const areaRatios: Check = (context) => {
  const areas = areasOf(context.stove, context.placed, context.profile)
  const places = placedOpenings(context.placed)
  const question: Question = {
    context,
    areas,
    of: (duty) => places.filter(({ opening }) => opening.duty === duty),
  }
  return [
    secondaryToBed,
    primaryToSecondary,
    intakeToInner,
    passageToBed,
    outletToPassage,
    gapToSecondary,
    leakAtRim,
  ].flatMap((ask) => ask(question))
}
