import fontkit from '@cantoo/fontkit'
import type { LetteringFonts } from '../pdf/face.ts'
import type { Weight } from './measure.ts'

/**
 * Text as outlines: a picture then looks the same on every screen and needs no font. Lengths are those of the em; y runs
 * down. Letters stand by their own widths, without kerning or ligatures, as everywhere in this house.
 */
export interface Outlines {
  /** How far a line moves the pen, in the unit of `em`. */
  readonly width: (text: string, em: number, weight: Weight) => number
  /** Path data of a line whose base line begins at (x, y). */
  readonly path: (text: string, em: number, weight: Weight, x: number, y: number) => string
  /** Letters met so far that no font has; they are drawn as `?`. */
  readonly missing: () => readonly string[]
}

/** What stands for a letter that no font has. */
const MISSING = '?'

interface Letter {
  /** [em] */
  readonly advance: number
  /** In ems, y up. */
  readonly strokes: readonly { readonly letter: string; readonly points: readonly number[] }[]
}

const COMMANDS: Readonly<Record<string, string>> = {
  moveTo: 'M',
  lineTo: 'L',
  quadraticCurveTo: 'Q',
  bezierCurveTo: 'C',
  closePath: 'Z',
}

/** A tenth of a pixel is as fine as a screen. */
const short = (value: number): string => String(Math.round(value * 10) / 10)

const opened = (bytes: Uint8Array) => {
  const font = fontkit.create(bytes)
  if ('characterSet' in font) return font
  throw new TypeError('A font collection will not do for lettering: give one font a file.')
}

/** Letters of one weight, each worked out once. */
const lettersOf = (files: readonly Uint8Array[], miss: (letter: string) => void) => {
  const cuts = files.map(opened)
  const known = new Map<string, Letter>()
  const make = (letter: string): Letter => {
    const code = letter.codePointAt(0) ?? 0
    const font = cuts.find((each) => each.hasGlyphForCodePoint(code))
    const glyph = font?.glyphForCodePoint(code)
    if (font === undefined || glyph == null) {
      if (letter === MISSING)
        throw new TypeError(`The lettering fonts have no "${MISSING}": they are no fonts for text.`)
      miss(letter)
      return letterOf(MISSING)
    }
    return {
      advance: glyph.advanceWidth / font.unitsPerEm,
      strokes: glyph.path.commands.map(({ command, args }) => ({
        letter: COMMANDS[command] ?? '',
        points: args.map((value) => value / font.unitsPerEm),
      })),
    }
  }
  const letterOf = (letter: string): Letter => {
    const found = known.get(letter) ?? make(letter)
    known.set(letter, found)
    return found
  }
  return letterOf
}

const drawn = ({ strokes }: Letter, em: number, x: number, y: number): string =>
  strokes
    .map(
      ({ letter, points }) =>
        letter + points.map((value, i) => short(i % 2 === 0 ? x + value * em : y - value * em)).join(' '),
    )
    .join('')

/** Opens the fonts of the lettering. Throws `TypeError` for bytes that are no fonts for text. */
export const openOutlines = (fonts: LetteringFonts): Outlines => {
  const missing = new Set<string>()
  const miss = (letter: string): void => {
    missing.add(letter)
  }
  const faces = { regular: lettersOf(fonts.regular, miss), semibold: lettersOf(fonts.semibold, miss) }
  return {
    width: (text, em, weight) =>
      [...text].reduce((sum, letter) => sum + faces[weight](letter).advance * em, 0),
    path: (text, em, weight, x, y) => {
      let pen = x
      return [...text]
        .map((each) => {
          const letter = faces[weight](each)
          const d = drawn(letter, em, pen, y)
          pen += letter.advance * em
          return d
        })
        .join('')
    },
    missing: () => [...missing],
  }
}
