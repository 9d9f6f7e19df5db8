import { long, slack } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import { bodyInside, isSeamed, isWhole } from '#stove/can/ends.ts'
import { bodyAt } from '#stove/can/taper.ts'
import { plural } from '#stove/check/phrase.ts'
import type { BandPart, Can, CanPart, DiscPart, Opening, Part, RowOpening, Stove } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'
import type { Drawing } from '../drawing.ts'
import { bandStrip } from '../flat/band.ts'
import { lengthRound } from '../flat/development.ts'
import type { FaceOpening } from '../flat/disc.ts'
import { bearingText } from '../flat/wording.ts'
import { canWrap, PAPER_THICKNESS } from '../flat/wrap.ts'
import { type CanToFind, cansToFind } from '../shop/cans.ts'
import { type DrillJob, drillSchedule, emptiedBy } from '../shop/drilling.ts'
import { DEBURR_STEPS } from '../shop/finishing.ts'
import { bitText, type Making, makingOf, type NamedOpening, toolText } from '../shop/making.ts'
import { CUTTING_CAUTIONS } from './cautions.ts'
import { diameterCheck, handCheck, lengthCheck, madeChecks, markChecks, trimCheck } from './checks.ts'
import { canPicture, type RowLook } from './picture/can.ts'
import { discPicture, type FaceLook } from './picture/disc.ts'
import { overviewPicture } from './picture/overview.ts'
import { stripPicture } from './picture/strip.ts'
import { boughtOf, itemOf } from './prepare.ts'
import type { BuildStep } from './step.ts'

type Named<T extends Opening = Opening> = readonly [name: string, opening: T]

/** Everything a step of one part is made from. */
interface Bench {
  readonly stove: Stove
  readonly cans: readonly CanToFind[]
  readonly jobs: readonly DrillJob[]
}

type Where = 'wall' | 'bottom' | 'top' | 'face'

const whereOf = (opening: Opening): Where => (opening.kind === 'row' ? 'wall' : opening.face)

/** Openings of one place in a part, in file order. */
const openingsAt = (part: Part, where: Where): readonly Named[] =>
  [...part.openings].filter(([, opening]) => whereOf(opening) === where)

const isRow = (named: Named): named is Named<RowOpening> => named[1].kind === 'row'
const isFace = (named: Named): named is Named<FaceOpening> => named[1].kind !== 'row'

/** Order in which openings of one part come about; what was made earlier is there when the next is made. */
const ORDER: readonly Making[] = ['drill', 'bore', 'foot and snips', 'snips', 'vanes']

const step = (
  key: string,
  title: string,
  part: string,
  rest: Pick<BuildStep, 'sentences' | 'makes' | 'tools' | 'checks' | 'picture'>,
): BuildStep => ({ key, title, parts: [part], places: null, cautions: CUTTING_CAUTIONS, ...rest })

const lookAt = (opening: Opening, now: readonly Making[] | 'marking'): (RowLook & FaceLook) | null => {
  if (now === 'marking') return 'punched'
  const making = makingOf(opening)
  if (now.includes(making)) return 'made'
  const first = Math.min(...now.map((one) => ORDER.indexOf(one)))
  return ORDER.indexOf(making) < first ? 'there' : null
}

const wallPicture = (
  { cans }: Bench,
  title: string,
  name: string,
  part: CanPart,
  now: readonly Making[] | 'marking',
  captions: readonly string[],
): Drawing => {
  const strip = canWrap(name, part)
  return canPicture({
    title,
    part,
    rows: openingsAt(part, 'wall')
      .filter(isRow)
      .flatMap(([row, opening]) => {
        const look = lookAt(opening, now)
        return look === null ? [] : [[row, opening, look] as const]
      }),
    bought: boughtOf(
      part,
      cans.find((can) => can.part === name),
    ),
    cuts: [],
    left: null,
    paper: now === 'marking' && strip !== null ? { low: strip.low * 1000, high: strip.high * 1000 } : null,
    captions,
  })
}

const facePicture = (
  title: string,
  part: CanPart | DiscPart,
  where: Where,
  now: readonly Making[] | 'marking',
  captions: readonly string[],
): Drawing => {
  const end = part.form === 'can' && where !== 'wall' && where !== 'face' ? part.can[where] : null
  return discPicture({
    title,
    diameter: part.form === 'can' ? bodyInside(part.can).value : part.diameter.value,
    openDiameter: end?.kind === 'pull-off' || end?.kind === 'friction' ? end.opening.value : 0,
    seen: where === 'bottom' ? 'from below' : 'from above',
    openings: openingsAt(part, where)
      .filter(isFace)
      .flatMap(([name, opening]) => {
        const look = lookAt(opening, now)
        return look === null ? [] : [[name, opening, look] as const]
      }),
    outline: part.form === 'disc' && now !== 'marking' && now.includes('bore') ? 'cut' : 'paper',
    captions,
  })
}

