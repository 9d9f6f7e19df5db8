import { element } from '../../svg/element.ts'
import type { Picture } from '../block.ts'
import { MUTED } from '../paint.ts'
import { type PictureSize, pictureSize, withOwnIds } from '../pictureSize.ts'
import { SMALL } from '../type.ts'
import type { Strip } from './strip.ts'
import { paragraph } from './text.ts'

/** An SVG inside another, scaled into a box. */
const nested = (svg: string, x: number, y: number, scale: number, prefix: string): string => {
  const own = withOwnIds(svg, prefix)
  const inside = own.slice(own.indexOf('>') + 1, own.lastIndexOf('</svg>'))
  return element(
    'g',
    { transform: `translate(${x.toFixed(3)} ${y.toFixed(3)}) scale(${scale.toFixed(5)})` },
    inside,
  )
}

/** A picture gives up so much of its height to stay on a page, and no more. */
const GIVES_WAY = 0.16

const pictureStrip = (
  block: Picture,
  width: number,
  size: PictureSize,
  height: number,
  tallest: number,
): Strip => ({
  height,
  before: 6,
  keep: block.caption !== undefined,
  draw: (canvas, x, y) => {
    const scale = height / size.height
    const left = x + Math.max(0, (width * block.share - size.width * scale) / 2)
    canvas.marks.push({
      left,
      right: left + size.width * scale,
      top: y,
      bottom: y + height,
      what: block.says,
    })
    canvas.parts.push(nested(block.svg, left, y, scale, `p${canvas.parts.length}`))
  },
  lower: (by) =>
    block.firm === true || height - by < tallest * (1 - GIVES_WAY)
      ? null
      : pictureStrip(block, width, size, height - by, tallest),
})

/** A picture with its caption; it may give way a little to stay on a page. */
export const picture = (block: Picture, width: number): readonly Strip[] => {
  const size = pictureSize(block.svg)
  const height =
    size.height * Math.min((width * block.share) / size.width, (block.tallest ?? 620) / size.height)
  return [
    pictureStrip(block, width, size, height, height),
    ...(block.caption === undefined ? [] : paragraph(block.caption, SMALL, width, 3, MUTED)),
  ]
}
