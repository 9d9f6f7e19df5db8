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

/** How a page for a desk or for paper is set out [px]. */
export interface WideLayout {
  readonly width: number
  readonly margin: number
  /** Beside the section, for openings. */
  readonly labels: number
  /** Column of answers; 0 where the page says them elsewhere. */
  readonly answers: number
  /** Of the section; labels that need more get it. */
  readonly tallest: number
}

/** Base line of the first line under the name, and from line to line. */
const ABOUT = 74
const ABOUT_LEADING = 19
const FOOT_GAP = 32
const PART_COLUMN = 126
const BETWEEN = 20
/** Words end over the ground. */
const WORDS_END = 7
/** Paper round the section before leaders bend. */
const AIR_ROOM = 8
const LARGEST_SCALE = 3.6
const NOTE_LEADING = 17.5
const NOTES_X = 400

/** The section with words on both sides of it, over a legend. */
export const widePlate = ({ stove, burn, theme, notes }: PlateInput, layout: WideLayout): Plate => {
  const { width, margin, labels, answers } = layout
  const { section, state, air, extent, openings, parts, fuel } = sceneOf(stove, burn)
  const rulerX = margin + RULER_SIDE
  const told = burn !== null && answers > 0
  const answersX = told ? width - margin - answers : width - margin
  const left = rulerX + RULER_SIDE + PART_COLUMN + BETWEEN + AIR_ROOM
  const right = (told ? answersX - BETWEEN : answersX) - labels - BETWEEN - AIR_ROOM
  const words = Math.max(columnHeight(openings, labels), columnHeight(parts, PART_COLUMN)) + WORDS_END
  const tallest = Math.max(layout.tallest, words)
  const scale = Math.min((right - left) / (2 * extent.radius), tallest / extent.top, LARGEST_SCALE)
  const about = balancedLines(stove.about, BODY_SIZE, (answersX - margin - BETWEEN) * PROSE)
  const head = ABOUT + about.length * ABOUT_LEADING
  const over = Math.max(extent.top * scale, rulerTop(section.top) * scale + RULER_HEAD, words)
  const frame: Frame = { axis: (left + right) / 2, ground: head + over, scale }
  const sheet = openSheet(theme)

  sheet.letter({ x: margin, y: 52, text: stove.name, size: 32, weight: 'semibold' })
  for (const [i, text] of about.entries())
    sheet.letter({ x: margin, y: ABOUT + i * ABOUT_LEADING, text, ink: 'muted' })

  drawGround(sheet, frame, rulerX + RULER_SIDE + 10, right + labels)
  drawPicture(sheet, frame, section, air, state)
  drawRuler(sheet, frame, rulerX, rulerTop(section.top))

  const edge = extent.radius * scale + AIR_ROOM
  const bottom = frame.ground - WORDS_END
  const column = {
    elbow: edge,
    x: edge + BETWEEN,
    top: Math.min(pixelY(frame, extent.top), frame.ground - words),
    bottom,
  }
  // Fuel speaks for itself where the parts need all the room.
  const all = [...parts, ...fuel].sort(byHeight)
  const fits = columnHeight(all, PART_COLUMN) <= column.bottom - column.top
  drawLabelColumn(sheet, frame, fits ? all : parts, { ...column, side: 'left', width: PART_COLUMN })
  drawLabelColumn(sheet, frame, openings, { ...column, side: 'right', width: labels })

  let end = 0
  if (told) {
    const box = { x: answersX, y: 40, width: answers }
    const y = drawAnswers(sheet, answersOf(burn), box)
    const shares = draughtShares(burn.halfway.passages)
    end = drawShares(sheet, 'Where the draught goes', shares, { ...box, y })
  }
  const foot = frame.ground + FOOT_GAP
  if (air !== null) drawLegend(sheet, frame, air.widthPerFlow, { x: margin, y: foot })
  const notesX = air === null ? margin : NOTES_X
  // Beside the answers where they reach down here, else under them.
  const notesRight = end > foot - FOOT_GAP / 2 ? answersX - 2 * BETWEEN : width - margin
  const lines = notes.flatMap((note) => linesOf(note, SMALL_SIZE, (notesRight - notesX) * PROSE))
  for (const [i, text] of lines.entries())
    sheet.letter({ x: notesX, y: foot + 10.5 + i * NOTE_LEADING, text, size: SMALL_SIZE, ink: 'muted' })
  const footHeight = Math.max(air === null ? 0 : LEGEND_HEIGHT, lines.length * NOTE_LEADING)
  const height = Math.ceil(Math.max(end, foot + footHeight) + margin * 0.7)
  return {
    svg: svgPage(sheet, { width, height, title: `${stove.name}: section`, description: stove.about }),
    width,
    height,
    letterings: sheet.letterings,
    stove: stoveBox(frame, section),
  }
}
