import type { Face } from '#stove/model.ts'
import type { FaceOpening } from '../flat/disc.ts'
import { ringRadii } from '../flat/faceWording.ts'
import { flatVanes, type Polar } from '../flat/vanes.ts'
import { mm } from '../section/half.ts'
import type { PixelBox } from '../section/sheet.ts'
import { ASCENT, type Board, DESCENT, type Spot } from './board.ts'
import { roomUnder, stackHeight, stackWidth, widthUnder } from './dimension.ts'
import type { CardFormat } from './format.ts'
import { size, stacked } from './length.ts'
import { holeLook, tinFill, tinLine } from './tin.ts'

/** A flat face from its own side: the end of a can, or a disc. */
export interface FaceView {
  /** [mm] */
  readonly radius: number
  /** Of what is open in the middle already, 0 for a whole face [mm]. */
  readonly openRadius: number
  readonly face: Face
  readonly openings: readonly { readonly name: string; readonly opening: FaceOpening }[]
  readonly told: ReadonlySet<string>
}

const STEPS = 72
const LARGEST_SCALE = 14
const CAPTION = 1.25

const round = (centre: Spot, radius: number, steps = STEPS): readonly Spot[] =>
  Array.from({ length: steps }, (_, i) => {
    const angle = (2 * Math.PI * i) / steps
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) }
  })

/** The front is at the foot of the picture, as someone who stands before the stove has it. */
const polar =
  (centre: Spot, scale: number, seen: 'above' | 'below'): Polar =>
  (radius, bearing) => {
    const angle = (bearing * Math.PI) / 180
    const x = radius * scale * Math.sin(angle)
    return { x: centre.x + (seen === 'above' ? -x : x), y: centre.y + radius * scale * Math.cos(angle) }
  }

const drawOpening = (
  board: Board,
  format: CardFormat,
  at: Polar,
  scale: number,
  opening: FaceOpening,
  told: boolean,
): void => {
  const look = holeLook(board, format, told)
  switch (opening.kind) {
    case 'pattern': {
      const radius = (mm(opening.diameter) / 2) * scale
      for (const hole of opening.holes)
        board.rule(round(at(mm(hole.radius), hole.bearing), radius, 24), true, look)
      return
    }
    case 'bore':
      board.rule(round(at(0, 0), (mm(opening.diameter) / 2) * scale), true, look)
      return
    case 'vanes':
      for (const { hinge, cut } of flatVanes(opening, at)) {
        board.draw('path', {
          d: `M${cut.map(({ x, y }) => `${x} ${y}`).join('L')}Z`,
          fill: board.theme.paper,
          'fill-opacity': 0.55,
        })
        board.rule(cut, false, { ...look, fill: 'none' })
        board.rule(hinge, false, {
          fill: 'none',
          stroke: told ? board.theme.ember : board.theme.faint,
          'stroke-width': format.stroke.hole,
          'stroke-dasharray': `${format.stroke.hole * 2.6} ${format.stroke.hole * 1.6}`,
        })
      }
  }
}

/** Circles that holes or vanes lie on, to strike with a compass. */
const drawRings = (board: Board, format: CardFormat, centre: Spot, scale: number, view: FaceView): void => {
  const radii = view.openings.flatMap(({ opening }) => ringRadii(opening))
  for (const radius of radii)
    board.draw('circle', {
      cx: centre.x,
      cy: centre.y,
      r: mm(radius) * scale,
      fill: 'none',
      stroke: board.theme.faint,
      'stroke-width': format.stroke.thin,
      'stroke-dasharray': `${format.stroke.thin * 4} ${format.stroke.thin * 4}`,
    })
}

/** The size of a bore in the bore, where it has room. */
const letterBore = (board: Board, format: CardFormat, centre: Spot, scale: number, view: FaceView): void => {
  const bore = view.openings.find(
    ({ name, opening }) => opening.kind === 'bore' && view.told.has(name),
  )?.opening
  if (bore?.kind !== 'bore') return
  const text = size(bore.diameter)
  const em = format.em.dimension
  const lines = stacked(text)
  const [width, height] = [stackWidth(board, format, text), stackHeight(format)]
  const radius = (mm(bore.diameter) / 2) * scale
  if (Math.hypot(width / 2, height / 2) > radius - 0.3 * em) return
  const taken = view.openings.some(
    ({ opening }) =>
      opening.kind === 'pattern' &&
      opening.holes.some((hole) => mm(hole.radius) * scale < Math.hypot(width / 2, height / 2)),
  )
  if (taken) return
  const pitch = height / lines.length
  const first = centre.y + (em * (ASCENT - DESCENT)) / 2 - ((lines.length - 1) * pitch) / 2
  for (const [i, line] of lines.entries())
    board.letter(
      { text: line, em, weight: 'semibold', ink: 'ink' },
      { x: centre.x, y: first + i * pitch },
      'middle',
    )
}

/** A face with its openings and its width. */
export const drawFace = (board: Board, format: CardFormat, region: PixelBox, view: FaceView): void => {
  const em = format.em.dimension
  const top = region.top + CAPTION * em
  const under = roomUnder(format)
  const scale = Math.min(
    (region.right - region.left) / (2 * view.radius),
    (region.bottom - top - under) / (2 * view.radius),
    LARGEST_SCALE,
  )
  const radius = view.radius * scale
  const centre = {
    x: (region.left + region.right) / 2,
    y: top + (region.bottom - top - under) / 2,
  }
  const seen = view.face === 'bottom' ? 'below' : 'above'
  board.letter(
    { text: `seen from ${seen}, front at the foot`, em, weight: 'regular', ink: 'muted' },
    { x: centre.x, y: centre.y - radius - 0.45 * em },
    'middle',
  )
  board.rule(round(centre, radius), true, { ...tinFill(board), ...tinLine(board, format) })
  if (view.openRadius > 0)
    board.rule(round(centre, view.openRadius * scale), true, {
      fill: board.theme.paper,
      stroke: board.theme.faint,
      'stroke-width': format.stroke.thin,
    })
  const at = polar(centre, scale, seen)
  drawRings(board, format, centre, scale, view)
  const openings = [...view.openings].sort(
    (a, b) => Number(view.told.has(a.name)) - Number(view.told.has(b.name)),
  )
  for (const { name, opening } of openings)
    drawOpening(board, format, at, scale, opening, view.told.has(name))
  const tip = at(view.radius, 0)
  board.draw('path', {
    d: `M${tip.x} ${tip.y - format.stroke.tin}l${-0.2 * em} ${-0.4 * em}h${0.4 * em}Z`,
    fill: board.theme.ember,
  })
  letterBore(board, format, centre, scale, view)
  widthUnder(board, format, size((2 * view.radius) / 1000), {
    left: centre.x - radius,
    right: centre.x + radius,
    y: centre.y + radius,
  })
}
