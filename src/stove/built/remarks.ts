import { long } from '#basis/text/bothUnits.ts'
import type { Stove } from '#stove/model.ts'
import { builtSheet } from './sheet.ts'
import type { BuiltValue } from './values.ts'

/** The gap and the diameters tell the same thing twice: further apart than this, one of them is wrong [m]. Workshop judgement, no source. */
const GAP_AGREES = 0.001
/** A can that stands this share of the gap off the middle feeds its holes unevenly [1]. Workshop judgement, no source. */
const OFF_CENTRE = 0.4
/** A part that weighs this much more or less than its tin was taken for [1]. Workshop judgement, no source. */
const TIN_KNOWN = 0.12

const gapRemarks = ({ measure, value, spread }: BuiltValue, built: Stove): readonly string[] => {
  const asBuilt = builtSheet(built).find(
    ({ kind, part }) => kind === 'wall gap' && part === measure.part,
  )?.planned
  const remarks: string[] = []
  if (asBuilt != null && Math.abs(asBuilt - value) > GAP_AGREES)
    remarks.push(
      `The gap round ${measure.part} was measured as ${long(value)}, but the diameters as built leave ${long(asBuilt)}: measure one of them again.`,
    )
  if (spread > OFF_CENTRE * value)
    remarks.push(
      `${measure.part} stands off the middle: the gap round it runs from ${long(value - spread)} to ${long(value + spread)}. The prediction takes it as standing in the middle.`,
    )
  return remarks
}

const weightRemark = ({ measure, value }: BuiltValue): readonly string[] => {
  const { planned, part } = measure
  if (planned === null || planned === 0 || Math.abs(value / planned - 1) < TIN_KNOWN) return []
  const more = value > planned
  const by = Math.round(Math.abs(value / planned - 1) * 100)
  return [
    `${part ?? 'The whole stove'} weighs ${by} % ${more ? 'more' : 'less'} than its tin as given: that tin is ${more ? 'thicker' : 'thinner'} than the plan says, or there is ${more ? 'something on it' : 'less of it'}. It is not taken over; measure the tin and give it as "bodyWall" or "thickness".`,
  ]
}

const patternRemark = ({ measure, value }: BuiltValue, plan: Stove): readonly string[] => {
  const opening = plan.parts.get(measure.part ?? '')?.openings.get(measure.opening ?? '')
  if (value === measure.planned || opening?.kind !== 'pattern') return []
  const how =
    opening.layout === 'rings' ? 'the outermost ring is taken as having the others' : 'spread as a sunflower'
  return [
    `${measure.part}, ${measure.opening}: ${value} holes instead of ${measure.planned}; where they are is not asked, ${how}.`,
  ]
}

/** What the measures say of each other, and what was made of them. */
export const remarksOn = (values: readonly BuiltValue[], plan: Stove, built: Stove): readonly string[] =>
  values.flatMap((value) => {
    switch (value.measure.kind) {
      case 'wall gap':
        return gapRemarks(value, built)
      case 'part weight':
      case 'stove weight':
        return weightRemark(value)
      case 'pattern count':
        return patternRemark(value, plan)
      default:
        return []
    }
  })
