import type { Millimetres } from '#basis/units.ts'
import type { Drawing, Shape } from '../drawing.ts'
import { emOf, shortened } from '../lettering/measure.ts'
import { LABEL_SIZE, NOTE_SIZE, SMALL_SIZE } from '../lettering/sizes.ts'
import type { TrialField, TrialGroup, TrialSheet } from './sheet.ts'

/** As wide as the field of an upright A4 or Letter page leaves it [mm]. */
const WIDTH = 178
const EDGE = 1
/** Off the upright bar beside the sheet. */
const LABEL_FROM = 2
const LABEL_WIDTH = 41
const BLANK_FROM = 45
const AFTER_BLANK = 2
const PREDICTED_WIDTH = 44
/** From line to line: room for a hand with a pencil [mm]. Workshop judgement, no source. */
const ROW = 5
const GROUP_GAP = 2.2
const TITLE = emOf(LABEL_SIZE) * 1.15

const text = (
  words: string,
  x: number,
  y: number,
  size: number,
  layer: 'text' | 'dimension' = 'text',
): Shape => ({ kind: 'text', layer, at: { x, y }, text: words, size, anchor: 'start', angle: 0 })

const rule = (x: number, to: number, y: number, layer: 'paper' | 'dimension'): Shape => ({
  kind: 'line',
  layer,
  from: { x, y },
  to: { x: to, y },
})

/** One blank: label, a line to write on, its unit, how it is taken, what was predicted. */
const rowShapes = ({ label, unit, how, predicted, room }: TrialField, y: number): readonly Shape[] => {
  const end = BLANK_FROM + room
  const after = end + AFTER_BLANK
  const predictedFrom = WIDTH - PREDICTED_WIDTH
  const beside = [unit, how ?? ''].filter((one) => one !== '').join(': ')
  const width = (predicted === null ? WIDTH : predictedFrom - 2) - after
  return [
    text(shortened(label, NOTE_SIZE, LABEL_WIDTH), LABEL_FROM, y, NOTE_SIZE),
    rule(BLANK_FROM, end, y - 0.8, 'paper'),
    ...(beside === '' ? [] : [text(shortened(beside, SMALL_SIZE, width), after, y, SMALL_SIZE)]),
    ...(predicted === null
      ? []
      : [text(shortened(predicted, SMALL_SIZE, PREDICTED_WIDTH), predictedFrom, y, SMALL_SIZE)]),
  ]
}

const groupShapes = ({ title, fields }: TrialGroup, word: string, top: number): readonly Shape[] => {
  const heading = top - TITLE * 0.8
  return [
    text(title, LABEL_FROM, heading, LABEL_SIZE),
    rule(LABEL_FROM, WIDTH, heading - 1.4, 'dimension'),
    ...(fields.some(({ predicted }) => predicted !== null)
      ? [text(word, WIDTH - PREDICTED_WIDTH, heading, SMALL_SIZE)]
      : []),
    ...fields.flatMap((one, index) => rowShapes(one, heading - 1.4 - ROW * (index + 1) + 0.6)),
  ]
}

const groupHeight = ({ fields }: TrialGroup): number => TITLE * 0.8 + 1.4 + ROW * fields.length + 0.8

/** The sheet as a drawing that goes on one upright page of A4 or Letter. */
export const drawTrial = (sheet: TrialSheet): Drawing => {
  const { title, beside, groups, notes } = sheet
  const height = groups.reduce((sum, group) => sum + groupHeight(group), 0) + GROUP_GAP * (groups.length - 1)
  let top = height
  const shapes = groups.flatMap((group) => {
    const drawn = groupShapes(group, beside, top)
    top -= groupHeight(group) + GROUP_GAP
    return drawn
  })
  return {
    title,
    width: (WIDTH + EDGE) as Millimetres,
    height: (height + EDGE) as Millimetres,
    shapes: shapes.map((shape) =>
      shape.kind === 'text'
        ? { ...shape, at: { x: shape.at.x, y: shape.at.y + EDGE / 2 } }
        : shape.kind === 'line'
          ? {
              ...shape,
              from: { x: shape.from.x, y: shape.from.y + EDGE / 2 },
              to: { x: shape.to.x, y: shape.to.y + EDGE / 2 },
            }
          : shape,
    ),
    notes,
  }
}
