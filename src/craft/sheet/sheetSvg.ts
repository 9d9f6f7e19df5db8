import { element, escaped, FONTS } from '../svg/element.ts'
import { svgLayers } from '../svg/write.ts'
import type { Piece, PlacedPicture, Sheet } from './sheet.ts'

/** Drawn in its own frame, moved and clipped where it stands on the page. */
const piece = ({ clip, at, shapes }: Piece, pageHeight: number): string => {
  const [width, height] = [clip.right - clip.left, clip.top - clip.bottom]
  const svg = svgLayers(shapes, clip.top, { isNamed: false }).join('')
  return element(
    'svg',
    {
      x: String(at.x),
      y: String(pageHeight - at.y - height),
      width: String(width),
      height: String(height),
      viewBox: `${clip.left} 0 ${width} ${height}`,
      overflow: 'hidden',
    },
    svg,
  )
}

const ROOT = /^[^<]*<svg\b([^>]*)>/

/** A picture of this house, its own size taken from its root and that on the page put there. */
const picture = ({ svg, at, width }: PlacedPicture, pageHeight: number): string => {
  const [whole, attributes] = ROOT.exec(svg) ?? ['', '']
  const box = (/viewBox="([^"]*)"/.exec(attributes)?.[1] ?? '').split(' ').map(Number)
  const high = (width * (box[3] as number)) / (box[2] as number)
  const kept = attributes.replace(/\s(?:x|y|width|height|role|aria-labelledby|aria-label)="[^"]*"/g, '')
  return `<svg${kept} x="${at.x}" y="${pageHeight - at.y}" width="${width}" height="${high}">${svg.slice(whole.length)}`
}

/**
 * A page as a reader of the PDF sees it, for a screen: one SVG, a unit a millimetre. Its ids are its own, so pages stand
 * beside each other only where each has a scope to itself.
 */
export const sheetSvg = ({ size, label, pieces, furniture, pictures = [] }: Sheet): string => {
  const { width, height } = size
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-label': label,
      'font-family': FONTS,
    },
    [
      element('title', {}, escaped(label)),
      ...pictures.map((one) => picture(one, height)),
      ...pieces.map((one) => piece(one, height)),
      ...svgLayers(furniture, height, { isNamed: false }),
    ].join(''),
  )
}
