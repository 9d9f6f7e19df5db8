import { long } from '#basis/text/bothUnits.ts'
import type { Drawing, Layer, Point, Shape } from '../../drawing.ts'
import type { FaceOpening } from '../../flat/disc.ts'
import { flatVanes } from '../../flat/vanes.ts'
import { drawScene, FIELD, line, polyline, type SceneLabel, scaleFor } from './page.ts'

const mm = (metres: number): number => metres * 1000

export type FaceLook = 'made' | 'punched' | 'there'

export interface DiscScene {
  readonly title: string
  /** [m] */
  readonly diameter: number
  /** What is open in the middle already [m]; 0 for nothing. */
  readonly openDiameter: number
  readonly seen: 'from above' | 'from below'
  readonly openings: readonly (readonly [name: string, opening: FaceOpening, look: FaceLook])[]
  /** Whether this step cuts the disc out. */
  readonly outline: 'cut' | 'paper'
  readonly captions: readonly string[]
}

const layerOf = (look: FaceLook): Layer => (look === 'made' ? 'cut' : look === 'punched' ? 'drill' : 'paper')

/** What the label of an opening says. */
const wordsFor = (name: string, opening: FaceOpening): readonly string[] => {
  switch (opening.kind) {
    case 'pattern':
      return [`${name}: ${opening.holes.length} ×`, long(opening.diameter)]
    case 'bore':
      return [`${name}:`, `Ø ${long(opening.diameter)}`]
    case 'vanes':
      return [
        `${name}: ${opening.count}`,
        `${long(opening.width)} wide,`,
        `radius ${long(opening.innerRadius)}`,
        `to ${long(opening.outerRadius)}`,
      ]
  }
}

/** One tongue from its end, larger: the disc as a line, the tongue at its angle, where it was dashed. */
const tongueProfile = (
  opening: Extract<FaceOpening, { kind: 'vanes' }>,
  at: Point,
): { readonly shapes: readonly Shape[]; readonly tip: Point } => {
  const length = 11
  const angle = (opening.angle * Math.PI) / 180
  const way = opening.bend === 'up' ? 1 : -1
  const tip = { x: at.x + length * Math.cos(angle), y: at.y + way * length * Math.sin(angle) }
  const middle = way > 0 ? [0, opening.angle] : [360 - opening.angle, 360]
  return {
    tip,
    shapes: [
      line('paper', { x: at.x - 10, y: at.y }, at),
      line('paper', { x: at.x + length + 1, y: at.y }, { x: at.x + length + 9, y: at.y }),
      line('mark', at, { x: at.x + length, y: at.y }),
      line('cut', at, tip),
      ...(opening.angle > 0
        ? [
            {
              kind: 'arc',
              layer: 'dimension',
              centre: at,
              radius: 7,
              from: middle[0] ?? 0,
              to: middle[1] ?? 0,
            } as const,
          ]
        : []),
    ],
  }
}

const middleOf = (points: readonly Point[]): Point => ({
  x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
  y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
})

/** A disc or a can's end, its front at the foot. */
export const discPicture = (scene: DiscScene): Drawing => {
  const { title, openings, seen, outline, captions } = scene
  const radius = mm(scene.diameter) / 2
  const bent = openings.flatMap(([, opening, look]) =>
    opening.kind === 'vanes' && look === 'made' ? [opening] : [],
  )
  const scale = scaleFor(2 * radius, 2 * radius, { width: FIELD.width - 4, height: FIELD.width - 4 })
  const at = (r: number, bearing: number): Point => {
    const angle = (bearing * Math.PI) / 180
    const x = r * scale * Math.sin(angle)
    return { x: seen === 'from above' ? -x : x, y: -r * scale * Math.cos(angle) }
  }
  const circle = (layer: Layer, r: number, centre: Point = { x: 0, y: 0 }): Shape => ({
    kind: 'circle',
    layer,
    centre,
    radius: r * scale,
  })
  const labels: SceneLabel[] = []
  const shapes: Shape[] = [
    circle(outline, radius),
    ...(scene.openDiameter > 0 ? [circle('paper', mm(scene.openDiameter) / 2)] : []),
    polyline('dimension', [at(radius - 3 / scale, 0), at(radius, 2), at(radius, -2)], true),
  ]
  const led = (r: number, bearing: number, words: readonly string[], want: number): void => {
    labels.push({ lines: words, from: at(r, bearing), want })
  }
  const side = (bearing: number): number => (seen === 'from above' ? 360 - bearing : bearing)
  for (const [name, opening, look] of openings) {
    const layer = layerOf(look)
    switch (opening.kind) {
      case 'pattern':
        for (const hole of opening.holes) {
          const centre = at(mm(hole.radius), hole.bearing)
          if (look === 'punched') {
            shapes.push(line(layer, { x: centre.x - 0.8, y: centre.y }, { x: centre.x + 0.8, y: centre.y }))
            shapes.push(line(layer, { x: centre.x, y: centre.y - 0.8 }, { x: centre.x, y: centre.y + 0.8 }))
          } else shapes.push(circle(layer, mm(opening.diameter) / 2, centre))
        }
        break
      case 'bore':
        shapes.push(circle(layer, mm(opening.diameter) / 2))
        break
      case 'vanes':
        for (const { hinge, cut } of flatVanes(opening, at)) {
          shapes.push(polyline(layer, cut), line('fold', hinge[0], hinge[1]))
        }
        break
    }
    if (look === 'there') continue
    const words = wordsFor(name, opening)
    if (opening.kind === 'bore') led(mm(opening.diameter) / 2, side(90), words, 0)
    else if (opening.kind === 'vanes') {
      // Led from a tongue to the upper right, clear of what is said of the middle.
      const middles = flatVanes(opening, at).map(({ cut }) => middleOf(cut))
      const from = middles.toSorted((a, b) => b.x + b.y / 2 - a.x - a.y / 2)[0]
      if (from !== undefined) labels.push({ lines: words, from, want: radius * scale * 0.6 })
    } else {
      // Led from the hole furthest to the right: no other hole lies under the line.
      const right = [...opening.holes].sort(
        (a, b) => at(mm(b.radius), b.bearing).x - at(mm(a.radius), a.bearing).x,
      )[0]
      if (right !== undefined) {
        const from = at(mm(right.radius), right.bearing)
        labels.push({ lines: words, from, want: from.y })
      }
    }
  }
  if (outline === 'cut') led(radius, side(45), ['disc:', `Ø ${long(scene.diameter)}`], -radius * scale * 0.75)
  if (bent[0] !== undefined) {
    const low = -radius * scale - 14
    const { shapes: profile, tip } = tongueProfile(bent[0], { x: -6, y: low })
    shapes.push(...profile)
    labels.push({
      lines: [`bent ${bent[0].bend}, ${Number(bent[0].angle.toFixed(1))}°`],
      from: tip,
      want: tip.y,
    })
  }
  return drawScene(title, { shapes, labels, captions: [`Seen ${seen}, the front at the foot.`, ...captions] })
}
