import { element, px } from '../svg/element.ts'
import type { Cubic, RibbonPlace } from './bend.ts'
import { heatColour } from './colour.ts'
import { type Frame, pixelPair, pixelX, pixelY } from './frame.ts'
import type { HalfPoint } from './half.ts'
import { HEAD_BARB } from './openAir.ts'
import type { Ribbon } from './ribbon.ts'
import type { Sheet } from './sheet.ts'

/** Nearer to the axis than this, a ribbon and its mirror image are one: it reaches over, so that no seam shows [mm], [px]. */
const ON_AXIS = 0.02
const OVERLAP = 0.4

const pair = (frame: Frame, { r, z }: HalfPoint): string =>
  pixelPair(frame, { r: r < ON_AXIS ? r - OVERLAP / frame.scale : r, z })

const cubicTo = (frame: Frame, [, c, d, q]: Cubic): string =>
  `C${pair(frame, c)} ${pair(frame, d)} ${pair(frame, q)}`

const backwards = ([p, c, d, q]: Cubic): Cubic => [q, d, c, p]

const difference = (from: HalfPoint, to: HalfPoint): HalfPoint => ({ r: to.r - from.r, z: to.z - from.z })
const halfway = (a: HalfPoint, b: HalfPoint): HalfPoint => ({ r: (a.r + b.r) / 2, z: (a.z + b.z) / 2 })

/** From a point on a cross-section along the flow, by so many widths of the ribbon. */
const ahead = (right: HalfPoint, left: HalfPoint, times: number, at: HalfPoint): HalfPoint => {
  const across = difference(right, left)
  return { r: at.r + across.z * times, z: at.z - across.r * times }
}

/** Depth of the notch of a tail and length of a head, in widths [1]. */
const NOTCH = 0.4
const HEAD = 0.85

const headPoints = (left: HalfPoint, right: HalfPoint): readonly HalfPoint[] => {
  const across = difference(right, left)
  const out = (from: HalfPoint, side: number): HalfPoint => ({
    r: from.r + across.r * HEAD_BARB * side,
    z: from.z + across.z * HEAD_BARB * side,
  })
  // Of two halves that meet on the axis, each draws half a head.
  if (left.r < ON_AXIS) return [ahead(right, left, 2 * HEAD, left), out(right, -2)]
  return [out(left, 1), ahead(right, left, HEAD, halfway(left, right)), out(right, -1)]
}

interface Outline {
  /** All round. */
  readonly whole: string
  /** Without the cross-sections where another ribbon joins on. */
  readonly edges: string
}

/** Both edges of a ribbon, with a notched tail where it comes from the open air and an arrow head where it ends there. */
const outline = (frame: Frame, { stretches, tail, head }: Ribbon): Outline => {
  const [first] = stretches
  const last = stretches.at(-1)
  if (first === undefined || last === undefined) return { whole: '', edges: '' }
  const [startLeft, startRight] = [first.left[0], first.right[0]]
  const [endLeft, endRight] = [last.left[3], last.right[3]]
  const out = `M${pair(frame, startLeft)}${stretches.map(({ left }) => cubicTo(frame, left)).join('')}`
  const back = stretches
    .toReversed()
    .map(({ right }) => cubicTo(frame, backwards(right)))
    .join('')
  const lineTo = (points: readonly HalfPoint[]): string => points.map((at) => `L${pair(frame, at)}`).join('')
  // A ribbon that goes on in another reaches into it a little, so that no seam shows.
  const lap = (right: HalfPoint, left: HalfPoint, at: HalfPoint, way: 1 | -1): HalfPoint =>
    ahead(right, left, (way * OVERLAP) / frame.scale / Math.hypot(left.r - right.r, left.z - right.z), at)
  const tip = lineTo(
    head
      ? [...headPoints(endLeft, endRight), endRight]
      : [endLeft, endRight].map((at) => lap(endRight, endLeft, at, 1)),
  )
  const foot = lineTo(
    tail
      ? [ahead(startRight, startLeft, NOTCH, halfway(startLeft, startRight)), startLeft]
      : [startRight, startLeft].map((at) => lap(startRight, startLeft, at, -1)),
  )
  // An edge on the axis lies inside: the mirror image goes on there.
  const isInside = stretches.every(({ left }) => left.every(({ r }) => r < ON_AXIS))
  return {
    whole: `${out}${tip}${back}${foot}Z`,
    edges: `${isInside ? '' : out}${head && !isInside ? tip : `M${pair(frame, endRight)}`}${back}${tail ? foot : ''}`,
  }
}

