import { long } from '#basis/text/bothUnits.ts'
import { plural } from '#stove/check/phrase.ts'
import type { CanPart, Opening, Part, Stove } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'
import { emptiedBy } from './drilling.ts'
import { makingOf } from './making.ts'

/** One cut, in its place in the order. */
export interface Cut {
  readonly part: string
  /** Null for what is done to the part itself. */
  readonly opening: string | null
  readonly what: string
  /** Why it comes where it comes. Common practice, no source. */
  readonly why: string
}

const STIFF = 'While an end is still on: the closed can is round and stiff, and the bit does not chatter.'
const SQUARE = 'While the tin is still larger than the part: there is something to clamp.'
const FLAT = 'Last of the cutting: what is bent cannot be laid flat and clamped any more.'

const holes = (opening: Opening): string => {
  const count = holeCount(opening)
  if (opening.kind === 'bore') return `the bore of ${long(opening.diameter)}`
  if (opening.kind === 'vanes') return plural(count, 'vane')
  if (opening.kind === 'row' && opening.hole.shape !== 'round') return plural(count, opening.hole.shape)
  return plural(count, 'hole')
}

const boreWord = (diameter: number): string =>
  diameter <= 0.032
    ? 'with a step drill or a hole saw'
    : 'drill a hole for the snips inside its line first, then cut round with curved snips'

const byMaking = (
  part: Part,
  making: ReturnType<typeof makingOf>,
): readonly (readonly [name: string, opening: Opening])[] =>
  [...part.openings].filter(([, opening]) => makingOf(opening) === making)

const ofCan = (name: string, part: CanPart): readonly Cut[] => {
  const { can } = part
  const cut = (opening: string | null, what: string, why: string): Cut => ({ part: name, opening, what, why })
  const drilled = [...byMaking(part, 'drill'), ...byMaking(part, 'foot and snips')]
  const snipped = [...byMaking(part, 'foot and snips'), ...byMaking(part, 'snips')]
  const first = emptiedBy(part)
  const second = first === 'top' ? 'bottom' : 'top'
  return [
    ...(first === null || can[first].kind === 'plain' || can[first].kind === 'drawn'
      ? []
      : [
          cut(
            null,
            can[first].kind === 'friction'
              ? `take the lever lid off the ${first}`
              : can[first].kind === 'pull-off'
                ? `pull the lid off the ${first}`
                : `cut the ${first} out along the wall, food out, label off`,
            'First: the food has to come out, and the wooden block has to go in.',
          ),
        ]),
    ...(can.bottom.kind === 'cut'
      ? [
          cut(
            null,
            `strike a line all round, ${long(can.height.value)} below the top edge: the bottom is cut off there later`,
            'Before marking out: heights on this can count from that line, for the bottom edge is still to be made.',
          ),
        ]
      : []),
    ...drilled.map(([opening, what]) =>
      cut(
        opening,
        makingOf(what) === 'drill' ? `drill ${holes(what)}` : `drill the round feet of ${holes(what)}`,
        STIFF,
      ),
    ),
    ...byMaking(part, 'bore').map(([opening, what]) =>
      cut(opening, `cut ${holes(what)}: ${what.kind === 'bore' ? boreWord(what.diameter) : ''}`, STIFF),
    ),
    ...snipped.map(([opening, what]) =>
      cut(
        opening,
        makingOf(what) === 'foot and snips'
          ? `cut ${holes(what)} up from their drilled feet, then across the top`
          : `cut ${holes(what)}: chisel along the lines on the block, or drill a hole for the snips inside each`,
        'After the holes: a wall with windows in it gives under the drill.',
      ),
    ),
    ...byMaking(part, 'vanes').map(([opening, what]) =>
      cut(opening, `cut ${holes(what)} on three sides, then bend them`, FLAT),
    ),
    ...(first !== null && (can[second].kind === 'open' || can[second].kind === 'cut')
      ? [
          cut(
            null,
            `cut the ${second} out along the wall`,
            'After everything in the wall: until now it kept the can round.',
          ),
        ]
      : []),
    ...(['bottom', 'top'] as const).flatMap((end) =>
      can[end].kind === 'cut'
        ? [
            cut(
              null,
              `trim the ${end} until the can is ${long(can.height.value)} high`,
              'Last: the seam holds the mouth round up to here; the template shows the line.',
            ),
          ]
        : [],
    ),
  ]
}

const ofSheet = (name: string, part: Part): readonly Cut[] => {
  const cut = (opening: string | null, what: string, why: string): Cut => ({ part: name, opening, what, why })
  const outline =
    part.form === 'disc'
      ? `cut the disc out, ${long(part.diameter.value)} across`
      : part.form === 'band'
        ? `cut the strip out along the template, ${long(part.height)} high`
        : ''
  const snipped = [...byMaking(part, 'foot and snips'), ...byMaking(part, 'snips')]
  return [
    ...[...byMaking(part, 'drill'), ...byMaking(part, 'foot and snips')].map(([opening, what]) =>
      cut(
        opening,
        makingOf(what) === 'drill' ? `drill ${holes(what)}` : `drill the feet of ${holes(what)}`,
        SQUARE,
      ),
    ),
    ...byMaking(part, 'bore').map(([opening, what]) =>
      cut(opening, `cut ${holes(what)}: ${what.kind === 'bore' ? boreWord(what.diameter) : ''}`, SQUARE),
    ),
    ...snipped.map(([opening, what]) => cut(opening, `cut ${holes(what)} with chisel and block`, SQUARE)),
    cut(null, outline, 'After the openings: now nothing has to be clamped any more.'),
    ...byMaking(part, 'vanes').map(([opening, what]) =>
      cut(opening, `chisel ${holes(what)} free on three sides on a block, then bend them`, FLAT),
    ),
    ...(part.form === 'band' ? [cut(null, 'bend the strip round its can and close it', FLAT)] : []),
  ]
}

/** Every cut of a stove, part by part in the order of its file: what must be cut before what. */
export const cutsOf = (stove: Stove): readonly Cut[] =>
  [...stove.parts].flatMap(([name, part]) => (part.form === 'can' ? ofCan(name, part) : ofSheet(name, part)))
