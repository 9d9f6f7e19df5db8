import { isSeamed } from '#stove/can/ends.ts'
import type { CanEnd, CanPart, Part } from '#stove/model.ts'
import type { Drawing, Shape } from '../../drawing.ts'
import { SMALL_SIZE } from '../../lettering/sizes.ts'
import { moved } from '../../move.ts'
import { type Bought, canOutline, type RowLook, rowShapes, wallHalf, widestHalf } from './can.ts'
import { drawScene, line, PICTURE_WIDTH } from './page.ts'

const mm = (metres: number): number => metres * 1000

/** Several parts side by side to one scale, numbered; what is said of each stands under the picture. */
export interface OverviewItem {
  readonly part: Part
  /** Outside of the can a band goes round, for its width [m]. */
  readonly roundDiameter: number
  readonly bought: Bought
  /** `marks`: where to punch; `ends`: cut open, so that the ends show. */
  readonly shown: 'outline' | 'marks' | 'openings' | 'ends'
  /** The end that is opened now. */
  readonly opened: 'bottom' | 'top' | null
  readonly words: string
}

const GAP = 4
const HIGHEST = 40
/** Arms of a punch mark on a disc. */
const ARM = 0.7

const sizeOf = ({
  part,
  roundDiameter,
  bought,
}: OverviewItem): { width: number; height: number; low: number } => {
  switch (part.form) {
    case 'can':
      return {
        width: 2 * widestHalf(part.can),
        height: mm(part.can.height.value) + bought.above + bought.below,
        low: bought.below,
      }
    case 'disc':
      return { width: mm(part.diameter.value), height: mm(part.diameter.value), low: 0 }
    case 'band':
      return { width: mm(roundDiameter), height: mm(part.height), low: 0 }
  }
}

/** The end of a can cut through: its panel, dashed where it goes. */
const endShapes = (
  { can }: CanPart,
  which: 'bottom' | 'top',
  opened: boolean,
  at: (x: number, z: number) => { x: number; y: number },
  bought: Bought,
): readonly Shape[] => {
  const end: CanEnd = can[which]
  const half = wallHalf(can, which === 'bottom' ? 0 : mm(can.height.value))
  const height = mm(can.height.value)
  const sink = end.kind === 'plain' ? mm(end.countersink) : isSeamed(end) || end.kind === 'cut' ? 3 : 0
  const edge = which === 'bottom' ? -bought.below : height + bought.above
  const z = which === 'bottom' ? edge + sink : edge - sink
  if (end.kind === 'plain' || end.kind === 'drawn') return [line('paper', at(-half, z), at(half, z))]
  if (end.kind === 'pull-off' || end.kind === 'friction') {
    const ring = mm(end.opening.value) / 2
    return [
      line('paper', at(-half, z), at(-ring, z)),
      line('paper', at(ring, z), at(half, z)),
      ...(opened ? [line('cut', at(-ring, z), at(ring, z))] : []),
    ]
  }
  return [line(opened ? 'cut' : 'mark', at(-half, z), at(half, z))]
}

const itemShapes = (item: OverviewItem, scale: number, width: number, low: number): readonly Shape[] => {
  const { part, bought, shown } = item
  const at = (x: number, z: number) => ({ x: x * scale, y: (z + low) * scale })
  switch (part.form) {
    case 'can': {
      const look: RowLook = shown === 'marks' ? 'punched' : 'there'
      const rows =
        shown === 'marks' || shown === 'openings'
          ? [...part.openings.values()].flatMap((opening) =>
              opening.kind === 'row' ? rowShapes(opening, part, { at, scale }, look) : [],
            )
          : []
      const ends =
        shown === 'ends'
          ? (['bottom', 'top'] as const).flatMap((which) =>
              endShapes(part, which, item.opened === which, at, bought),
            )
          : []
      return [...canOutline(part, { at, scale }, 'paper', bought), ...rows, ...ends]
    }
    case 'disc': {
      const radius = (width * scale) / 2
      const centre = { x: 0, y: radius }
      const inner = [...part.openings.values()].flatMap((opening): readonly Shape[] => {
        if (shown === 'outline' || opening.kind === 'vanes' || opening.kind === 'row') return []
        if (opening.kind === 'bore')
          return [{ kind: 'circle', layer: 'dimension', centre, radius: (mm(opening.diameter) / 2) * scale }]
        return opening.holes.flatMap((hole): readonly Shape[] => {
          const turn = (hole.bearing * Math.PI) / 180
          const middle = {
            x: centre.x - mm(hole.radius) * scale * Math.sin(turn),
            y: centre.y - mm(hole.radius) * scale * Math.cos(turn),
          }
          const { x, y } = middle
          return shown === 'marks'
            ? [
                line('drill', { x: x - ARM, y }, { x: x + ARM, y }),
                line('drill', { x, y: y - ARM }, { x, y: y + ARM }),
              ]
            : [
                {
                  kind: 'circle',
                  layer: 'dimension',
                  centre: middle,
                  radius: (mm(opening.diameter) / 2) * scale,
                },
              ]
        })
      })
      return [{ kind: 'circle', layer: 'paper', centre, radius }, ...inner]
    }
    case 'band': {
      const half = (width * scale) / 2
      const top = mm(part.height) * scale
      return [
        line('paper', { x: -half, y: 0 }, { x: half, y: 0 }),
        line('paper', { x: half, y: 0 }, { x: half, y: top }),
        line('paper', { x: half, y: top }, { x: -half, y: top }),
        line('paper', { x: -half, y: top }, { x: -half, y: 0 }),
      ]
    }
  }
}

export const overviewPicture = (title: string, items: readonly OverviewItem[]): Drawing => {
  const sizes = items.map(sizeOf)
  const wide = sizes.reduce((sum, { width }) => sum + width, 0)
  const tall = Math.max(...sizes.map(({ height }) => height))
  const room = PICTURE_WIDTH - 5.2 - GAP * (items.length - 1)
  const scale = Math.min(1, room / wide, HIGHEST / tall)
  let left = 0
  const shapes = items.flatMap((item, index): readonly Shape[] => {
    const size = sizes[index] ?? { width: 0, height: 0, low: 0 }
    const middle = left + (size.width * scale) / 2
    left += size.width * scale + GAP
    return [
      ...itemShapes(item, scale, size.width, size.low).map((shape) => moved(shape, middle, 0)),
      {
        kind: 'text',
        layer: 'text',
        at: { x: middle, y: -1.5 - SMALL_SIZE },
        text: String(index + 1),
        size: SMALL_SIZE,
        anchor: 'middle',
        angle: 0,
      },
    ]
  })
  const ground = line('dimension', { x: -1, y: 0 }, { x: left - GAP + 1, y: 0 })
  return drawScene(title, {
    shapes: [ground, ...shapes],
    labels: [],
    captions: items.map(({ words }, index) => `${index + 1}  ${words}`),
  })
}
