import type { CanPart, DiscPart, Opening } from '#stove/model.ts'
import { apart, type Primitive, pathsOn, roundsOn, type Spot } from './primitive.ts'
import { TRUE } from './wall.ts'

/** Flat faces worked out from the stove alone [mm]. */

const mm = (value: number): number => value * 1000

export interface FaceFacts {
  readonly stuff: 'paper' | 'tin'
  readonly radius: number
  /** Seen from above, bearings run clockwise from the front at the foot; from below the other way. */
  readonly mirror: 1 | -1
  readonly openings: readonly Opening[]
}

/** Radius less than the recess of a seamed end; as docs/decisions/0006 has it. */
const PLAY = 0.5

export const faceOfEnd = ({ can, openings }: CanPart, which: 'bottom' | 'top'): FaceFacts | null => {
  const here = [...openings.values()].filter((one) => one.kind !== 'row' && one.face === which)
  if (here.length === 0) return null
  const body = mm((can.taper?.[which] ?? can.bodyDiameter).value)
  const radius = can[which].kind === 'plain' ? body / 2 - mm(can.bodyWall) - mm(can.endWall) - PLAY : body / 2
  return { stuff: 'paper', radius, mirror: which === 'top' ? -1 : 1, openings: here }
}

/** What comes out of a can whose ends are cut out, where there is nothing else to draw of it; two ends of one size are one. */
export const facesCutOut = ({ can }: CanPart): readonly FaceFacts[] => {
  const faces = (['bottom', 'top'] as const).flatMap((which): readonly FaceFacts[] => {
    const radius = mm((can.taper?.[which] ?? can.bodyDiameter).value) / 2 - mm(can.bodyWall)
    return can[which].kind === 'open'
      ? [{ stuff: 'tin', radius, mirror: which === 'top' ? -1 : 1, openings: [] }]
      : []
  })
  return faces.length === 2 && can.taper === undefined ? faces.slice(1) : faces
}

export const faceOfDisc = (part: DiscPart): FaceFacts => ({
  stuff: 'tin',
  radius: mm(part.diameter.value) / 2,
  mirror: -1,
  openings: [...part.openings.values()],
})

const need = (found: boolean, what: string): void => {
  if (!found) throw new Error(what)
}

const same = (a: Spot, b: Spot): boolean => apart(a, b) <= TRUE
const near = (a: number, b: number): boolean => Math.abs(a - b) <= TRUE

/** Compares everything in a face with the stove; gives how many openings were compared. */
export const compareFace = (facts: FaceFacts, items: readonly Primitive[]): number => {
  const outline = roundsOn(items, facts.stuff === 'tin' ? 'cut' : 'paper').find(({ radius }) =>
    near(radius, facts.radius),
  )
  if (outline === undefined) throw new Error(`no edge of radius ${facts.radius}`)
  const { centre } = outline
  const at = (radius: number, bearing: number): Spot => {
    const angle = (bearing * Math.PI) / 180
    return {
      x: centre.x + facts.mirror * radius * Math.sin(angle),
      y: centre.y - radius * Math.cos(angle),
    }
  }
  let holes = 0
  let bores = 0
  let tongues = 0
  for (const opening of facts.openings) {
    switch (opening.kind) {
      case 'row':
        throw new Error('a row lies in no face')
      case 'pattern':
        for (const { radius, bearing } of opening.holes) {
          const place = at(mm(radius), bearing)
          need(
            roundsOn(items, 'drill').some(
              (hole) => near(2 * hole.radius, mm(opening.diameter)) && same(hole.centre, place),
            ),
            `no hole at ${bearing}°, radius ${mm(radius)}`,
          )
          holes += 1
        }
        break
      case 'bore':
        need(
          roundsOn(items, 'cut').some(
            (one) => near(2 * one.radius, mm(opening.diameter)) && same(one.centre, centre),
          ),
          'no bore',
        )
        bores += 1
        break
      case 'vanes':
        for (let index = 0; index < opening.count; index += 1) {
          const bearing = opening.bearing + (360 * index) / opening.count
          const hinge = [at(mm(opening.innerRadius), bearing), at(mm(opening.outerRadius), bearing)] as const
          need(
            pathsOn(items, 'fold').some(
              ({ points }) => same(points[0] as Spot, hinge[0]) && same(points.at(-1) as Spot, hinge[1]),
            ),
            `no fold at ${bearing}°`,
          )
          // The free edge lies where the gas slides to if bent up, else on the other side.
          const clockwise = (opening.bend === 'up') === (opening.hand === 'clockwise')
          const along = at(1, bearing + (clockwise ? 90 : -90))
          const aside = {
            x: (along.x - centre.x) * mm(opening.width),
            y: (along.y - centre.y) * mm(opening.width),
          }
          const free = hinge.map(({ x, y }) => ({ x: x + aside.x, y: y + aside.y }))
          const corners = [hinge[0], free[0], free[1], hinge[1]] as readonly Spot[]
          need(
            pathsOn(items, 'cut').some(
              ({ points, closed }) =>
                !closed &&
                points.length === 4 &&
                points.every((point, corner) => same(point, corners[corner] as Spot)),
            ),
            `no tongue at ${bearing}°`,
          )
          tongues += 1
        }
    }
  }
  need(roundsOn(items, 'drill').length === holes, 'other holes than the stove has')
  need(
    roundsOn(items, 'cut').length === bores + (facts.stuff === 'tin' ? 1 : 0),
    'other bores than the stove has',
  )
  need(pathsOn(items, 'fold').length === tongues, 'other folds than the stove has')
  return holes + bores + tongues
}
