import { px } from '../svg/element.ts'
import { ribbonEdges } from './drawAir.ts'
import { tinLines } from './drawTin.ts'
import type { Frame } from './frame.ts'
import type { SectionGeometry } from './geometry.ts'
import type { AirPicture } from './ribbons.ts'
import { openSheet, type Sheet } from './sheet.ts'

/** Another stove behind the picture as thin broken lines: what is the same hides it, what was changed shows. */
export const drawGhost = (
  sheet: Sheet,
  frame: Frame,
  section: SectionGeometry,
  air: AirPicture | null,
): void => {
  const { faint, muted } = sheet.theme
  const half = openSheet(sheet.theme)
  if (air !== null)
    half.draw('path', {
      d: ribbonEdges(frame, air.ribbons),
      fill: 'none',
      stroke: faint,
      'stroke-width': 0.8,
    })
  half.draw('path', {
    d: tinLines(frame, section),
    fill: 'none',
    stroke: muted,
    'stroke-width': 1.3,
    'stroke-dasharray': '6 4',
  })
  sheet.draw('g', { id: 'ghost-half' }, half.body())
  sheet.draw('use', { href: '#ghost-half', transform: `translate(${px(2 * frame.axis)} 0) scale(-1 1)` })
}
