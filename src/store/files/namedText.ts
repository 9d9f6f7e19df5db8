/** A file by its name and what it says. */
export interface NamedText {
  readonly name: string
  readonly text: string
}