const bandPicture = (
  { stove }: Bench,
  title: string,
  name: string,
  part: BandPart,
  now: readonly Making[] | 'outline' | 'marking',
  captions: readonly string[],
): Drawing => {
  const rows = openingsAt(part, 'wall')
  const names = (look: string): ReadonlySet<string> =>
    new Set(
      rows.flatMap(([row, opening]) =>
        (now === 'outline' ? 'there' : now === 'marking' ? 'made' : lookAt(opening, now)) === look
          ? [row]
          : [],
      ),
    )
  return stripPicture({
    title,
    strip: bandStrip(stove, name, part),
    there: names('there'),
    made: names('made'),
    look: now === 'marking' ? 'marked' : 'cut',
    outline: now === 'outline' ? 'cut' : 'paper',
    captions,
  })
}

const picture = (
  bench: Bench,
  title: string,
  name: string,
  where: Where,
  now: readonly Making[],
  captions: readonly string[],
): Drawing => {
  const part = bench.stove.parts.get(name) as Part
  if (part.form === 'band') return bandPicture(bench, title, name, part, now, captions)
  return where === 'wall' && part.form === 'can'
    ? wallPicture(bench, title, name, part, now, captions)
    : facePicture(title, part as CanPart | DiscPart, where, now, captions)
}

const whereWord = (part: Part, where: Where): string =>
  part.form !== 'can' ? '' : where === 'wall' ? 'wall of ' : `${where} of `

/** Where the wrap's lower edge lies. */
const lowerEdgeText = (can: Can): string => {
  if (can.bottom.kind === 'cut') return 'its lower edge on the line struck for the new bottom edge'
  return isSeamed(can.bottom)
    ? `its lower edge rests on the bottom seam, ${long(can.seamHeight)} above the can’s bottom edge`
    : 'its lower edge is level with the can’s bottom edge'
}

/** Marking out and punching: once a part, template by template. */
const markSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] => {
  if (part.openings.size === 0) return []
  const title = `Mark out ${name} and punch the centres`
  const tools = ['template, bars checked', 'scissors, tape, glue stick', 'felt pen', 'hammer, centre punch']
  const punch =
    'Punch every cross that is drilled: lightly first, look, then harder. Score the lines of what is cut.'
  if (part.form !== 'can')
    return [
      step(`mark out ${name}`, title, name, {
        sentences: [
          `Glue the template on the tin, printed side up; leave tin round it to clamp by.`,
          part.form === 'disc' ? 'Punch the middle too: a compass wants it.' : 'Cut nothing out yet.',
          punch,
        ],
        makes: [],
        tools,
        checks: [
          ...openingsAt(part, 'wall')
            .filter(isRow)
            .flatMap(([row, opening]) =>
              part.form === 'band'
                ? markChecks(name, part, row, opening, bandStrip(bench.stove, name, part).length / 1000)
                : [],
            ),
          ...(part.form === 'disc'
            ? [lengthCheck(name, null, 'across the circle of the template', part.diameter.value, 0.0005)]
            : []),
        ],
        picture:
          part.form === 'disc'
            ? facePicture(title, part, 'face', 'marking', [])
            : bandPicture(bench, title, name, part, 'marking', []),
      }),
    ]
  const strip = canWrap(name, part)
  const ends = (['bottom', 'top'] as const).filter((end) => openingsAt(part, end).length > 0)
  const round = (height: Metres): number => lengthRound(bodyAt(part.can, height).value, PAPER_THICKNESS)
  const steps: BuildStep[] = []
  if (strip !== null) {
    const seam = part.can.sideSeam
    steps.push(
      step(`mark out ${name}`, title, name, {
        sentences: [
          ...(part.can.bottom.kind === 'cut'
            ? [
                `Strike a line all round, ${long(part.can.height.value)} below the top edge: the new bottom edge; all heights count from it.`,
              ]
            : []),
          `Tape the wrap round the can, printed side out: ${lowerEdgeText(part.can)}; its ends meet at ${bearingText(strip.join)}${seam === null ? '' : ', and the can’s side seam runs under the line marked for it'}.`,
          'Make a felt-pen mark at the bottom edge under 0°: the front mark, which stays when the paper is gone.',
          punch,
        ],
        makes: [],
        tools,
        checks: [
          handCheck(
            name,
            null,
            `the ends of the wrap meet within ${slack(0.001)}: else measure the can again and print for its true size.`,
          ),
          ...openingsAt(part, 'wall')
            .filter(isRow)
            .flatMap(([row, opening]) => markChecks(name, part, row, opening, round(opening.height))),
        ],
        picture: wallPicture(bench, title, name, part, 'marking', []),
      }),
    )
  }
  for (const end of ends) {
    const endTitle = `Mark out the ${end} of ${name} and punch the centres`
    steps.push(
      step(`mark out ${end} of ${name}`, endTitle, name, {
        sentences: [
          `Lay the disc template on the ${end} from outside, printed side out, FRONT to the can’s front mark, and tape it.`,
          punch,
        ],
        makes: [],
        tools,
        checks: [handCheck(name, null, 'the same margin all round the paper, by eye.')],
        picture: facePicture(endTitle, part, end, 'marking', []),
      }),
    )
  }
  return steps
}

