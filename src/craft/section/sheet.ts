import { brokenLines } from '#basis/text/breaking.ts'
import { ADVANCE } from '../lettering/sourceSans.ts'
import { type Attributes, element, escaped } from '../svg/element.ts'
import type { Theme } from './theme.ts'

/** Everything on a plate is in pixels of its own size: x to the right, y down. */
export interface PixelBox {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export interface Lettering {
  readonly x: number
  /** Base line. */
  readonly y: number
  readonly text: string
  /** Em [px]. */
  readonly size: number
  readonly weight: 'regular' | 'semibold'
  readonly anchor: 'start' | 'middle' | 'end'
  readonly ink: 'ink' | 'muted'
  /** What follows in the same line, set otherwise; a space goes before it. */
  readonly then?: Run
}

export type Run = Pick<Lettering, 'text' | 'size' | 'weight' | 'ink'>

/** Between a line's first words and what follows them [em]. */
const RUN_GAP = 0.42

/**
 * How much wider a page may set text than Source Sans 3 does, where that is not installed: Arial and Helvetica run
 * about 10 % wider. Room is kept for that.
 */
const OTHER_FONTS = 1.1

/** Width of text with room for a wider font [px]. */
export const lineWidth = (text: string, size: number, weight: Lettering['weight'] = 'regular'): number => {
  const column = weight === 'regular' ? 0 : 1
  let thousandths = 0
  for (const letter of text) thousandths += ADVANCE[letter.codePointAt(0) ?? 0]?.[column] ?? 700
  return (thousandths / 1000) * size * OTHER_FONTS
}

/** Width of a line and what follows in it [px]. */
export const runsWidth = ({ text, size, weight, then }: Omit<Run, 'ink'> & Pick<Lettering, 'then'>): number =>
  lineWidth(text, size, weight) +
  (then === undefined ? 0 : size * RUN_GAP + lineWidth(then.text, then.size, then.weight))

/** The box that lettering may fill, ascenders and descenders included. */
export const letteringBox = (lettering: Lettering): PixelBox => {
  const { x, y, size, anchor } = lettering
  const width = runsWidth(lettering)
  const left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width
  return { left, right: left + width, top: y - size * 0.78, bottom: y + size * 0.22 }
}

/** Breaks text into lines no wider than `width`, values whole where they can be [px]. */
export const linesOf = (
  text: string,
  size: number,
  width: number,
  weight: Lettering['weight'] = 'regular',
): readonly string[] => brokenLines(text, (line) => lineWidth(line, size, weight) <= width)

/** A name on lines no wider than `width`, and how far the base line of each lies under the first [px]. */
export const titleLines = (
  title: string,
  size: number,
  width: number,
): readonly { readonly text: string; readonly down: number }[] =>
  linesOf(title, size, width, 'semibold').map((text, i) => ({ text, down: i * size * 1.15 }))

/** Whole sentences leave this much of their width unused: some systems have only much wider letters [1]. */
export const PROSE = 0.9

/** Lines of about the same length, as few as the width allows. */
export const balancedLines = (text: string, size: number, width: number): readonly string[] => {
  const count = linesOf(text, size, width).length
  const steps = Array.from({ length: 40 }, (_, i) => (width * (i + 1)) / 40)
  return linesOf(
    text,
    size,
    steps.find((narrower) => linesOf(text, size, narrower).length === count) ?? width,
  )
}

const styleOf = (theme: Theme, { size, weight, ink }: Run): Attributes => ({
  'font-size': size,
  'font-weight': weight === 'semibold' ? 600 : undefined,
  fill: theme[ink],
})

const textElement = (theme: Theme, lettering: Lettering): string => {
  const { x, y, text, size, anchor, then } = lettering
  const style = { x, y, ...styleOf(theme, lettering), 'text-anchor': anchor === 'start' ? undefined : anchor }
  if (then === undefined) return element('text', style, escaped(text))
  const second = {
    ...styleOf(theme, then),
    'font-weight': then.weight === 'semibold' ? 600 : 400,
    dx: size * RUN_GAP,
  }
  return element('text', style, `${escaped(text)}${element('tspan', second, escaped(then.text))}`)
}

/** A page that is being drawn: elements in order, and where its lettering stands. */
export interface Sheet {
  readonly theme: Theme
  readonly draw: (name: string, attributes: Attributes, content?: string) => void
  readonly letter: (lettering: Partial<Lettering> & Pick<Lettering, 'x' | 'y' | 'text'>) => void
  /** Something referred to by its id: a gradient, a clip. */
  readonly define: (name: string, attributes: Attributes, content: string) => void
  /** Takes over what another sheet has defined. */
  readonly defineAll: (other: Sheet) => void
  readonly letterings: readonly Lettering[]
  readonly body: () => string
  readonly definitions: () => string
}

export const BODY_SIZE = 15
export const SMALL_SIZE = 13

export const openSheet = (theme: Theme): Sheet => {
  const elements: string[] = []
  const definitions: string[] = []
  const letterings: Lettering[] = []
  return {
    theme,
    draw: (name, attributes, content) => {
      elements.push(element(name, attributes, content))
    },
    letter: (given) => {
      const lettering: Lettering = {
        size: BODY_SIZE,
        weight: 'regular',
        anchor: 'start',
        ink: 'ink',
        ...given,
      }
      letterings.push(lettering)
      elements.push(textElement(theme, lettering))
    },
    define: (name, attributes, content) => {
      definitions.push(element(name, attributes, content))
    },
    defineAll: (other) => {
      if (other.definitions() !== '') definitions.push(other.definitions())
    },
    letterings,
    body: () => elements.join('\n'),
    definitions: () => definitions.join('\n'),
  }
}
