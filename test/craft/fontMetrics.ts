import fontkit from '@cantoo/fontkit'
import { fonts } from './fonts.ts'

/** The lettering measured from the font files themselves, apart from the table that craft carries. */

type Opened = Extract<ReturnType<typeof fontkit.create>, { readonly characterSet: unknown }>

const open = (bytes: Uint8Array): Opened => {
  const font = fontkit.create(bytes)
  if (!('characterSet' in font)) throw new Error('a collection')
  return font as Opened
}

const faces = {
  regular: fonts.regular.map(open),
  semibold: fonts.semibold.map(open),
}

export const openFont = (weight: 'regular' | 'semibold'): Opened => faces[weight][0] as Opened

/** Sum of the letters' advances, at a height of a capital [mm]. */
export const fontWidth = (text: string, size: number): number => {
  const face = faces[size >= 3 ? 'semibold' : 'regular']
  let units = 0
  for (const letter of text) {
    const code = letter.codePointAt(0) ?? 0
    const font = face.find((each) => each.hasGlyphForCodePoint(code))
    if (font === undefined) throw new Error(`no letter ${letter}`)
    units += (font.glyphForCodePoint(code)?.advanceWidth ?? 0) / font.unitsPerEm
  }
  const first = face[0] as Opened
  return (units * size * first.unitsPerEm) / first.capHeight
}
