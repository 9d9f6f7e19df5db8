import { MAKING_CAUTIONS } from '../caution.ts'
import type { Drawing, Shape } from '../drawing.ts'
import { breakLines, textWidth } from '../lettering/measure.ts'
import { SMALL_SIZE as SMALL } from '../lettering/sizes.ts'
import { moved } from '../move.ts'
import { checkBar, FOUR_INCHES } from './checkBar.ts'
import { setNotes } from './notes.ts'
import { cautionLines, column, PITCH } from './words.ts'

/** Whose drawing it is and of what day. */
export interface Issue {
  readonly stove: string
  /** `2031-05-17`. */
  readonly date: string
  /** Of the program. */
  readonly version: string
}

/** A drawing with its words and check bars round it, for a file of its own that is not cut into pages. */
export interface LooseSheet extends Omit<Drawing, 'notes'> {
  /** The words as paragraphs: heading, notes, how to check, cautions, whose it is. */
  readonly words: readonly string[]
}

/** Bare paper round everything, and between one block and the next [mm]. */
const MARGIN = 5
const GAP = 5
/** Column on the left that holds the upright check bar [mm]. */
const BAR_COLUMN = 11
/** The level bar with its names [mm]. */
const BAR_ROW = 9
/** Words are set no narrower than this and no wider than reads well [mm]. */
const WORDS = { least: 125, most: 178 }
/** So much has to stand over the foot for the upright bar [mm]. */
const UPRIGHT = FOUR_INCHES + 2

const CHECKING =
  'True size, in millimetres. Before you cut, measure both bars, this one and the upright one: each is 100 mm long, ' +
  'the line beside it 4 in. If one is off by more than 0.5 mm (1/64 in), the holes will be in the wrong place.'

/** Text wide enough to be broken differently is broken at the same places in every file. */
const lines = (paragraph: string, width: number): readonly string[] => breakLines(paragraph, SMALL, width)

/**
 * Sets one drawing with everything that has to travel with it: notes over it, check bars of 100 mm and 4 in
 * each way, the cautions and whose it is under it [mm].
 */
export const looseSheet = (drawing: Drawing, { stove, date, version }: Issue): LooseSheet => {
  const issue = `${stove} · ${date} · Tinwright ${version}`
  const content = Math.max(drawing.width, WORDS.least, Math.min(WORDS.most, textWidth(issue, SMALL)))
  const wordsWide = Math.min(content, WORDS.most)
  const left = MARGIN + BAR_COLUMN
  const notes = setNotes(drawing.title, drawing.notes, wordsWide)
  const issued = lines(issue, wordsWide)
  const cautions = cautionLines(wordsWide)
  const checking = lines(CHECKING, wordsWide)
  const foot = [...checking, '', ...cautions, '', ...issued]

  const footTop = MARGIN + PITCH * foot.length
  const barRow = footTop + 2
  const drawingBottom = barRow + BAR_ROW + GAP
  const notesBottom = drawingBottom + drawing.height + 2
  const height = Math.max(notesBottom + notes.height, barRow + UPRIGHT + GAP) + MARGIN
  const shapes: readonly Shape[] = [
    ...drawing.shapes.map((shape) => moved(shape, left, drawingBottom)),
    ...notes.shapes.map((shape) => moved(shape, left, notesBottom)),
    ...checkBar({ x: left, y: barRow + 4.5 }, false),
    ...checkBar({ x: MARGIN + 4.5, y: barRow + 4.5 }, true),
    ...column(foot, { x: left, y: footTop - PITCH }, SMALL).filter(
      (shape) => shape.kind === 'text' && shape.text !== '',
    ),
  ]
  return {
    title: drawing.title,
    width: (left + content + MARGIN) as Drawing['width'],
    height: height as Drawing['height'],
    shapes,
    words: [drawing.title, ...drawing.notes, CHECKING, ...MAKING_CAUTIONS, issue],
  }
}
