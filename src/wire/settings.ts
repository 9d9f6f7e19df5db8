export interface Setting {
  readonly text: string
  /** Hand it back with the next write. */
  readonly head: string
}
