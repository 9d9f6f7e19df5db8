import { type AirAreas, areasOf, type Stage } from '#stove/measure/areas.ts'
import type { Check } from '../context.ts'
import { note } from '../finding.ts'
import { called, wide } from '../phrase.ts'

const nameOf = ({ what, part }: Stage): string => {
  switch (what) {
    case 'intake':
      return `the intake in ${called(part)}`
    case 'gap':
      return `the gap in ${called(part)}`
    case 'primary and secondary':
      return 'the primary and secondary openings together'
    case 'passage':
      return `the opening of ${called(part)}`
    case 'riser':
      return `the riser ${called(part)}`
    case 'outlet':
      return `the outlet in ${called(part)}`
  }
}

const sizeOf = ({ area, effective }: Stage): string =>
  effective < area ? `${wide(area)}, which hot gas passes like ${wide(effective)} of cold` : wide(area)

/** The tightest place and the one after it, for people; null where there are fewer than two. */
export const chokeSentence = ({ stages, choke }: AirAreas): string | null => {
  const next = stages
    .filter((stage) => stage !== choke && stage.what !== 'gap')
    .sort((one, other) => one.effective - other.effective)[0]
  if (choke === null || next === undefined) return null
  return `The tightest place on the way of air and gas is ${nameOf(choke)}: ${sizeOf(choke)}. Next is ${nameOf(next)}: ${sizeOf(next)}.`
}

/** Names the tightest place on the way of all air and gas. */
export const choke: Check = ({ stove, placed, profile }) => {
  const areas = areasOf(stove, placed, profile)
  const sentence = chokeSentence(areas)
  if (areas.choke === null || sentence === null) return []
  return [
    note(
      'areas.choke',
      { part: areas.choke.part },
      sentence,
      'The smallest place is not always what holds most back: see in a prediction which takes most of the draught, and widen that first.',
    ),
  ]
}
