import { long } from '#basis/text/bothUnits.ts'
import { px } from '../svg/element.ts'
import { type Frame, pathThrough, pixelX, pixelY } from './frame.ts'
import type { CutPot, SectionGeometry } from './geometry.ts'
import { POT_SHOWN } from './openAir.ts'
import type { CutPlate } from './plates.ts'
import { lineWidth, type Sheet } from './sheet.ts'
import type { CutWall } from './walls.ts'

/** Tin is a fifth of a millimetre: drawn true it would vanish. Thin parts are drawn as one thick line instead [px]. */
const TIN = 2.4
/** Paper left round each part, so that parts that touch stay two [px]. */
const CASING = 1.3

const wallPaths = (frame: Frame, wall: CutWall, outward: number): readonly string[] =>
  wall.pieces.map((piece) =>
    pathThrough(
      frame,
      piece.map(({ r, z }) => ({ r: r + outward / frame.scale, z })),
    ),
  )

const seamPaths = (frame: Frame, { seams, radius }: CutWall): readonly string[] =>
  seams.map(({ outer, reach }) => {
    const [left, right] = [pixelX(frame, radius), pixelX(frame, outer)]
    const [top, bottom] = [pixelY(frame, reach.to), pixelY(frame, reach.from)]
    const curl = Math.min((right - left) / 2, (bottom - top) / 2)
    return (
      `M${px(left)} ${px(top)}H${px(right - curl)}q${px(curl)} 0 ${px(curl)} ${px(curl)}` +
      `V${px(bottom - curl)}q0 ${px(curl)} ${px(-curl)} ${px(curl)}H${px(left)}Z`
    )
  })

const platePaths = (frame: Frame, { pieces, height, thickness, grows }: CutPlate): readonly string[] => {
  const drawn = Math.max(TIN, thickness * frame.scale)
  const y = pixelY(frame, height) + ((grows === 'up' ? -1 : 1) * drawn) / 2
  // From the axis on, it reaches over to its mirror image, so that no seam shows.
  return pieces.map(
    ({ from, to }) =>
      `M${px(pixelX(frame, from) - (from < 1e-6 ? 0.5 : 0))} ${px(y)}H${px(pixelX(frame, to))}`,
  )
}

const tonguePaths = (frame: Frame, { tongues, height }: CutPlate): readonly string[] =>
  tongues
    .filter(({ rise }) => Math.abs(rise) > 1e-6)
    .map(({ from, to, rise }) =>
      pathThrough(
        frame,
        [
          { r: from, z: height },
          { r: to, z: height },
          { r: to, z: height + rise },
          { r: from, z: height + rise },
        ],
        true,
      ),
    )

/** Cut walls, plates and vanes of one half as one path of thin lines. */
export const tinLines = (frame: Frame, section: SectionGeometry): string =>
  [
    ...section.walls.flatMap((wall) => wallPaths(frame, wall, wall.form === 'band' ? TIN + CASING : 0)),
    ...section.walls.flatMap((wall) => seamPaths(frame, wall)),
    ...section.plates.flatMap((plate) => [...platePaths(frame, plate), ...tonguePaths(frame, plate)]),
  ].join('')

/** Cut walls, plates and seams of one half, part by part. */
export const drawTin = (sheet: Sheet, frame: Frame, section: SectionGeometry): void => {
  const { paper, ink, faint } = sheet.theme
  for (const { name } of section.placed) {
    const walls = section.walls.filter(({ part }) => part === name)
    const plates = section.plates.filter(({ part }) => part === name)
    const tongues = plates.flatMap((plate) => tonguePaths(frame, plate)).join('')
    if (tongues !== '') sheet.draw('path', { d: tongues, fill: paper, stroke: faint, 'stroke-width': 1 })
    const lines = [
      // A band hugs its can: moved out, or both would be one line.
      ...walls.flatMap((wall) => wallPaths(frame, wall, wall.form === 'band' ? TIN + CASING : 0)),
      ...plates.flatMap((plate) => platePaths(frame, plate)),
    ].join('')
    const seams = walls.flatMap((wall) => seamPaths(frame, wall)).join('')
    sheet.draw('path', { d: lines, fill: 'none', stroke: paper, 'stroke-width': TIN + 2 * CASING })
    if (seams !== '')
      sheet.draw('path', {
        d: seams,
        fill: ink,
        stroke: paper,
        'stroke-width': CASING,
        'paint-order': 'stroke',
      })
    sheet.draw('path', { d: lines, fill: 'none', stroke: ink, 'stroke-width': TIN })
  }
}