const pilotStep = (bench: Bench): readonly BuildStep[] => {
  const pilot = bench.jobs.find(({ purpose }) => purpose === 'pilot')
  if (pilot === undefined) return []
  const names = [...new Set(pilot.holes.map(({ part }) => part))]
  const title = `Drill all pilot holes, ${bitText({ name: pilot.bit, diameter: pilot.diameter })}`
  return [
    {
      key: 'pilot holes',
      title,
      sentences: [
        `${plural(pilot.count, 'pilot hole')} with one bit, before any bit is changed. Drill in the punch marks, fast and lightly.`,
        ...names.map((name) => {
          const rows = pilot.holes.filter(({ part }) => part === name)
          const told = rows.map(({ opening, count }) => `${count} of ${opening}`).join(', ')
          return `${name}: ${told}. ${rows[0]?.held ?? ''}`
        }),
      ],
      parts: names,
      makes: [],
      places: null,
      tools: ['drill', bitText({ name: pilot.bit, diameter: pilot.diameter }), 'clamps, wooden block'],
      checks: [],
      cautions: CUTTING_CAUTIONS,
      picture: overviewPicture(
        title,
        names.flatMap((name) => {
          const part = bench.stove.parts.get(name)
          const count = pilot.holes.reduce((sum, hole) => sum + (hole.part === name ? hole.count : 0), 0)
          return part === undefined
            ? []
            : [
                itemOf(
                  bench.stove,
                  name,
                  part,
                  'marks',
                  `${name}: ${plural(count, 'pilot hole')}`,
                  bench.cans,
                ),
              ]
        }),
      ),
    },
  ]
}

const drillSentences = ({ jobs }: Bench, name: string, opening: string): readonly string[] =>
  jobs
    .filter(({ purpose }) => purpose === 'hole')
    .flatMap((job) =>
      job.holes
        .filter((holes) => holes.part === name && holes.opening === opening)
        .map(
          ({ count, from, held }) =>
            `${opening}: ${plural(count, 'hole')}, ${toolText({ name: job.bit, diameter: job.diameter }, job.tool)}, from ${from}. ${held} ${job.manner}`,
        ),
    )

const namesOf = (part: string, openings: readonly Named[]): readonly NamedOpening[] =>
  openings.map(([opening]) => ({ part, opening }))

/** Round holes of one place. */
const drillSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] =>
  (['wall', 'bottom', 'top', 'face'] as const).flatMap((where): readonly BuildStep[] => {
    const drilled = openingsAt(part, where).filter(([, opening]) => makingOf(opening) === 'drill')
    if (drilled.length === 0) return []
    const title = `Drill the ${whereWord(part, where)}${part.form === 'can' ? name : `holes of ${name}`}`
    return [
      step(`drill ${whereWord(part, where)}${name}`, title, name, {
        sentences: drilled.flatMap(([opening]) => drillSentences(bench, name, opening)),
        makes: namesOf(name, drilled),
        tools: [
          'drill',
          'clamps',
          part.form === 'can' ? 'wooden block or cradle' : 'board of scrap wood',
          'deburring tool',
        ],
        checks: drilled.flatMap(([opening, what]) => madeChecks(name, opening, what)),
        picture: picture(bench, title, name, where, ['drill'], []),
      }),
    ]
  })

const BORE_WAYS =
  'Up to about 32 mm (1 1/4 in) a step drill or a hole saw makes it; a larger one wants a hole for the snips inside its line, then curved snips, staying 1 mm (3/64 in) inside; file to the line.'

