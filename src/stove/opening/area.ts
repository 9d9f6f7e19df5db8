import type { Metres, SquareMetres } from '#basis/units.ts'
import { toRadians } from '#basis/units.ts'
import type { Opening, VanesOpening, WallHole } from '#stove/model.ts'
import { drilledCount } from './row.ts'

/**
 * Open areas by plane geometry. Wall openings are taken flat, as they are marked out: the can's
 * curve changes a hole of half the can's diameter by less than 1.1 % ((arcsin x)/x at x = 1/4).
 */
interface Hole {
  /** [m²] */
  readonly area: number
  /** [m] */
  readonly perimeter: number
}

const circle = (diameter: number): Hole => ({
  area: (Math.PI / 4) * diameter ** 2,
  perimeter: Math.PI * diameter,
})

const rectangle = (width: number, height: number): Hole => ({
  area: width * height,
  perimeter: 2 * (width + height),
})

/** A window whose lower end is a half circle of its width: a rectangle stands on the half circle. */
const roundFooted = (width: number, height: number): Hole => {
  const straight = height - width / 2
  return {
    area: width * straight + (Math.PI / 8) * width ** 2,
    perimeter: width + 2 * straight + (Math.PI / 2) * width,
  }
}

const wallHole = (hole: WallHole): Hole => {
  switch (hole.shape) {
    case 'round':
      return circle(hole.diameter)
    case 'window':
      return hole.foot === 'round' ? roundFooted(hole.width, hole.height) : rectangle(hole.width, hole.height)
    case 'slit':
      return rectangle(hole.length, hole.width)
  }
}

/**
 * Free gap under one bent vane [m]. A tongue of width w turns about its hinge edge by the angle θ
 * and leaves a window of width w in the disc. Its free edge started on the window's far edge and has
 * moved along a circle of radius w about the hinge; the straight distance between the two edges is
 * the chord of that turn, 2 w sin(θ/2). That is all the gas finds until, past 60°, the chord is wider
 * than the window itself, which then is the narrower of the two.
 */
export const vaneGap = (vanes: VanesOpening): Metres =>
  Math.min(vanes.width, 2 * vanes.width * Math.sin(toRadians(vanes.angle) / 2)) as Metres

const oneHole = (opening: Opening): Hole => {
  switch (opening.kind) {
    case 'row':
      return wallHole(opening.hole)
    case 'pattern':
    case 'bore':
      return circle(opening.diameter)
    case 'vanes':
      return rectangle(vaneGap(opening), opening.outerRadius - opening.innerRadius)
  }
}

/** How many holes of an opening are really cut [1]. */
export const holeCount = (opening: Opening): number => {
  switch (opening.kind) {
    case 'row':
      return drilledCount(opening)
    case 'pattern':
      return opening.holes.length
    case 'bore':
      return 1
    case 'vanes':
      return opening.count
  }
}

/** Area of one hole of an opening; of a vane, its free gap [m²]. */
export const holeArea = (opening: Opening): SquareMetres => oneHole(opening).area as SquareMetres

/** Area of all holes of an opening together [m²]. */
export const openingArea = (opening: Opening): SquareMetres =>
  (holeCount(opening) * oneHole(opening).area) as SquareMetres

/**
 * Hydraulic diameter 4 A / P of one hole, P its wetted edge [m]. Of a round hole it is the diameter
 * itself. Zero for vanes that are not bent.
 */
export const hydraulicDiameter = (opening: Opening): Metres => {
  const { area, perimeter } = oneHole(opening)
  return ((4 * area) / perimeter) as Metres
}
