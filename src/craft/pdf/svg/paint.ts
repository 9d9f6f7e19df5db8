/** Red, green and blue from 0 to 1, and how opaque. */
export interface Colour {
  readonly rgb: readonly [number, number, number]
  readonly alpha: number
}

export type Paint =
  | { readonly kind: 'none' }
  | { readonly kind: 'colour'; readonly colour: Colour }
  | { readonly kind: 'reference'; readonly id: string }

const HEX = /^#([0-9a-f]{3}|[0-9a-f]{6}|[0-9a-f]{8})$/i

/** `#rgb`, `#rrggbb` or `#rrggbbaa`. Throws `SyntaxError` for another. */
export const readColour = (text: string): Colour => {
  const found = HEX.exec(text)
  if (found === null) throw new SyntaxError(`“${text}” is no colour of ours: write #rrggbb`)
  const digits = found[1] as string
  const full = digits.length === 3 ? [...digits].map((digit) => digit + digit).join('') : digits
  const part = (at: number): number => Number.parseInt(full.slice(at, at + 2), 16) / 255
  return { rgb: [part(0), part(2), part(4)], alpha: full.length === 8 ? part(6) : 1 }
}

/** What a `fill` or `stroke` says. */
export const readPaint = (text: string): Paint => {
  if (text === 'none') return { kind: 'none' }
  const reference = /^url\(#(.+)\)$/.exec(text)
  return reference === null
    ? { kind: 'colour', colour: readColour(text) }
    : { kind: 'reference', id: reference[1] as string }
}
