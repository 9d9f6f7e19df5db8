import type { Answer, Share } from './answers.ts'
import { BODY_SIZE, linesOf, type Sheet, SMALL_SIZE } from './sheet.ts'

const VALUE_SIZE = 26
const NOTE_LEADING = 16
const BETWEEN = 20

/** Sets answers one below the other; returns where the column ends [px]. */
export const drawAnswers = (
  sheet: Sheet,
  answers: readonly Answer[],
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): number => {
  let at = y
  for (const { caption, value, other, notes } of answers) {
    at += SMALL_SIZE
    sheet.letter({ x, y: at, text: caption, size: SMALL_SIZE, ink: 'muted' })
    at += VALUE_SIZE * 1.08
    sheet.letter({ x, y: at, text: value, size: VALUE_SIZE, weight: 'semibold' })
    at += 3
    for (const line of [...(other === null ? [] : [other]), ...notes].flatMap((note) =>
      linesOf(note, SMALL_SIZE, width),
    )) {
      at += NOTE_LEADING
      sheet.letter({ x, y: at, text: line, size: SMALL_SIZE, ink: 'muted' })
    }
    at += BETWEEN
  }
  return at
}

const BAR_HEIGHT = 5
const ROW = 29
const PERCENT_ROOM = 44

/** Shares as bars on one scale; returns where they end [px]. */
export const drawShares = (
  sheet: Sheet,
  title: string,
  shares: readonly Share[],
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): number => {
  const { theme } = sheet
  const most = Math.max(...shares.map(({ share }) => share))
  let at = y + BODY_SIZE
  sheet.letter({ x, y: at, text: title, weight: 'semibold' })
  at += 8
  for (const { name, share } of shares) {
    const lines = linesOf(name, SMALL_SIZE, width - PERCENT_ROOM)
    for (const [i, text] of lines.entries())
      sheet.letter({ x, y: at + 12 + i * NOTE_LEADING, text, size: SMALL_SIZE, ink: 'muted' })
    at += (lines.length - 1) * NOTE_LEADING
    sheet.letter({
      x: x + width,
      y: at + 12,
      text: `${Math.round(share * 100)}\u00a0%`,
      size: SMALL_SIZE,
      anchor: 'end',
    })
    sheet.draw('rect', { x, y: at + 17, width, height: BAR_HEIGHT, fill: theme.hairline, opacity: 0.55 })
    const length = (width * share) / most
    sheet.draw('rect', { x, y: at + 17, width: length, height: BAR_HEIGHT, fill: theme.ember })
    at += ROW
  }
  return at
}
