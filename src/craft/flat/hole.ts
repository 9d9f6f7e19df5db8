import type { WallHole } from '#stove/model.ts'
import { type Box, grow } from '../box.ts'
import type { Layer, Point, Shape } from '../drawing.ts'

/** How far the arms of a drill centre reach beyond the hole [mm]. */
export const CROSS_BEYOND = 1.5

const millimetres = (value: number): number => value * 1000

const line = (layer: Layer, from: Point, to: Point): Shape => ({ kind: 'line', layer, from, to })

/** A hole to drill: its circle, and the cross that the punch goes on, which no machine is to follow. */
export const drilledHole = (centre: Point, radius: number): readonly Shape[] => {
  const arm = radius + CROSS_BEYOND
  return [
    { kind: 'circle', layer: 'drill', centre, radius },
    line('dimension', { x: centre.x - arm, y: centre.y }, { x: centre.x + arm, y: centre.y }),
    line('dimension', { x: centre.x, y: centre.y - arm }, { x: centre.x, y: centre.y + arm }),
  ]
}

const rectangle = (layer: Layer, centre: Point, width: number, height: number): Shape => ({
  kind: 'polyline',
  layer,
  closed: true,
  points: [
    { x: centre.x - width / 2, y: centre.y - height / 2 },
    { x: centre.x + width / 2, y: centre.y - height / 2 },
    { x: centre.x + width / 2, y: centre.y + height / 2 },
    { x: centre.x - width / 2, y: centre.y + height / 2 },
  ],
})

/** Width and height of an opening as it lies on the flat wall [mm]. */
export const holeSize = (hole: WallHole): { readonly width: number; readonly height: number } => {
  switch (hole.shape) {
    case 'round':
      return { width: millimetres(hole.diameter), height: millimetres(hole.diameter) }
    case 'window':
      return { width: millimetres(hole.width), height: millimetres(hole.height) }
    case 'slit': {
      const [across, along] = [millimetres(hole.width), millimetres(hole.length)]
      return hole.along === 'axis' ? { width: across, height: along } : { width: along, height: across }
    }
  }
}

/**
 * Whether the round foot of a window is a hole drilled first, from whose sides the snips go up. In a window
 * lower than it is wide that hole would reach beyond the top, so the foot is cut.
 */
export const isFootDrilled = (hole: WallHole): boolean =>
  hole.shape === 'window' && hole.foot === 'round' && hole.height >= hole.width

/** The box an opening fills, with the cross of a drilled one. */
export const holeBox = (hole: WallHole, centre: Point): Box => {
  const { width, height } = holeSize(hole)
  const box: Box = {
    left: centre.x - width / 2,
    bottom: centre.y - height / 2,
    right: centre.x + width / 2,
    top: centre.y + height / 2,
  }
  return hole.shape === 'round' || (hole.shape === 'window' && hole.foot === 'round')
    ? grow(box, CROSS_BEYOND)
    : box
}

/** A wall opening round its middle, as it is cut. */
export const wallHole = (hole: WallHole, centre: Point): readonly Shape[] => {
  const { width, height } = holeSize(hole)
  if (hole.shape === 'round') return drilledHole(centre, width / 2)
  if (hole.shape === 'slit' || hole.foot === 'square') return [rectangle('cut', centre, width, height)]
  const foot = { x: centre.x, y: centre.y - height / 2 + width / 2 }
  const top = centre.y + height / 2
  const sides: Shape = {
    kind: 'polyline',
    layer: 'cut',
    closed: false,
    points: [
      { x: foot.x - width / 2, y: foot.y },
      { x: foot.x - width / 2, y: top },
      { x: foot.x + width / 2, y: top },
      { x: foot.x + width / 2, y: foot.y },
    ],
  }
  const half: Shape = { kind: 'arc', layer: 'cut', centre: foot, radius: width / 2, from: 180, to: 360 }
  return [...(isFootDrilled(hole) ? drilledHole(foot, width / 2) : [half]), sides]
}

/** A place of the row that stays whole: its outline dashed and crossed out. */
export const leftOutHole = (hole: WallHole, centre: Point): readonly Shape[] => {
  const { width, height } = holeSize(hole)
  const [x, y] = hole.shape === 'round' ? [width * Math.SQRT1_2, height * Math.SQRT1_2] : [width, height]
  const outline: Shape =
    hole.shape === 'round'
      ? { kind: 'circle', layer: 'mark', centre, radius: width / 2 }
      : rectangle('mark', centre, width, height)
  return [
    outline,
    line('mark', { x: centre.x - x / 2, y: centre.y - y / 2 }, { x: centre.x + x / 2, y: centre.y + y / 2 }),
    line('mark', { x: centre.x - x / 2, y: centre.y + y / 2 }, { x: centre.x + x / 2, y: centre.y - y / 2 }),
  ]
}
