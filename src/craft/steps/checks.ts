import { long, slack } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import type { CanPart, Opening, Part, RowOpening } from '#stove/model.ts'
import { drilledCount, wallHoleSize, wrapBearing } from '#stove/opening/row.ts'
import type { StepCheck } from './step.ts'

/** How well a hand with rule and drill can hold a measure [m]. Workshop judgement, no source. */
const HELD = {
  height: 0.001 as Metres,
  pitch: 0.001 as Metres,
  hole: 0.0003 as Metres,
  window: 0.0005 as Metres,
  bore: 0.0005 as Metres,
  edge: 0.001 as Metres,
}

export const lengthCheck = (
  part: string,
  opening: string | null,
  what: string,
  value: number,
  tolerance: number,
): StepCheck => ({
  part,
  opening,
  sentence: `${opening ?? part}: ${long(value)} ${what}, ± ${slack(tolerance)}.`,
  value: value as Metres,
  tolerance: tolerance as Metres,
})

const plainCheck = (part: string, opening: string | null, sentence: string): StepCheck => ({
  part,
  opening,
  sentence: `${opening ?? part}: ${sentence}`,
  value: null,
  tolerance: null,
})

/** The edge that heights on a part count from, as the maker finds it while marking out. */
const datumOf = (part: Part): string => {
  const straight =
    part.form === 'can' && part.can.taper !== undefined ? 'straight up, not along the slope, ' : ''
  return part.form === 'can' && part.can.bottom.kind === 'cut'
    ? `${straight}from the line struck for the new bottom edge`
    : `${straight}from the bottom edge`
}

const middleWord = (row: RowOpening): string =>
  row.hole.shape === 'round' ? 'the hole centre' : `the middle of a ${row.hole.shape}`

const bearingText = (bearing: number): string => `${Number(bearing.toFixed(1))}°`

/** Where a row has to lie, checked on the marks before anything is drilled. */
export const markChecks = (
  part: string,
  body: Part,
  name: string,
  row: RowOpening,
  circumference: number,
): readonly StepCheck[] => {
  const first = row.leftOut.includes(1) ? null : bearingText(wrapBearing(row.bearing))
  const left = row.leftOut.map(
    (place) => `${place} (${bearingText(wrapBearing(row.bearing + ((place - 1) * 360) / row.count))})`,
  )
  return [
    lengthCheck(part, name, `${datumOf(body)} to ${middleWord(row)}`, row.height, HELD.height),
    ...(row.count > 1
      ? [
          lengthCheck(
            part,
            name,
            'from centre to centre, measured round the wall',
            circumference / row.count,
            HELD.pitch,
          ),
        ]
      : []),
    ...(first === null
      ? []
      : [
          plainCheck(part, name, `number 1 lies at ${first} from the front mark, clockwise seen from above.`),
        ]),
    ...(left.length === 0
      ? []
      : [plainCheck(part, name, `place ${left.join(', ')} stays whole: it is crossed out on the template.`)]),
  ]
}

/** What an opening has to measure when it is made, burr taken off. */
export const madeChecks = (part: string, name: string, opening: Opening): readonly StepCheck[] => {
  switch (opening.kind) {
    case 'row': {
      const { hole } = opening
      const count = plainCheck(part, name, `${drilledCount(opening)} of them.`)
      if (hole.shape === 'round')
        return [count, lengthCheck(part, name, 'across a hole, burr taken off', hole.diameter, HELD.hole)]
      const { round, axial } = wallHoleSize(hole)
      return [
        count,
        lengthCheck(part, name, 'round the wall', round, hole.shape === 'slit' ? HELD.hole : HELD.window),
        lengthCheck(part, name, 'up the wall', axial, hole.shape === 'slit' ? HELD.hole : HELD.window),
      ]
    }
    case 'pattern':
      return [
        plainCheck(part, name, `${opening.holes.length} of them.`),
        lengthCheck(part, name, 'across a hole, burr taken off', opening.diameter, HELD.hole),
      ]
    case 'bore':
      return [lengthCheck(part, name, 'across', opening.diameter, HELD.bore)]
    case 'vanes':
      return [
        plainCheck(
          part,
          name,
          `${opening.count} of them, all bent ${opening.bend}, ${bearingText(opening.angle)} ± 3° from the disc.`,
        ),
      ]
  }
}

export const diameterCheck = (part: string, diameter: number, tolerance: number): StepCheck =>
  lengthCheck(part, null, 'across', diameter, Math.max(tolerance, 0.0005))

export const trimCheck = (part: string, { can }: CanPart): StepCheck =>
  lengthCheck(part, null, 'high from edge to edge, the same all round', can.height.value, HELD.edge)

export const heightCheck = (part: string, what: string, value: number): StepCheck =>
  lengthCheck(part, null, what, value, HELD.height)

export const gapCheck = (part: string, host: string, gap: number): StepCheck =>
  lengthCheck(
    part,
    null,
    `of gap to the wall of ${host}, at the front, left, back and right`,
    gap,
    Math.max(0.001, gap / 4),
  )

/** A check by hand and eye. */
export const handCheck = plainCheck
