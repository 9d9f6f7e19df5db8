import { boxRound } from '../box.ts'
import type { Point, Shape } from '../drawing.ts'
import { besides, type Label, labelSize, type Room, type Spot } from '../lettering/room.ts'
import { LABEL_SIZE, NOTE_SIZE } from '../lettering/sizes.ts'
import { setDown } from '../move.ts'
import { alongStrip } from './bearing.ts'
import { holeSize } from './hole.ts'
import type { NamedRow, Strip } from './strip.ts'
import { rowLabel } from './wording.ts'

/**
 * A label is set once for so much length, so that every piece of a strip that is cut for a page has it [mm]:
 * a low strip is cut for a page lying flat, a high one for an upright page.
 */
const LABEL_EVERY = { low: 235, high: 175 }
const LOW = 100

/** A strip on which labels look for their places; these are said along and up the strip. */
interface Lettering {
  readonly strip: Strip
  readonly height: number
  readonly room: Room
  /** Middles of equal shares of the strip, each of which has its labels. */
  readonly shares: readonly number[]
  /** How far from the middle of its share a label may go. */
  readonly reach: number
}

/** The same room, asked for places along and up the strip; labels stand as upright as the wall does there. */
const roomOnStrip = ({ development: { at, turnAt, isTapered } }: Strip, room: Room): Room => {
  if (!isTapered) return room
  return {
    ...room,
    letter: (label, spots) => {
      const onPaper = function* (): Generator<Spot> {
        for (const { x, y } of spots) yield { ...at(x, y), turn: turnAt(x) }
      }
      return room.letter(label, onPaper())
    },
  }
}

const openLettering = (strip: Strip, room: Room): Lettering => {
  const { length, height } = strip.development
  const count = Math.ceil(length / (height < LOW ? LABEL_EVERY.low : LABEL_EVERY.high))
  const share = length / count
  return {
    strip,
    height,
    room: roomOnStrip(strip, room),
    shares: Array.from({ length: count }, (_, index) => (index + 0.5) * share),
    reach: share / 4,
  }
}

/** Spots at each of some heights in turn, from `x` outwards. */
function* spotsAt(x: number, heights: readonly number[], reach: number): Generator<Point> {
  for (const y of heights) yield* besides(x, y, reach)
}

/** Every height of the strip, the nearest to `from` first. */
const allHeights = (height: number, from: number): readonly number[] =>
  Array.from({ length: Math.floor(height) }, (_, index) => index + 0.5).sort(
    (a, b) => Math.abs(a - from) - Math.abs(b - from),
  )

/** The first of several labels that finds a place. */
const firstThatFits = (
  room: Room,
  attempts: Iterable<readonly [Label, Iterable<Point>]>,
): readonly Shape[] => {
  for (const [label, spots] of attempts) {
    const set = room.letter(label, spots)
    if (set.length > 0) return set
  }
  return []
}

/**
 * What a row is and how high: over it or under it if there is room, else as near as there is; the height
 * in it says which row is meant.
 */
const letterRow = (
  { strip, height, room, reach }: Lettering,
  { name, row }: NamedRow,
  x: number,
): readonly Shape[] => {
  const middle = strip.development.upOf(row.height)
  const half = holeSize(row.hole).height / 2
  const lines = rowLabel(name, row)
  const near = (label: Label): readonly [Label, Iterable<Point>] => {
    const away = half + 2.7 + labelSize(label).height / 2
    const heights = [0, 1.5, 3, 5].flatMap((more) => [middle + away + more, middle - away - more])
    return [label, spotsAt(x, heights, reach)]
  }
  const [large, small]: readonly [Label, Label] = [
    { lines, size: LABEL_SIZE },
    { lines, size: NOTE_SIZE },
  ]
  const anywhere = allHeights(height, middle)
  const together = firstThatFits(room, [
    near(large),
    near(small),
    near({ lines: [lines.join(', ')], size: NOTE_SIZE }),
    [large, spotsAt(x, anywhere, reach)],
    [small, spotsAt(x, anywhere, reach)],
  ])
  if (together.length > 0) return together
  return lines.flatMap((line) =>
    firstThatFits(room, [
      near({ lines: [line], size: LABEL_SIZE }),
      near({ lines: [line], size: NOTE_SIZE }),
    ]),
  )
}

