import fontkit from '@cantoo/fontkit'
import type { PDFDocument, PDFFont, PDFHexString } from '@cantoo/pdf-lib'
import type { Weight } from '../lettering/measure.ts'

/**
 * Font files of the lettering, TrueType, OpenType or WOFF: each weight as one file or as several that
 * cover different scripts, the first one first asked for a letter.
 */
export type LetteringFonts = Readonly<Record<Weight, readonly Uint8Array[]>>

/** Text set in one font of a face. */
export interface Run {
  readonly font: PDFFont
  readonly codes: PDFHexString
  /** In ems. */
  readonly width: number
}

/** A weight of the lettering, ready to set text. */
export interface Face {
  readonly runs: (text: string) => readonly Run[]
}

/** What stands for a letter that no font has. */
const MISSING = '?'

/** Features off: width and look of a text are then those of its letters one by one. */
const PLAIN = { liga: false, calt: false, ccmp: false, kern: false }

/** A PDF subset name must begin with six capitals; one that is counted is the same on every run. */
const subsetTag = (index: number): string => `TINWR${String.fromCharCode(65 + (index % 26))}`

interface Cut {
  readonly bytes: Uint8Array
  readonly covers: ReadonlySet<number>
  readonly name: string
}

/**
 * Sets text in the given fonts. A font goes into the document when it is first needed, with only the
 * letters that are used. Letters that none has are set as `?` and handed to `miss`.
 */
export const openFace = async (
  doc: PDFDocument,
  files: readonly Uint8Array[],
  firstTag: number,
  texts: ReadonlySet<string>,
  miss: (letter: string) => void,
): Promise<Face> => {
  const cuts = files.map((bytes): Cut => {
    const font = fontkit.create(bytes)
    if (!('characterSet' in font))
      throw new TypeError('A font collection will not do for lettering: give one font a file.')
    return { bytes, covers: new Set(font.characterSet), name: font.postscriptName ?? 'Lettering' }
  })
  const cutOf = (letter: string): number =>
    cuts.findIndex(({ covers }) => covers.has(letter.codePointAt(0) ?? 0))
  const missing = cutOf(MISSING)
  if (missing === -1)
    throw new TypeError(`The lettering fonts have no "${MISSING}": they are no fonts for text.`)

  const needed = new Set(
    [...texts]
      .flatMap((text) => [...text])
      .map((letter) => {
        const index = cutOf(letter)
        if (index === -1) miss(letter)
        return index === -1 ? missing : index
      }),
  )
  const fonts = new Map<number, PDFFont>()
  for (const index of [...needed].sort((a, b) => a - b)) {
    const cut = cuts[index] as Cut
    const customName = `${subsetTag(firstTag + index)}+${cut.name}`
    fonts.set(index, await doc.embedFont(cut.bytes, { subset: true, customName, features: PLAIN }))
  }

  // With every feature off a text is as wide as its letters one by one, and there are few letters.
  const advances = new Map<PDFFont, Map<string, number>>()
  const widthOf = (text: string, font: PDFFont): number => {
    const known = advances.get(font) ?? new Map<string, number>()
    advances.set(font, known)
    let width = 0
    for (const letter of text) {
      let advance = known.get(letter)
      if (advance === undefined) {
        advance = font.widthOfTextAtSize(letter, 1)
        known.set(letter, advance)
      }
      width += advance
    }
    return width
  }
  const set = (text: string): readonly Run[] => {
    const pieces: { readonly index: number; text: string }[] = []
    for (const letter of text) {
      const found = cutOf(letter)
      const index = found === -1 ? missing : found
      const last = pieces.at(-1)
      const drawn = found === -1 ? MISSING : letter
      if (last?.index === index) last.text += drawn
      else pieces.push({ index, text: drawn })
    }
    return pieces.map((piece) => {
      const font = fonts.get(piece.index) as PDFFont
      return { font, codes: font.encodeText(piece.text), width: widthOf(piece.text, font) }
    })
  }
  // Heads and feet stand on every page, and every line is set twice: to be placed, then to be drawn.
  const known = new Map<string, readonly Run[]>()
  return {
    runs: (text) => {
      const before = known.get(text)
      if (before !== undefined) return before
      const fresh = set(text)
      known.set(text, fresh)
      return fresh
    },
  }
}
