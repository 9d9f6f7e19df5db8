import { type Arrangement, arranged } from '#craft/solid/arrange.ts'
import type { SolidKernel } from '#craft/solid/kernel.ts'
import { stoveSolids } from '#craft/solid/solids.ts'
import { type Camera, EXPLODED_CAMERA, PLAN_CAMERA } from '#craft/view/camera.ts'
import { type ViewTheme, viewGroup } from '#craft/view/svg.ts'
import { type View, viewOf } from '#craft/view/view.ts'
import type { Stove } from '#stove/model.ts'

const SHOWN: readonly { readonly which: Arrangement; readonly camera: Camera; readonly high: number }[] = [
  { which: 'whole', camera: PLAN_CAMERA, high: 88 },
  { which: 'cut', camera: PLAN_CAMERA, high: 88 },
  { which: 'exploded', camera: EXPLODED_CAMERA, high: 130 },
]

/** White round and between the pictures, and the height of the row [mm]. */
const ROOM = { edge: 4, between: 16, high: 130 }

const HUNDREDTHS = 100

/** A stove as it stands, cut open and taken apart, side by side on one floor. */
export const solidsPicture = (kernel: SolidKernel, stove: Stove, theme: ViewTheme): string => {
  const solids = stoveSolids(kernel, stove)
  const views = SHOWN.map(({ which, camera, high }): View => {
    const meshes = arranged(kernel, stove, solids, which)
    return viewOf(meshes, {
      camera,
      fit: { width: 60, height: high },
      ...(which === 'cut' ? { cutAway: 0 } : {}),
    })
  })
  let x = ROOM.edge
  const groups = views.map((view) => {
    const at = [x, ROOM.edge + ROOM.high - view.height].map((value) => Math.round(value * HUNDREDTHS))
    x += view.width + ROOM.between
    return `<g transform="translate(${at.join(' ')})">${viewGroup(view, theme)}</g>`
  })
  const [wide, high] = [x - ROOM.between + ROOM.edge + 1, ROOM.high + 2 * ROOM.edge + 1]
  const box = [wide, high].map((value) => Math.round(value * HUNDREDTHS)).join(' ')
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${wide.toFixed(1)}mm" height="${high.toFixed(1)}mm" ` +
    `viewBox="0 0 ${box}" role="img"><title>${stove.name}: as it stands, cut open, taken apart</title>\n` +
    `${groups.join('\n')}\n</svg>\n`
  )
}
