import { long } from '#basis/text/bothUnits.ts'
import { isWhole } from '#stove/can/ends.ts'
import type { Stove } from '#stove/model.ts'
import type { DrillJob } from './drilling.ts'
import { bitText, makingOf, openingsIn } from './making.ts'

/** Tools to lay out before the first cut, the ones for safety first. */
export const toolsFor = (stove: Stove, jobs: readonly DrillJob[], fasteners: number): readonly string[] => {
  const parts = [...stove.parts.values()]
  const makings = new Set(openingsIn(stove).map(({ what }) => makingOf(what)))
  const ends = parts.flatMap((part) => (part.form === 'can' ? [part.can.bottom, part.can.top] : []))
  const isCutOut = ends.some(({ kind }) => kind === 'open' || kind === 'cut')
  const hasSheet = parts.some(({ form }) => form !== 'can')
  const twist = jobs
    .filter(({ tool }) => tool === 'twist bit')
    .map(({ bit, diameter }) => bitText({ name: bit, diameter }))
  const step = jobs.filter(({ tool }) => tool === 'step drill').map(({ diameter }) => long(diameter))
  const snips =
    hasSheet ||
    makings.has('bore') ||
    makings.has('snips') ||
    makings.has('foot and snips') ||
    ends.some(({ kind }) => kind === 'cut')
  return [
    'cut-proof gloves, eye protection, ear protection',
    'rule and calliper, square, felt pen, scissors, tape, glue stick',
    'printed templates, bars checked with the rule',
    'hammer and centre punch',
    ...(jobs.length > 0 ? ['drill, two clamps, a cradle of two battens, a board of scrap wood'] : []),
    ...(twist.length > 0 ? [`twist bits: ${[...new Set(twist)].join(', ')}`] : []),
    ...(step.length > 0 ? [`step drill with steps of ${[...new Set(step)].join(', ')}`] : []),
    ...(isCutOut ? ['can opener that cuts inside the rim, not a safety opener'] : []),
    ...(ends.some((end) => !isWhole(end))
      ? ['round or post of wood that goes into the cans, as the drill schedule says']
      : []),
    ...(snips ? ['tin snips, straight and curved'] : []),
    ...(makings.has('snips') || makings.has('vanes') ? ['old wood chisel, end-grain block'] : []),
    ...(makings.has('vanes') ? ['flat-nosed pliers, card cut to the vane angle'] : []),
    'files, half-round and round, emery cloth',
    ...(fasteners > 0 ? ['screwdriver, small spanner, wire cutters'] : []),
    'kitchen scale, water or sand at hand for the first burn',
  ]
}
