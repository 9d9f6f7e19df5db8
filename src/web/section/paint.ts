import type { AirState } from '#craft/section/airState.ts'
import type { CutBed } from '#craft/section/bed.ts'
import { drawAir } from '#craft/section/drawAir.ts'
import { drawBed } from '#craft/section/drawBed.ts'
import { drawFlame } from '#craft/section/drawFlame.ts'
import { drawGhost } from '#craft/section/drawGhost.ts'
import { drawHeat } from '#craft/section/drawHeat.ts'
import { drawGround, drawRuler, rulerTop } from '#craft/section/drawRuler.ts'
import { drawBeyond, drawPotBody, drawPotWords, drawTin, type PotWater } from '#craft/section/drawTin.ts'
import { type Frame, pixelX, pixelY } from '#craft/section/frame.ts'
import { byHeight } from '#craft/section/labels.ts'
import type { Scene } from '#craft/section/scene.ts'
import { openSheet, type Sheet } from '#craft/section/sheet.ts'
import type { Theme } from '#craft/section/theme.ts'
import { px } from '#craft/svg/element.ts'
import type { Units } from '../settings/settings.ts'
import { drawLabels, labelsHeight } from './drawLabels.ts'
import { labelLinesFor } from './labelWords.ts'
import type { StageLayout } from './layout.ts'

/** What a moment of a burn adds to the tin. */
export interface StageMoment {
  readonly state: AirState | null
  /** Of the flame [m]. */
  readonly flameHeight: number
  readonly water: PotWater | null
}

/** Everything between two tags of an SVG. */
const inner = (sheet: Sheet): string => {
  const definitions = sheet.definitions()
  return definitions === '' ? sheet.body() : `<defs>${definitions}</defs>${sheet.body()}`
}

/** Ground and ruler. They change with the frame alone. */
export const paintGround = (theme: Theme, layout: StageLayout, top: number): string => {
  const sheet = openSheet(theme)
  drawGround(sheet, layout.frame, ...layout.ground)
  drawRuler(sheet, layout.frame, layout.rulerX, rulerTop(top))
  return inner(sheet)
}

/** The parent's outlines behind everything. */
export const paintGhost = (theme: Theme, frame: Frame, ghost: Scene | null): string => {
  if (ghost === null) return ''
  const sheet = openSheet(theme)
  drawGhost(sheet, frame, ghost.section, ghost.air)
  return inner(sheet)
}

/** The fuel in its can. Hundreds of pieces: painted anew only when the bed has changed. */
export const paintBed = (theme: Theme, frame: Frame, bed: CutBed | null): string => {
  if (bed === null) return ''
  const sheet = openSheet(theme)
  drawBed(sheet, frame, bed, 'bed')
  // Where the fuel was filled to: what is left of it has sunk.
  if (bed.top < bed.filledTo - 0.5)
    sheet.draw('path', {
      d: `M${px(pixelX(frame, -bed.radius))} ${px(pixelY(frame, bed.filledTo))}H${px(pixelX(frame, bed.radius))}`,
      fill: 'none',
      stroke: theme.faint,
      'stroke-width': 1,
      'stroke-dasharray': '3 4',
    })
  return inner(sheet)
}

/** Two beds that look alike. */
export const sameBed = (a: CutBed | null, b: CutBed | null): boolean =>
  a === b ||
  (a !== null &&
    b !== null &&
    a.radius === b.radius &&
    a.floor === b.floor &&
    a.filledTo === b.filledTo &&
    a.front === b.front &&
    a.top === b.top &&
    a.raw.length === b.raw.length)

/** Warmth of rooms, what is seen beyond the cut. */
export const paintBehind = (theme: Theme, frame: Frame, { section, state }: Scene): string => {
  const sheet = openSheet(theme)
  if (state !== null) drawHeat(sheet, frame, section, state)
  drawBeyond(sheet, frame, section)
  return inner(sheet)
}

/** Flame, pot, air and tin. */
export const paintFront = (
  theme: Theme,
  frame: Frame,
  { section, air }: Scene,
  { flameHeight, water }: Pick<StageMoment, 'flameHeight' | 'water'>,
): string => {
  const sheet = openSheet(theme)
  drawFlame(sheet, frame, section, 1000 * flameHeight)
  if (section.pot !== null) drawPotBody(sheet, frame, section.pot, water)
  const half = openSheet(theme)
  if (air !== null) drawAir(half, frame, air.ribbons, 'air')
  drawTin(half, frame, section)
  sheet.defineAll(half)
  sheet.draw('g', { id: 'half' }, half.body())
  sheet.draw('use', { href: '#half', transform: `translate(${px(2 * frame.axis)} 0) scale(-1 1)` })
  // Gas may go straight up and strike the pot: what the water does is said over it.
  if (section.pot !== null) drawPotWords(sheet, frame, section.pot, water, air !== null)
  return inner(sheet)
}

/** Front and char are seen; how high it was filled is told for as long as there is raw fuel. */
const told =
  ({ section: { bed } }: Scene) =>
  ({ size }: Scene['fuel'][number]): boolean =>
    size !== null && bed !== null && bed.front > bed.floor + 1

/** Words beside the section; none where there is no room. */
export const paintLabels = (theme: Theme, layout: StageLayout, scene: Scene, units: Units): string => {
  const { words, frame } = layout
  if (words === null) return ''
  const sheet = openSheet(theme)
  const { stove } = scene.section
  const isTold = told(scene)
  const passages = scene.state?.passages ?? []
  const say = (labels: Scene['openings']) =>
    labels.map((label) => ({ label, lines: labelLinesFor(label, stove, passages, units) }))
  const column = {
    elbow: words.edge + 6,
    x: words.edge + 26,
    top: 6,
    bottom: frame.ground - 6,
  }
  const left = say([...scene.parts, ...scene.fuel.filter(isTold)].sort(byHeight))
  // Where the column is too short, what says least goes first: size codes, the second system, the fuel.
  const shorter = [
    left,
    left.map(({ label, lines }) => ({ label, lines: lines.slice(0, units === 'both' ? 3 : 2) })),
    left.map(({ label, lines }) => ({ label, lines: lines.slice(0, 2) })),
    left
      .filter(({ label }) => label.of === 'part')
      .map(({ label, lines }) => ({ label, lines: lines.slice(0, 2) })),
  ]
  const fits = shorter.find(
    (some) =>
      labelsHeight(
        some.map(({ lines }) => lines),
        words.left,
      ) <=
      column.bottom - column.top,
  )
  drawLabels(sheet, frame, fits ?? (shorter.at(-1) as typeof left), {
    ...column,
    side: 'left',
    width: words.left,
  })
  drawLabels(sheet, frame, say(scene.openings), { ...column, side: 'right', width: words.right - 26 })
  return inner(sheet)
}