/** Holes and rims behind the cut, over the whole picture. */
export const drawBeyond = (sheet: Sheet, frame: Frame, section: SectionGeometry): void => {
  const { hairline, faint } = sheet.theme
  const rims = section.rims
    .flatMap(({ z, from, to }) =>
      from > 0
        ? [
            pathThrough(frame, [
              { r: from, z },
              { r: to, z },
            ]),
            pathThrough(frame, [
              { r: -from, z },
              { r: -to, z },
            ]),
          ]
        : [
            pathThrough(frame, [
              { r: -to, z },
              { r: to, z },
            ]),
          ],
    )
    .join('')
  if (rims !== '') sheet.draw('path', { d: rims, fill: 'none', stroke: hairline, 'stroke-width': 1 })
  const holes = section.farHoles
    .map(({ outline }) =>
      pathThrough(
        frame,
        outline.map(({ x, z }) => ({ r: x, z })),
        true,
      ),
    )
    .join('')
  if (holes !== '')
    sheet.draw('path', { d: holes, fill: 'none', stroke: faint, 'stroke-width': 0.8, opacity: 0.6 })
}

/** Rounded corner of a pot [mm]; from memory of small pots, and only for the eye. */
const POT_CORNER = 4

const POT_LETTERING = 13

/** What is in the pot. */
export interface PotWater {
  /** `1 L · 61 °C` */
  readonly words: string
  readonly boils: boolean
}

/** Bubbles of water that boils, from the pot's middle and up from its bottom, in shares of what is drawn of it [1]. */
const BUBBLES: readonly (readonly [across: number, up: number, size: number])[] = [
  [-0.82, 0.2, 2],
  [-0.66, 0.55, 2.6],
  [-0.5, 0.25, 1.8],
  [-0.4, 0.75, 2.2],
  [0.36, 0.28, 2.4],
  [0.52, 0.7, 1.9],
  [0.63, 0.3, 2.1],
  [0.85, 0.6, 2.5],
]

/** The lower part of the pot, broken off by a hand-drawn line. */
export const drawPotBody = (
  sheet: Sheet,
  frame: Frame,
  { radius, bottom }: CutPot,
  water: PotWater | null = null,
): void => {
  const { ink, pot, faint, airEdge } = sheet.theme
  const [left, right] = [pixelX(frame, -radius), pixelX(frame, radius)]
  const y = pixelY(frame, bottom) - TIN / 2
  const top = pixelY(frame, bottom + POT_SHOWN)
  const corner = POT_CORNER * frame.scale
  const side =
    `V${px(y - corner)}Q${px(left)} ${px(y)} ${px(left + corner)} ${px(y)}` +
    `H${px(right - corner)}Q${px(right)} ${px(y)} ${px(right)} ${px(y - corner)}V${px(top)}`
  const width = right - left
  const wave =
    `C${px(right - width * 0.2)} ${px(top - 9)} ${px(right - width * 0.3)} ${px(top + 8)} ` +
    `${px(left + width / 2)} ${px(top)}S${px(left + width * 0.2)} ${px(top + 8)} ${px(left)} ${px(top)}`
  sheet.draw('path', { d: `M${px(left)} ${px(top)}${side}${wave}Z`, fill: pot })
  if (water !== null) {
    sheet.draw('path', { d: `M${px(left)} ${px(top)}${side}${wave}Z`, fill: airEdge, opacity: 0.3 })
    if (water.boils)
      for (const [across, up, size] of BUBBLES)
        sheet.draw('circle', {
          cx: (left + right) / 2 + (across * width) / 2,
          cy: y + (top - y) * up,
          r: size,
          fill: 'none',
          stroke: airEdge,
          'stroke-width': 1,
        })
  }
  sheet.draw('path', { d: `M${px(right)} ${px(top)}${wave}`, fill: 'none', stroke: faint, 'stroke-width': 1 })
  sheet.draw('path', { d: `M${px(left)} ${px(top)}${side}`, fill: 'none', stroke: ink, 'stroke-width': TIN })
}

/** What is said on the pot; on a ground of its own where gas that strikes the pot is drawn under it. */
export const drawPotWords = (
  sheet: Sheet,
  frame: Frame,
  { radius, bottom }: CutPot,
  water: PotWater | null = null,
  onGround = false,
): void => {
  const [left, right] = [pixelX(frame, -radius), pixelX(frame, radius)]
  const words = water?.words ?? `pot Ø ${long(radius / 500)}`
  const wide = lineWidth(words, POT_LETTERING)
  if (wide >= right - left - 2 * POT_CORNER * frame.scale) return
  const x = (left + right) / 2
  const y = (pixelY(frame, bottom) - TIN / 2 + pixelY(frame, bottom + POT_SHOWN)) / 2 + POT_LETTERING * 0.5
  if (onGround)
    sheet.draw('rect', {
      x: x - wide / 2 - 4,
      y: y - POT_LETTERING,
      width: wide + 8,
      height: POT_LETTERING * 1.35,
      rx: 2,
      fill: sheet.theme.paper,
      opacity: 0.9,
    })
  sheet.letter({
    x,
    y,
    text: words,
    size: POT_LETTERING,
    ink: water === null ? 'muted' : 'ink',
    anchor: 'middle',
  })
}

/** The pot with what is said on it. */
export const drawPot = (sheet: Sheet, frame: Frame, pot: CutPot, water: PotWater | null = null): void => {
  drawPotBody(sheet, frame, pot, water)
  drawPotWords(sheet, frame, pot, water)
}
