import type { Millimetres } from '#basis/units.ts'
import type { Point } from '../drawing.ts'
import type { Mesh } from '../solid/mesh.ts'
import { type Camera, PLAN_CAMERA, type Point3, projected } from './camera.ts'
import { chainsOf } from './chains.ts'
import { edgesOf } from './edges.ts'
import { rasterOf } from './raster.ts'
import { regionsOf } from './regions.ts'
import { sceneOf } from './scene.ts'
import { simplified, simplifiedRing } from './simplify.ts'
import { CUT_TONE, TONES, TONES_A_MESH, tonesOf } from './tones.ts'
import { strokesOf } from './visible.ts'

/** `outline`: the picture ends beside it. `edge`: a rim, the edge of a hole. `cut`: tin that was cut. */
export type LineWeight = 'outline' | 'edge' | 'cut'

export interface ViewLine {
  /** Name of the mesh it belongs to. */
  readonly part: string
  readonly weight: LineWeight
  readonly points: readonly Point[]
}

export interface ViewFill {
  readonly part: string
  /** From 0, the darkest, to 1; `cut` is tin that was cut. */
  readonly tone: number | 'cut'
  /** Outlines, and hollows in them: fill by the even-odd rule. */
  readonly rings: readonly (readonly Point[])[]
}

/** A picture of solids from outside, as lines and fills: x to the right, y up, lower left corner at the origin [mm]. */
export interface View {
  readonly width: Millimetres
  readonly height: Millimetres
  /** Millimetres of the picture to one of the stove [1]. */
  readonly scale: number
  /** To be drawn first, in this order. */
  readonly fills: readonly ViewFill[]
  readonly lines: readonly ViewLine[]
  /** Where a point of the stove lies in the picture [mm]. */
  readonly at: (point: Point3) => Point
}

export interface ViewOptions {
  readonly camera?: Camera
  /** Room for the picture [mm]; it is as large as fits. */
  readonly fit: { readonly width: number; readonly height: number }
  /** Bearing of the half that was cut away, where the meshes were cut open [deg]. */
  readonly cutAway?: number
  /** Dots along the longer side of the raster that hides lines: more is finer and slower [1]. */
  readonly dots?: number
}

/** A dot is then a tenth of a millimetre of a picture that fills a page. */
const DOTS = 1400

/** Lines keep within this of where they are [dots]; shades within twice as much of theirs, in their own dots. */
const LINE_WITHIN = 0.3
const SHADE_WITHIN = 0.75
/** Smaller patches of shade are left out: lines cover them [dots of shade, each way two of the raster]. */
const SMALLEST_PATCH = 14

/**
 * A line drawing of closed meshes, hidden lines removed and visible faces lightly shaded. Lines are tested against the
 * nearest surfaces on a grid; they are not taken from it, and lie as true as the meshes do. The same meshes and
 * options give the same picture. Throws `RangeError` for no meshes.
 */
export const viewOf = (meshes: readonly Mesh[], options: ViewOptions): View => {
  const { camera = PLAN_CAMERA, fit, cutAway, dots = DOTS } = options
  if (meshes.length === 0) throw new RangeError('There is nothing to draw.')
  const scene = sceneOf(meshes, { camera, cutAway })
  const { bounds } = scene
  const [wide, high] = [bounds.right - bounds.left, bounds.top - bounds.bottom]
  const scale = Math.min(fit.width / wide, fit.height / high)
  const onPaper = ({ x, y }: Point): Point => ({
    x: (x - bounds.left) * scale,
    y: (y - bounds.bottom) * scale,
  })
  const raster = rasterOf(scene, dots)
  const cornerOwner = new Uint16Array(scene.x.length)
  for (const [index, corner] of scene.triangles.entries())
    cornerOwner[corner] = scene.owner[(index - (index % 3)) / 3] as number
  const nameOf = (owner: number): string => scene.names[owner] as string
  const lines = strokesOf(scene, raster, chainsOf(edgesOf(scene)), cornerOwner).map(
    ({ kind, isOutline, owner, points }): ViewLine => ({
      part: nameOf(owner),
      weight: kind === 'cut' ? 'cut' : isOutline ? 'outline' : 'edge',
      points: simplified(points, LINE_WITHIN / raster.scale).map(onPaper),
    }),
  )
  /** A corner of a dot of shade lies half a dot of the raster before that dot’s middle. */
  const cornerAt = ({ x, y }: Point): Point =>
    onPaper({
      x: (2 * x - 0.5) / raster.scale + raster.left,
      y: (2 * y - 0.5) / raster.scale + raster.bottom,
    })
  const fills = regionsOf(tonesOf(scene, raster), SMALLEST_PATCH).map(({ label, rings }): ViewFill => {
    const tone = (label - 1) % TONES_A_MESH
    return {
      part: nameOf((label - 1 - tone) / TONES_A_MESH),
      tone: tone === CUT_TONE ? 'cut' : tone / (TONES - 1),
      rings: rings.map((ring) => simplifiedRing(ring, SHADE_WITHIN).map(cornerAt)),
    }
  })
  return {
    width: (wide * scale) as Millimetres,
    height: (high * scale) as Millimetres,
    scale,
    fills,
    lines,
    at: (point) => onPaper(projected(scene.axes, point)),
  }
}
