/** One thing on a card and its sizes: an opening, a can, a figure. */
export interface Block {
  readonly name: string
  /** Name of the opening it tells of; null where it tells of something else. */
  readonly opening: string | null
  /** What is said in the largest letters; null where the lines say all. */
  readonly key: string | null
  readonly lines: readonly string[]
  /** `beside`: the key stands in the name's own line where it finds room. */
  readonly keyPlace?: 'beside' | 'below'
}
