/**
 * What a page of a plan says, before it is known on what it is read: the same blocks become pages to print and a page
 * for a screen. Text is plain; a value in two units stands as `31 mm (1 7/32 in)` and is found by `dualValues`.
 */
export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'subheading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly muted?: boolean }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly numbered?: boolean }
  | Table
  | { readonly kind: 'facts'; readonly facts: readonly Fact[] }
  | Picture
  | {
      readonly kind: 'beside'
      readonly share: number
      readonly left: readonly Block[]
      readonly right: readonly Block[]
    }
  | { readonly kind: 'cautions'; readonly title: string; readonly items: readonly string[] }
  | { readonly kind: 'fields'; readonly fields: readonly Field[] }
  /** Stays on one page, if it goes on one at all. */
  | { readonly kind: 'together'; readonly blocks: readonly Block[] }

export interface Table {
  readonly kind: 'table'
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
  readonly align?: readonly ('left' | 'right')[]
  /** Widths against each other; left out: by what the columns hold. */
  readonly widths?: readonly number[]
}

/** A figure that is looked for: `burns for`, `19 min`, `16 to 25 min`. */
export interface Fact {
  readonly label: string
  readonly value: string
  readonly aside?: string
}

export interface Picture {
  readonly kind: 'picture'
  /** An SVG of this house, with width and height. */
  readonly svg: string
  /** The same, set for a telephone; a printed page has no use for it. */
  readonly narrow?: string
  /** What it shows, for those who cannot see it. */
  readonly says: string
  /** Of the column's width; it never grows beyond `tallest`. */
  readonly share: number
  /** Points. */
  readonly tallest?: number
  readonly caption?: string
  /** Printed as large as it is, not a little lower where that would keep it on a page. */
  readonly firm?: true
}

/** A line to write on by hand: `fuel weighed`, unit `g`, what was predicted. */
export interface Field {
  readonly label: string
  readonly unit: string
  readonly beside?: string
}

/** A part of a plan with a name of its own. */
export interface Section {
  /** Short word for links: `shop`. */
  readonly id: string
  readonly title: string
  readonly blocks: readonly Block[]
  /** Begins on a page of its own; `half`: unless half of one is left. */
  readonly apart?: true | 'half'
}
