import { drawAnswers, drawShares } from './answerColumn.ts'
import { answersOf, draughtShares } from './answers.ts'
import { drawGround, drawRuler, RULER_HEAD, RULER_SIDE, rulerTop } from './drawRuler.ts'
import { type Frame, pixelY } from './frame.ts'
import { drawBalloons, drawKey } from './key.ts'
import { byHeight, type SectionLabel } from './labels.ts'
import { drawLegend, LEGEND_HEIGHT } from './legend.ts'
import { drawPicture } from './picture.ts'
import { type Plate, type PlateInput, stoveBox } from './plate.ts'
import { sceneOf } from './scene.ts'
import { BODY_SIZE, balancedLines, linesOf, openSheet, PROSE, SMALL_SIZE, titleLines } from './sheet.ts'
import { svgPage } from './svg.ts'

/** Pixels of a phone held upright. */
const WIDTH = 390
const MARGIN = 16
const BALLOONS = 34
const LEADING = 19
const SECTION_GAP = 26
const COLUMN_GAP = 18

/** In a list, a name alone tells nothing. */
const saysSomething = ({ size, more }: SectionLabel): boolean => size !== null || more.length > 0

/** The section for a phone: letters in the picture, their meaning below it, and the answers unless the page says them elsewhere. */
export const narrowPlate = (
  { stove, burn, theme, notes }: PlateInput,
  { answers: told } = { answers: true },
): Plate => {
  const { section, state, air, extent, openings, parts, fuel } = sceneOf(stove, burn)
  const sheet = openSheet(theme)
  const inner = WIDTH - 2 * MARGIN
  let y = MARGIN + 26
  const title = titleLines(stove.name, 28, inner)
  for (const { text, down } of title)
    sheet.letter({ x: MARGIN, y: y + down, text, size: 28, weight: 'semibold' })
  y += 6 + (title.at(-1)?.down ?? 0)
  for (const line of balancedLines(stove.about, BODY_SIZE, inner * PROSE)) {
    y += LEADING
    sheet.letter({ x: MARGIN, y, text: line, ink: 'muted' })
  }

  const rulerX = MARGIN + RULER_SIDE - 6
  const [left, right] = [rulerX + RULER_SIDE - 2, WIDTH - MARGIN - BALLOONS]
  const scale = (right - left) / (2 * extent.radius)
  const over = Math.max(extent.top * scale, rulerTop(section.top) * scale + RULER_HEAD)
  const frame: Frame = {
    axis: (left + right) / 2,
    ground: y + SECTION_GAP + over,
    scale,
  }
  drawGround(sheet, frame, left, right + 6)
  drawPicture(sheet, frame, section, air, state)
  drawRuler(sheet, frame, rulerX, rulerTop(section.top))
  drawBalloons(sheet, frame, openings, {
    x: WIDTH - MARGIN - 10,
    elbow: right + 2,
    top: pixelY(frame, extent.top) + 20,
    bottom: frame.ground - 6,
  })
  y = frame.ground + SECTION_GAP
  y = drawKey(sheet, openings, { x: MARGIN, y, width: inner, lettered: true }) + SECTION_GAP
  if (burn !== null && told) {
    // Answers in two columns, as they come.
    const width = (inner - COLUMN_GAP) / 2
    const answers = answersOf(burn)
    const half = Math.ceil(answers.length / 2)
    const ends = [answers.slice(0, half), answers.slice(half)].map((some, i) =>
      drawAnswers(sheet, some, { x: MARGIN + i * (width + COLUMN_GAP), y, width }),
    )
    const shares = draughtShares(burn.halfway.passages)
    y = Math.max(...ends)
    y = drawShares(sheet, 'Where the draught goes', shares, { x: MARGIN, y, width: inner }) + SECTION_GAP
  }
  y =
    drawKey(sheet, [...parts, ...fuel].sort(byHeight).filter(saysSomething), {
      x: MARGIN,
      y,
      width: inner,
      lettered: false,
    }) + SECTION_GAP
  if (air !== null) {
    drawLegend(sheet, frame, air.widthPerFlow, { x: MARGIN, y })
    y += LEGEND_HEIGHT + 14
  }
  for (const line of notes.flatMap((note) => linesOf(note, SMALL_SIZE, inner * PROSE))) {
    sheet.letter({ x: MARGIN, y: y + SMALL_SIZE, text: line, size: SMALL_SIZE, ink: 'muted' })
    y += 17.5
  }
  const height = Math.ceil(y + MARGIN)
  return {
    svg: svgPage(sheet, { width: WIDTH, height, title: `${stove.name}: section`, description: stove.about }),
    width: WIDTH,
    height,
    letterings: sheet.letterings,
    stove: stoveBox(frame, section),
  }
}
