import type { BurnSummary } from '#craft/section/airState.ts'
import { drawPicture } from '#craft/section/picture.ts'
import { sceneOf } from '#craft/section/scene.ts'
import { openSheet } from '#craft/section/sheet.ts'
import type { Theme } from '#craft/section/theme.ts'
import { element } from '#craft/svg/element.ts'
import type { Stove } from '#stove/model.ts'

export const SMALL_WIDTH = 132
export const SMALL_HEIGHT = 156
const MARGIN = 6

/** Scale of a whole shelf of small pictures: a big stove looks big [px/mm]. */
const LARGEST_SCALE = 0.55

/**
 * A stove cut open, as small as a stamp, without a word; all to one scale, so far as they fit.
 * @throws BadInput for an assembly that `placeParts` refuses; a stove read from a file never fails here.
 */
export const smallSection = (stove: Stove, burn: BurnSummary | null, theme: Theme): string => {
  const { section, state, air, extent } = sceneOf(stove, burn)
  const scale = Math.min(
    LARGEST_SCALE,
    (SMALL_WIDTH / 2 - MARGIN) / extent.radius,
    (SMALL_HEIGHT - 2 * MARGIN) / extent.top,
  )
  const frame = { axis: SMALL_WIDTH / 2, ground: SMALL_HEIGHT - MARGIN, scale }
  const sheet = openSheet(theme)
  drawPicture(sheet, frame, section, air, state)
  const size = { width: SMALL_WIDTH, height: SMALL_HEIGHT, viewBox: `0 0 ${SMALL_WIDTH} ${SMALL_HEIGHT}` }
  return element(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', ...size },
    `${element('defs', {}, sheet.definitions())}${sheet.body()}`,
  )
}