/** An arrow at a place of a ribbon: open on wide ones, on threads a small head wider than the thread. */
const arrowPath = (frame: Frame, { at, angle, width }: RibbonPlace): string => {
  const half = Math.min(Math.max((width * frame.scale) / 2 - 2.2, 2.4), 6.5)
  const [x, y] = [pixelX(frame, at.r), pixelY(frame, at.z)]
  const [cos, sin] = [Math.cos(angle), -Math.sin(angle)]
  const corner = (along: number, across: number): string =>
    `${px(x + along * cos - across * sin)} ${px(y + along * sin + across * cos)}`
  // Beside the axis the mirror image draws the other half.
  if (at.r - width / 2 < ON_AXIS) {
    const tip = Math.min(width * frame.scale - 2.2, 9)
    return `M${px(x - (width / 2) * frame.scale)} ${px(y - tip * 0.5)}l${px(tip)} ${px(tip * 0.9)}`
  }
  return `M${corner(-half * 0.45, -half)}L${corner(half * 0.45, 0)}L${corner(-half * 0.45, half)}`
}

/** Narrower ribbons carry a filled arrow head instead of an open one [px]. */
const THREAD = 6

const threadArrow = (frame: Frame, { at, angle }: RibbonPlace): string => {
  const [x, y] = [pixelX(frame, at.r), pixelY(frame, at.z)]
  const [cos, sin] = [Math.cos(angle), -Math.sin(angle)]
  const corner = (along: number, across: number): string =>
    `${px(x + along * cos - across * sin)} ${px(y + along * sin + across * cos)}`
  return `M${corner(-3, -3.2)}L${corner(3.4, 0)}L${corner(-3, 3.2)}Z`
}

const STOPS = 6

const fillOf = (sheet: Sheet, frame: Frame, { from, to }: Ribbon, id: string): string => {
  const { theme } = sheet
  if (Math.abs(from.temperature - to.temperature) < 1) return heatColour(theme, from.temperature)
  const stops = Array.from({ length: STOPS }, (_, i) => {
    const share = i / (STOPS - 1)
    return element('stop', {
      offset: share,
      'stop-color': heatColour(theme, from.temperature + (to.temperature - from.temperature) * share),
    })
  }).join('')
  sheet.define(
    'linearGradient',
    {
      id,
      gradientUnits: 'userSpaceOnUse',
      x1: pixelX(frame, from.at.r),
      y1: pixelY(frame, from.at.z),
      x2: pixelX(frame, to.at.r),
      y2: pixelY(frame, to.at.z),
    },
    stops,
  )
  return `url(#${id})`
}

/** Outlines of the ribbons of one half as one path: where air went before something was changed. */
export const ribbonEdges = (frame: Frame, ribbons: readonly Ribbon[]): string =>
  ribbons.map((one) => outline(frame, one).edges).join('')

/** The ribbons of one half. */
export const drawAir = (sheet: Sheet, frame: Frame, ribbons: readonly Ribbon[], name: string): void => {
  const { theme } = sheet
  for (const [i, one] of ribbons.entries()) {
    const { whole, edges } = outline(frame, one)
    sheet.draw('path', { d: whole, fill: fillOf(sheet, frame, one, `${name}-${i}`) })
    if (one.medium === 'air')
      sheet.draw('path', {
        d: edges,
        fill: 'none',
        stroke: theme.airEdge,
        'stroke-width': 0.8,
        opacity: 0.75,
      })
  }
  for (const { arrows, medium } of ribbons) {
    const wide = arrows.filter(({ width }) => width * frame.scale >= THREAD)
    // One is enough for a thread, where threads are apart: air spreads out as it goes, gas draws together.
    const thin = arrows
      .filter(({ width }) => width * frame.scale < THREAD)
      .slice(...(medium === 'air' ? [-1] : [0, 1]))
    const colour = medium === 'air' ? theme.arrowOnAir : theme.arrowOnGas
    if (wide.length > 0)
      sheet.draw('path', {
        d: wide.map((place) => arrowPath(frame, place)).join(''),
        fill: 'none',
        stroke: colour,
        'stroke-width': 1.5,
        'stroke-linecap': 'round',
        'stroke-linejoin': 'round',
      })
    if (thin.length > 0)
      sheet.draw('path', {
        d: thin.map((place) => threadArrow(frame, place)).join(''),
        fill: medium === 'air' ? theme.arrowOnAir : theme.ember,
      })
  }
}
