import type { Weight } from '../lettering/measure.ts'
import type { Outlines } from '../lettering/outline.ts'
import type { PixelBox } from '../section/sheet.ts'
import type { Theme } from '../section/theme.ts'
import { type Attributes, element, px } from '../svg/element.ts'

/** A place on a card [px]: x to the right, y down. */
export interface Spot {
  readonly x: number
  readonly y: number
}

export type Ink = 'ink' | 'muted' | 'ember'

export interface Words {
  readonly text: string
  /** [px] */
  readonly em: number
  readonly weight: Weight
  readonly ink: Ink
}

/** A line of words as it stands on a card. */
export interface Lettered extends Words {
  readonly box: PixelBox
}

/** How far strokes of Source Sans 3 reach over and under the base line, accents and brackets included [em]. */
export const ASCENT = 0.78
export const DESCENT = 0.22

export interface Board {
  readonly theme: Theme
  readonly outlines: Outlines
  readonly draw: (name: string, attributes: Attributes, content?: string) => void
  readonly define: (name: string, attributes: Attributes, content: string) => void
  /** Sets a line; `at` is on its base line. */
  readonly letter: (words: Words, at: Spot, anchor?: 'start' | 'middle' | 'end') => PixelBox
  /** Draws a line through points that no lettering may touch. */
  readonly rule: (points: readonly Spot[], closed: boolean, attributes: Attributes) => void
  /** Keeps lettering off a line that something else has drawn. */
  readonly guard: (points: readonly Spot[], closed: boolean) => void
  readonly lettered: readonly Lettered[]
  /** What no lettering may touch, piece by piece. */
  readonly rules: readonly (readonly [Spot, Spot])[]
  readonly body: () => string
  readonly definitions: () => string
}

export const pathOf = (points: readonly Spot[], closed: boolean): string =>
  `M${points.map(({ x, y }) => `${px(x)} ${px(y)}`).join('L')}${closed ? 'Z' : ''}`

export const openBoard = (theme: Theme, outlines: Outlines): Board => {
  const elements: string[] = []
  const definitions: string[] = []
  const lettered: Lettered[] = []
  const rules: (readonly [Spot, Spot])[] = []
  const draw: Board['draw'] = (name, attributes, content) => {
    elements.push(element(name, attributes, content))
  }
  const guard: Board['guard'] = (points, closed) => {
    const ends = closed ? [...points, ...points.slice(0, 1)] : points
    for (const [i, to] of ends.slice(1).entries()) rules.push([ends[i] as Spot, to])
  }
  return {
    theme,
    outlines,
    draw,
    guard,
    define: (name, attributes, content) => {
      definitions.push(element(name, attributes, content))
    },
    letter: (words, { x, y }, anchor = 'start') => {
      const { text, em, weight, ink } = words
      const width = outlines.width(text, em, weight)
      const left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width
      draw('path', { d: outlines.path(text, em, weight, left, y), fill: theme[ink] })
      const box = { left, right: left + width, top: y - ASCENT * em, bottom: y + DESCENT * em }
      lettered.push({ ...words, box })
      return box
    },
    rule: (points, closed, attributes) => {
      draw('path', { d: pathOf(points, closed), ...attributes })
      guard(points, closed)
    },
    lettered,
    rules,
    body: () => elements.join('\n'),
    definitions: () => definitions.join('\n'),
  }
}
