import type { Card } from './card.ts'

/** Turns an SVG into a PNG of its own size, a pixel a unit. What does it comes in from outside: craft holds no machine code. */
export type PngPainter = (svg: string) => Uint8Array

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]

/** Width and height that a PNG says it has (PNG, second edition, 11.2.2 IHDR [bib:png2003]), or null for bytes that are no PNG. */
export const pngSize = (bytes: Uint8Array): { readonly width: number; readonly height: number } | null => {
  if (bytes.length < 24 || SIGNATURE.some((value, i) => bytes[i] !== value)) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  return { width: view.getUint32(16), height: view.getUint32(20) }
}

/** A card as a PNG. Throws where the painter gives something else than a picture of the card's size. */
export const cardPng = ({ svg, width, height, title }: Card, paint: PngPainter): Uint8Array => {
  const bytes = paint(svg)
  const size = pngSize(bytes)
  if (size?.width === width && size.height === height) return bytes
  throw new Error(
    `The card "${title}" came out ${size === null ? 'as no PNG' : `${size.width} by ${size.height} pixels`}, not ${width} by ${height}`,
  )
}
