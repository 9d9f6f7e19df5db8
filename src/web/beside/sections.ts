import type { BurnSummary } from '#craft/section/airState.ts'
import { drawPicture } from '#craft/section/picture.ts'
import { sceneOf } from '#craft/section/scene.ts'
import { openSheet } from '#craft/section/sheet.ts'
import type { Theme } from '#craft/section/theme.ts'
import { element } from '#craft/svg/element.ts'
import type { Stove } from '#stove/model.ts'

export interface BesideStove {
  readonly stove: Stove
  readonly burn: BurnSummary | null
}

/** Every picture has this size, so that one scale holds in all of them [px]. */
const BESIDE_WIDTH = 300
const BESIDE_HEIGHT = 420
const MARGIN = 14
/** A small stove is not blown up beyond this [px/mm]. */
const LARGEST = 2.4

/** Stoves cut open, all to one scale on one ground, none wider or higher than its picture. */
export const besideSections = (stoves: readonly BesideStove[], theme: Theme): readonly string[] => {
  const scenes = stoves.map(({ stove, burn }) => sceneOf(stove, burn))
  const scale = Math.min(
    LARGEST,
    ...scenes.map(({ extent }) =>
      Math.min((BESIDE_WIDTH / 2 - MARGIN) / extent.radius, (BESIDE_HEIGHT - 2 * MARGIN) / extent.top),
    ),
  )
  const frame = { axis: BESIDE_WIDTH / 2, ground: BESIDE_HEIGHT - MARGIN, scale }
  return scenes.map(({ section, state, air }) => {
    const sheet = openSheet(theme)
    sheet.draw('path', {
      d: `M0 ${frame.ground}H${BESIDE_WIDTH}`,
      stroke: theme.faint,
      'stroke-width': 1,
      fill: 'none',
    })
    drawPicture(sheet, frame, section, air, state)
    return element(
      'svg',
      { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${BESIDE_WIDTH} ${BESIDE_HEIGHT}` },
      `${element('defs', {}, sheet.definitions())}${sheet.body()}`,
    )
  })
}
