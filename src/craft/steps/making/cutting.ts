import type { Part } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'
import { bandStrip } from '../../flat/band.ts'
import { bearingText } from '../../flat/wording.ts'
import { makingOf } from '../../shop/making.ts'
import { diameterCheck, lengthCheck, madeChecks } from '../checks.ts'
import type { BuildStep } from '../step.ts'
import { type Bench, isRow, namesOf, openingsAt, step, whereWord } from './bench.ts'
import { drillSentences } from './drilling.ts'
import { bandPicture, facePicture, picture } from './pictures.ts'

const BORE_WAYS =
  'Up to about 32 mm (1 1/4 in) a step drill or a hole saw makes it; a larger one wants a hole for the snips inside its line, then curved snips, staying 1 mm (3/64 in) inside; file to the line.'

/** Bores, and the outline of a disc, while there is tin to clamp. */
export const boreSteps = (_: Bench, name: string, part: Part): readonly BuildStep[] => {
  if (part.form === 'band') return []
  if (part.form === 'disc') {
    const bores = openingsAt(part, 'face').filter(([, opening]) => makingOf(opening) === 'bore')
    const title =
      bores.length > 0 ? `Cut the bore of ${name}, then cut the disc out` : `Cut out the disc of ${name}`
    return [
      step(`cut out ${name}`, title, name, {
        sentences: [
          ...(bores.length > 0 ? [BORE_WAYS] : []),
          `${bores.length > 0 ? 'Then cut' : 'Cut'} round the outline with curved snips, tin in one hand and snips turning into the curve; file it round and dull every edge.`,
        ],
        makes: namesOf(name, bores),
        tools: ['curved snips', ...(bores.length > 0 ? ['step drill or hole saw'] : []), 'half-round file'],
        checks: [
          ...bores.flatMap(([opening, what]) => madeChecks(name, opening, what)),
          diameterCheck(name, part.diameter.value, part.diameter.tolerance),
        ],
        picture: facePicture(title, part, 'face', ['bore'], []),
      }),
    ]
  }
  return (['bottom', 'top'] as const).flatMap((end): readonly BuildStep[] => {
    const bores = openingsAt(part, end).filter(([, opening]) => makingOf(opening) === 'bore')
    if (bores.length === 0) return []
    const title = `Cut the bore in the ${end} of ${name}`
    return [
      step(`bore ${end} of ${name}`, title, name, {
        sentences: [BORE_WAYS, 'Hold the end up with a block of wood from inside.'],
        makes: namesOf(name, bores),
        tools: ['curved snips', 'step drill or hole saw', 'half-round file'],
        checks: bores.flatMap(([opening, what]) => madeChecks(name, opening, what)),
        picture: facePicture(title, part, end, ['bore'], []),
      }),
    ]
  })
}

/** Windows and slits of a wall. */
export const windowSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] => {
  const cut = openingsAt(part, 'wall').filter(([, opening]) => {
    const making = makingOf(opening)
    return making === 'foot and snips' || making === 'snips'
  })
  if (cut.length === 0) return []
  const shapes = new Set(
    cut.filter(isRow).map(([, { hole }]) => (hole.shape === 'slit' ? 'slits' : 'windows')),
  )
  const title = `Cut the ${[...shapes].join(' and ')} of ${name}`
  return [
    step(`cut ${[...shapes].join(' and ')} of ${name}`, title, name, {
      sentences: cut.flatMap(([opening, what]) => {
        const count = holeCount(what)
        return makingOf(what) === 'foot and snips'
          ? [
              ...drillSentences(bench, name, opening),
              `${opening}: from both sides of each drilled foot cut straight up with the snips, then across the top; ${count} in all.`,
            ]
          : [
              `${opening}: chisel along the scored lines onto a block of wood ${part.form === 'can' ? 'held in the can' : 'under the strip'}, or drill a hole for the snips inside each and cut from there; ${count} in all.`,
            ]
      }),
      makes: namesOf(name, cut),
      tools: ['straight snips', 'old wood chisel, hammer, block', 'flat file'],
      checks: cut.flatMap(([opening, what]) => madeChecks(name, opening, what)),
      picture: picture(bench, title, name, 'wall', ['foot and snips', 'snips'], []),
    }),
  ]
}

/** Vanes come last of the cutting: bent tin cannot be clamped any more. */
export const vaneSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] =>
  (['bottom', 'top', 'face'] as const).flatMap((where): readonly BuildStep[] => {
    const vanes = openingsAt(part, where).filter(([, opening]) => opening.kind === 'vanes')
    if (vanes.length === 0) return []
    const title = `Cut and bend the vanes of ${name}`
    return [
      step(`vanes of ${whereWord(part, where)}${name}`, title, name, {
        sentences: vanes.flatMap(([opening, what]) =>
          what.kind === 'vanes'
            ? [
                `${opening}: chisel each tongue free along its three full lines, on an end-grain block; the dash-dot line stays whole.`,
                `Lay a straight edge of wood or steel along the dash-dot line and bend the tongue ${what.bend} over it, ${bearingText(what.angle)} out of the disc: hold a card cut to that angle against it. All the same way, so that the gas turns ${what.hand} seen from above.`,
              ]
            : [],
        ),
        makes: namesOf(name, vanes),
        tools: ['old wood chisel, hammer, end-grain block', 'flat-nosed pliers', 'card cut to the angle'],
        checks: vanes.flatMap(([opening, what]) => madeChecks(name, opening, what)),
        picture: picture(bench, title, name, where, ['vanes'], []),
      }),
    ]
  })

export const bandSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] => {
  if (part.form !== 'band') return []
  const strip = bandStrip(bench.stove, name, part)
  const host = bench.stove.assembly.find((one) => one.part === name)?.host ?? 'its can'
  const title = `Cut out the band of ${name} and bend it`
  return [
    step(`bend ${name}`, title, name, {
      sentences: [
        'Cut the strip out along its outline and dull every edge; round the corners of the overlap.',
        `Draw it over a round of wood or the edge of the bench until it curls, then bend it round ${host}, printed side out. Do not close it yet.`,
      ],
      makes: [],
      tools: ['straight snips', 'file', 'round of wood'],
      checks: [
        lengthCheck(name, null, 'high', part.height, 0.0005),
        lengthCheck(name, null, 'once round, without the overlap', strip.length / 1000, 0.001),
      ],
      picture: bandPicture(bench, title, name, part, 'outline', []),
    }),
  ]
}
