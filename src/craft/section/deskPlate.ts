import { drawAnswers, drawShares } from './answerColumn.ts'
import { answersOf, draughtShares } from './answers.ts'
import { drawGround, drawRuler, RULER_HEAD, RULER_SIDE, rulerTop } from './drawRuler.ts'
import { type Frame, pixelY } from './frame.ts'
import { columnHeight, drawLabelColumn } from './labelColumn.ts'
import { byHeight } from './labels.ts'
import { drawLegend, LEGEND_HEIGHT } from './legend.ts'
import { drawPicture } from './picture.ts'
import { type Plate, type PlateInput, stoveBox } from './plate.ts'
import { sceneOf } from './scene.ts'
import { BODY_SIZE, balancedLines, linesOf, openSheet, PROSE, SMALL_SIZE } from './sheet.ts'
import { svgPage } from './svg.ts'

/** Pixels. Read on a page 840 wide, small letters are still 10 high. */
const WIDTH = 1120
const MARGIN = 28
const HEAD = 112
const FOOT_GAP = 32
const RULER_X = MARGIN + RULER_SIDE
const PART_COLUMN = 126
const LABEL_COLUMN = 216
const ANSWER_COLUMN = 208
const BETWEEN = 20
/** Paper round the section before leaders bend. */
const AIR_ROOM = 8
const TALLEST = 740
const LARGEST_SCALE = 3.6
const NOTE_LEADING = 17.5
const NOTES_X = 400

/** The section with its answers beside it, for a desk or a printed page. */
export const deskPlate = ({ stove, burn, theme, notes }: PlateInput): Plate => {
  const { section, state, air, extent, openings, parts, fuel } = sceneOf(stove, burn)
  const answersX = WIDTH - MARGIN - ANSWER_COLUMN
  const left = RULER_X + RULER_SIDE + PART_COLUMN + BETWEEN + AIR_ROOM
  const right = (burn === null ? WIDTH - MARGIN : answersX - BETWEEN) - LABEL_COLUMN - BETWEEN - AIR_ROOM
  const scale = Math.min((right - left) / (2 * extent.radius), TALLEST / extent.top, LARGEST_SCALE)
  const over = Math.max(extent.top * scale, rulerTop(section.top) * scale + RULER_HEAD)
  const frame: Frame = { axis: (left + right) / 2, ground: HEAD + over, scale }
  const sheet = openSheet(theme)

  sheet.letter({ x: MARGIN, y: 52, text: stove.name, size: 32, weight: 'semibold' })
  const aboutWidth = (answersX - MARGIN - BETWEEN) * PROSE
  for (const [i, line] of balancedLines(stove.about, BODY_SIZE, aboutWidth).entries())
    sheet.letter({ x: MARGIN, y: 74 + i * 19, text: line, ink: 'muted' })

  drawGround(sheet, frame, RULER_X + RULER_SIDE + 10, right + LABEL_COLUMN)
  drawPicture(sheet, frame, section, air, state)
  drawRuler(sheet, frame, RULER_X, rulerTop(section.top))

  const edge = extent.radius * scale + AIR_ROOM
  const column = { elbow: edge, x: edge + BETWEEN, top: pixelY(frame, extent.top), bottom: frame.ground - 7 }
  // Fuel speaks for itself where the parts need all the room.
  const all = [...parts, ...fuel].sort(byHeight)
  const fits = columnHeight(all, PART_COLUMN) <= column.bottom - column.top
  drawLabelColumn(sheet, frame, fits ? all : parts, { ...column, side: 'left', width: PART_COLUMN })
  drawLabelColumn(sheet, frame, openings, { ...column, side: 'right', width: LABEL_COLUMN })

  let end = 0
  if (burn !== null) {
    const box = { x: answersX, y: 40, width: ANSWER_COLUMN }
    const y = drawAnswers(sheet, answersOf(burn), box)
    const shares = draughtShares(burn.halfway.passages)
    end = drawShares(sheet, 'Where the draught goes', shares, { ...box, y })
  }
  const foot = frame.ground + FOOT_GAP
  if (air !== null) drawLegend(sheet, frame, air.widthPerFlow, { x: MARGIN, y: foot })
  const notesX = air === null ? MARGIN : NOTES_X
  // Beside the answers where they reach down here, else under them.
  const notesRight = end > foot - FOOT_GAP / 2 ? answersX - 2 * BETWEEN : WIDTH - MARGIN
  const lines = notes.flatMap((note) => linesOf(note, SMALL_SIZE, (notesRight - notesX) * PROSE))
  for (const [i, text] of lines.entries())
    sheet.letter({ x: notesX, y: foot + 10.5 + i * NOTE_LEADING, text, size: SMALL_SIZE, ink: 'muted' })
  const footHeight = Math.max(air === null ? 0 : LEGEND_HEIGHT, lines.length * NOTE_LEADING)
  const height = Math.ceil(Math.max(end, foot + footHeight) + MARGIN * 0.7)
  return {
    svg: svgPage(sheet, { width: WIDTH, height, title: `${stove.name}: section`, description: stove.about }),
    width: WIDTH,
    height,
    letterings: sheet.letterings,
    stove: stoveBox(frame, section),
  }
}
