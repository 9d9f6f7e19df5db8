import { lineWidth, type Sheet, SMALL_SIZE } from '../section/sheet.ts'
import { px } from '../svg/element.ts'
import type { FigureEvent } from './input.ts'
import type { Panel } from './panel.ts'
import { clockText, type Scale } from './scale.ts'

/** A label of an event, and how many rows above the figure it stands. */
export interface PlacedEvent {
  readonly x: number
  readonly lines: readonly string[]
  readonly width: number
  readonly anchor: 'start' | 'end'
  readonly row: number
}

const GAP = 5
const BETWEEN = 8
const LEADING = 15
/** From row to row. */
const EVENT_ROW = 2 * LEADING + 5

/** Times under ten minutes to a tenth. */
const timeText = (seconds: number): string =>
  seconds > 0 && seconds < 600 ? `${(seconds / 60).toFixed(1)} min` : clockText(seconds)

/**
 * Sets labels in rows so that no label stands on another nor on the line that leads down from another. Labels stand to the
 * right of their line, in a row above every later one they reach over; one that would run off the page stands to its left.
 */
export const placeEvents = (
  events: readonly FigureEvent[],
  time: Scale,
  edge: number,
): readonly PlacedEvent[] => {
  const placed: PlacedEvent[] = []
  const late: PlacedEvent[] = []
  for (const { time: when, text } of [...events].sort((a, b) => b.time - a.time)) {
    const lines = [text, timeText(when)]
    const width = Math.max(...lines.map((line) => lineWidth(line, SMALL_SIZE))) + GAP
    const x = time.at(when)
    if (x + width > edge) {
      late.push({ x, lines, width, anchor: 'end', row: 0 })
      continue
    }
    const covered = placed.filter((other) => other.x < x + width + BETWEEN)
    placed.push({ x, lines, width, anchor: 'start', row: Math.max(-1, ...covered.map(({ row }) => row)) + 1 })
  }
  // From left to right, each above all that its label, to the left of its line, reaches over.
  for (const label of late.reverse()) {
    const from = label.x - label.width - BETWEEN
    const covered = placed.filter((other) =>
      other.anchor === 'start' ? other.x + other.width > from : other.x > from,
    )
    placed.push({ ...label, row: Math.max(-1, ...covered.map(({ row }) => row)) + 1 })
  }
  return placed
}

/** Height that the labels take above the figure. */
export const eventsHeight = (placed: readonly PlacedEvent[]): number =>
  (Math.max(-1, ...placed.map(({ row }) => row)) + 1) * EVENT_ROW

/** A line down through the panels for each event, and its label over the first of them. */
export const drawEvents = (sheet: Sheet, placed: readonly PlacedEvent[], panels: readonly Panel[]): void => {
  const top = panels[0]?.top ?? 0
  for (const { x, lines, anchor, row } of placed) {
    const y = top - row * EVENT_ROW
    const down = panels.map(
      (panel, i) => `M${px(x)} ${px(i === 0 ? y - 2 * LEADING : panel.top)}V${px(panel.bottom)}`,
    )
    sheet.draw('path', {
      d: down.join(''),
      stroke: sheet.theme.muted,
      'stroke-width': 0.8,
      fill: 'none',
    })
    for (const [i, text] of lines.entries())
      sheet.letter({
        x: anchor === 'start' ? x + GAP : x - GAP,
        y: y - (lines.length - 1 - i) * LEADING - 5,
        text,
        size: SMALL_SIZE,
        ink: i === 0 ? 'ink' : 'muted',
        anchor,
      })
  }
}