/** A note on one line if it finds a place so, else on the lines it comes in. */
const letterNote = (
  room: Room,
  lines: readonly string[],
  spots: () => Iterable<Point>,
  angle = 0,
): readonly Shape[] =>
  lines.length === 0
    ? []
    : firstThatFits(room, [
        [{ lines: [lines.join(' ')], size: NOTE_SIZE, angle }, spots()],
        [{ lines, size: NOTE_SIZE, angle }, spots()],
      ])

/** What an edge lies on: near the edge in every share, or once wherever there is room. */
const letterEdge = (
  { height, room, shares, reach }: Lettering,
  lines: readonly string[],
  edge: number,
  inward: 1 | -1,
): readonly Shape[] => {
  const near = [3.6, 5.6, 11, 13].map((away) => edge + inward * away)
  const set = shares.flatMap((x) => letterNote(room, lines, () => spotsAt(x, near, reach)))
  if (set.length > 0) return set
  const anywhere = function* (): Generator<Point> {
    for (const x of shares) yield* spotsAt(x, allHeights(height, edge), reach)
  }
  return letterNote(room, lines, anywhere)
}

/** An arrow that says which way is up, near the left end if it has room there. */
const upArrow = ({ strip, height, room }: Lettering): readonly Shape[] => {
  const tall = Math.min(14, height - 4)
  const line = (from: Point, to: Point): Shape => ({ kind: 'line', layer: 'dimension', from, to })
  const arrow: readonly Shape[] = [
    line({ x: 0, y: 4.5 - tall / 2 }, { x: 0, y: tall / 2 }),
    line({ x: -1.6, y: tall / 2 - 3 }, { x: 0, y: tall / 2 }),
    line({ x: 1.6, y: tall / 2 - 3 }, { x: 0, y: tall / 2 }),
    {
      kind: 'text',
      layer: 'text',
      at: { x: 0, y: 0.8 - tall / 2 },
      text: 'UP',
      size: NOTE_SIZE,
      anchor: 'middle',
      angle: 0,
    },
  ]
  for (const { x, y } of spotsAt(14, allHeights(height, height / 2), 9)) {
    const { at, turnAt } = strip.development
    const here = arrow.map((shape) => setDown(shape, at(x, y), turnAt(x)))
    const { left, right, bottom, top } = boxRound(here)
    if (room.claim({ left: left - 1, right: right + 1, bottom, top })) return here
  }
  return []
}

/** Names the can's side seam; where it is the join, says that the end goes on it. */
const letterSideSeam = ({ strip, height, room }: Lettering): readonly Shape[] => {
  if (strip.sideSeam === null) return []
  const x = alongStrip(strip, strip.sideSeam)
  const isJoin = x < 0.5 || x > strip.development.length - 0.5
  const lines = isJoin ? ['this end goes', 'on the can’s side seam'] : ['can’s side seam']
  const spots = [3, -3, 5, -5].flatMap((beside) =>
    [0.5, 0.4, 0.6, 0.3, 0.7].map((share) => ({ x: x + beside, y: share * height })),
  )
  return letterNote(room, lines, () => spots, 90)
}

/** The strip's name, well away from other words. */
const letterTitle = ({ strip, height, room, shares, reach }: Lettering): readonly Shape[] => {
  const anywhere = function* (): Generator<Point> {
    for (const x of shares) yield* spotsAt(x, allHeights(height, height / 2), reach)
  }
  return room.letter({ lines: [strip.title], size: NOTE_SIZE, beside: 8 }, anywhere())
}

/** Labels on the strip itself, in the order in which they may choose their places. */
export const stripLettering = (strip: Strip, paper: Room): readonly Shape[] => {
  const on = openLettering(strip, paper)
  const { height, room } = on
  const middle = strip.development.length + strip.tab / 2
  const onTab = [0.5, 0.4, 0.6].map((share) => ({ x: middle, y: share * height }))
  return [
    ...letterNote(room, strip.tabText, () => onTab, 90),
    ...strip.rows.flatMap((named) => on.shares.flatMap((x) => letterRow(on, named, x))),
    ...letterEdge(on, strip.lowerEdge, 0, 1),
    ...letterEdge(on, strip.upperEdge, height, -1),
    ...letterEdge(on, strip.cutOut.lower, 0, 1),
    ...letterEdge(on, strip.cutOut.upper, height, -1),
    ...upArrow(on),
    ...letterSideSeam(on),
    ...letterTitle(on),
  ]
}
