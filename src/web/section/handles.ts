import type { Scene } from '#craft/section/scene.ts'
import { spanMiddle } from '#craft/section/span.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Opening, Stove } from '#stove/model.ts'
import { setBore, stepBore } from '#stove/moves/face.ts'
import type { Move, OpeningRef } from '#stove/moves/move.ts'
import { moveRow, rowOf, rowRange, stepRow } from '#stove/moves/row.ts'
import { fillTo, raisePart, setPotGap, stepFuel, stepPotGap, stepRaised } from '#stove/moves/whole.ts'
import { lengthIn } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'

/**
 * Something of the section that a hand can take hold of. Places in millimetres on the half; what a hand drags it by is in
 * metres.
 */
export interface Handle {
  readonly key: string
  /** For its panel; null: it has none. */
  readonly ref: OpeningRef | null
  /** Which half it stands on. */
  readonly side: 1 | -1
  readonly r: number
  readonly z: number
  /** `up`: dragged up and down; `across`: out and in; null: not dragged, its panel is opened. */
  readonly along: 'up' | 'across' | null
  /** `ring, height`. */
  readonly label: string
  /** What it stands at, in words. */
  readonly value: string
  /** The same as a number of the range, for a reader of the screen [mm]. */
  readonly now: number
  readonly least: number
  readonly most: number
  /** The move that drags it by so much from where a stove has it, which may be newer than the picture [m]. */
  readonly drag: (stove: Stove, file: StoveFile, by: number) => Move | null
  /** The move of an arrow key. */
  readonly step: (stove: Stove, file: StoveFile, by: 1 | -1, large: boolean) => Move | null
}

const none = (): null => null

/** How far a grate or band may be slid by hand [mm]. */
const SLIDES = 400

/** Everything to take hold of, rows first, in the order in which Tab finds it. */
export const handlesOf = ({ section }: Scene, units: Units): readonly Handle[] => {
  const { stove, walls, plates, placed, bed, pot } = section
  const handles: Handle[] = []
  // By part and opening as the file has them: an order that no move changes, or a handle would lose its pointer on the way.
  for (const { name } of placed) {
    const wall = walls.find(({ part }) => part === name)
    const openings = stove.parts.get(name)?.openings ?? new Map<string, Opening>()
    for (const [opening, row] of openings) {
      const gap = wall?.holes.find((hole) => hole.opening === opening)
      const ref = { part: name, opening }
      const range = rowRange(stove, ref)
      if (row.kind !== 'row' || wall === undefined || gap === undefined || range === null) continue
      handles.push({
        key: `row ${name} ${opening}`,
        ref,
        // A band lies on its can: its windows are taken hold of on the other half.
        side: wall.form === 'band' ? -1 : 1,
        r: wall.radius,
        z: spanMiddle(gap),
        along: 'up',
        label: `${opening} in ${name}, height`,
        value: lengthIn(row.height, units),
        now: Math.round(row.height * 1000),
        least: Math.round(range.least * 1000),
        most: Math.round(range.most * 1000),
        drag: (now, file, by) => moveRow(now, file, ref, (rowOf(now, ref)?.height ?? row.height) + by),
        step: (now, file, by, large) => stepRow(now, file, ref, by, large),
      })
    }
  }
  for (const plate of plates) {
    const openings = stove.parts.get(plate.part)?.openings ?? new Map()
    for (const [opening, shape] of openings) {
      if (shape.kind === 'row' || shape.face !== plate.face) continue
      const ref = { part: plate.part, opening }
      const at = { key: `${shape.kind} ${plate.part} ${opening}`, ref, side: 1 as const, z: plate.height }
      if (shape.kind === 'bore')
        handles.push({
          ...at,
          r: (1000 * shape.diameter) / 2,
          along: 'across',
          label: `${opening} in ${plate.part}, diameter`,
          value: lengthIn(shape.diameter, units),
          now: Math.round(shape.diameter * 1000),
          least: 3,
          most: Math.round(2 * plate.reach.to),
          drag: (_, file, by) => setBore(file, ref, shape.diameter + 2 * by),
          step: (_, file, by, large) => stepBore(file, ref, by, large),
        })
      else {
        const outer =
          shape.kind === 'vanes'
            ? 500 * (shape.innerRadius + shape.outerRadius)
            : (plate.patterns.get(opening)?.at(-1)?.middle ?? plate.reach.to * 0.7)
        handles.push({
          ...at,
          r: outer,
          along: null,
          label: `${opening} in ${plate.part}`,
          value: shape.kind === 'vanes' ? `${shape.count} vanes` : `${shape.holes.length} holes`,
          now: 0,
          least: 0,
          most: 0,
          drag: none,
          step: none,
        })
      }
    }
  }
  if (bed !== null) {
    const can = placed.find(({ name }) => name === bed.part)
    const most = can === undefined ? Number.POSITIVE_INFINITY : can.top - bed.floor / 1000
    handles.push({
      key: 'fuel',
      ref: null,
      side: -1,
      r: bed.radius * 0.62,
      z: bed.filledTo,
      along: 'up',
      label: 'fuel, how high it is filled',
      value: lengthIn(stove.fuel.level, units),
      now: Math.round(stove.fuel.level * 1000),
      least: 1,
      most: Math.round(most * 1000),
      drag: (now, file, by) => fillTo(file, now.fuel.level + by, most),
      step: (_, file, by, large) => stepFuel(file, by, large, most),
    })
  }
  for (const { name, part, placement } of placed) {
    const slides = part.role === 'grate' || part.role === 'damper'
    if (!slides || placement.place === 'sits on' || placement.place === 'hangs in') continue
    const plate = plates.find((one) => one.part === name)
    const wall = walls.find((one) => one.part === name)
    if (plate === undefined && wall === undefined) continue
    handles.push({
      key: `raised ${name}`,
      ref: null,
      side: -1,
      r: plate === undefined ? (wall?.radius ?? 0) : plate.reach.to * 0.8,
      z: plate === undefined ? ((wall?.reach.from ?? 0) + (wall?.reach.to ?? 0)) / 2 : plate.height,
      along: 'up',
      label: `${name}, how high it stands`,
      value: lengthIn(placement.raised, units),
      now: Math.round(placement.raised * 1000),
      least: 0,
      most: SLIDES,
      drag: (_, file, by) => raisePart(file, name, placement.raised + by),
      step: (_, file, by, large) => stepRaised(file, name, by, large) ?? raisePart(file, name, by * 0.001),
    })
  }
  if (pot !== null)
    handles.push({
      key: 'pot',
      ref: null,
      side: -1,
      r: pot.radius * 0.8,
      z: pot.bottom,
      along: 'up',
      label: 'pot, space above the rim',
      value: lengthIn(stove.potGap ?? 0, units),
      now: Math.round((stove.potGap ?? 0) * 1000),
      least: 0,
      most: 100,
      drag: (now, file, by) => setPotGap(file, (now.potGap ?? 0) + by),
      step: (_, file, by, large) => stepPotGap(file, by, large),
    })
  return handles
}