/** Bores, and the outline of a disc, while there is tin to clamp. */
const boreSteps = (_: Bench, name: string, part: Part): readonly BuildStep[] => {
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
const windowSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] => {
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
const vaneSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] =>
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

const isGone = (kind: string): boolean => kind === 'open' || kind === 'cut'

/** The second end of a can, and what is trimmed off it. */
const endSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] => {
  if (part.form !== 'can') return []
  const first = emptiedBy(part)
  const { can } = part
  const second = first === 'top' ? 'bottom' : 'top'
  const out = first !== null && isGone(can[second].kind) && !isWhole(can[second])
  const trims = (['bottom', 'top'] as const).filter((end) => can[end].kind === 'cut')
  if (!out && trims.length === 0) return []
  const title = out
    ? `Cut the ${second} out of ${name}${trims.length > 0 ? ' and cut it down' : ''}`
    : `Cut ${name} down`
  const drilled: readonly Making[] = ORDER.filter((making) => making !== 'vanes')
  return [
    step(`ends of ${name}`, title, name, {
      sentences: [
        ...(out
          ? [
              `Cut the ${second} out along the wall with the can opener, now that everything in the wall is made: until here it kept the can round.`,
            ]
          : []),
        ...trims.map(
          (end) =>
            `Cut the wall down at the ${end} until ${long(can.height.value)} are left: snip round 3 mm (1/8 in) outside the line first, then to the line, and file it level on emery laid on glass.`,
        ),
      ],
      makes: [],
      tools: [
        'can opener that cuts inside the rim',
        'straight and curved snips',
        'file, emery on a flat plate',
      ],
      checks: trims.length > 0 ? [trimCheck(name, part)] : [],
      picture: canPicture({
        title,
        part,
        rows: openingsAt(part, 'wall')
          .filter(isRow)
          .flatMap(([row, opening]) =>
            drilled.includes(makingOf(opening)) ? [[row, opening, 'there'] as const] : [],
          ),
        bought: boughtOf(
          part,
          bench.cans.find((one) => one.part === name),
        ),
        paper: null,
        cuts: [
          ...(out && can[second].kind === 'open'
            ? [second === 'top' ? can.height.value * 1000 - 2.5 : 2.5]
            : []),
          ...trims.map((end) => (end === 'top' ? can.height.value * 1000 : 0)),
        ],
        left: trims.length > 0 ? [long(can.height.value), 'are left'] : null,
        captions: [
          ...(out
            ? [
                `The ${second} is cut out, its ${can[second].kind === 'cut' ? 'seam goes too' : 'seam stays'}.`,
              ]
            : []),
          ...(trims.length > 0 ? ['Heavy: where it is cut. Dashed: what goes.'] : []),
        ],
      }),
    }),
  ]
}

const bandSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] => {
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

const deburrStep = (bench: Bench): BuildStep => {
  const title = 'Deburr everything'
  return {
    key: 'deburr',
    title,
    sentences: ['Peel the templates off; what glue is left burns off with the first fire.', ...DEBURR_STEPS],
    parts: [...bench.stove.parts.keys()],
    makes: [],
    places: null,
    tools: ['countersink or large bit', 'half-round and round file', 'emery'],
    checks: [],
    cautions: CUTTING_CAUTIONS,
    picture: overviewPicture(
      title,
      [...bench.stove.parts].map(([name, part]) => {
        const count = [...part.openings.values()].reduce((sum, opening) => sum + holeCount(opening), 0)
        const words = count === 0 ? 'its edges' : `${plural(count, 'opening')}, both sides, and its edges`
        return itemOf(bench.stove, name, part, 'openings', `${name}: ${words}`, bench.cans)
      }),
    ),
  }
}

/** Everything that is done to the parts one by one, every opening in exactly one step. */
export const makingSteps = (stove: Stove): readonly BuildStep[] => {
  const bench: Bench = { stove, cans: cansToFind(stove, null), jobs: drillSchedule(stove, null) }
  const parts = [...stove.parts]
  const each = (
    steps: (bench: Bench, name: string, part: Part) => readonly BuildStep[],
  ): readonly BuildStep[] => parts.flatMap(([name, part]) => steps(bench, name, part))
  return [
    ...each(markSteps),
    ...pilotStep(bench),
    ...each(drillSteps),
    ...each(boreSteps),
    ...each(windowSteps),
    ...each(vaneSteps),
    ...each(bandSteps),
    ...each(endSteps),
    deburrStep(bench),
  ]
}
