/** An edit in progress in one window. */
export interface Draft {
  readonly document: string
  readonly client: string
  readonly base: string | null
  /** Hand it back with the next write. */
  readonly number: number
  readonly text: string
  /** What the edit undo would take back, in words; null: nothing. */
  readonly undo: string | null
  readonly redo: string | null
  /** It says something else than the revision it began from. */
  readonly unsaved: boolean
  readonly closed: boolean
  readonly updated: string
}

export interface Autosave {
  readonly document: string
  readonly client: string
  readonly at: string
  /** The draft's number as last seen; 0 for a new draft. */
  readonly number: number
  /** Revision the edit began from; null where the document is not saved yet. Read when the draft begins. */
  readonly base: string | null
  readonly text: string
  /** What was edited, for the undo button: `move the upper row`. */
  readonly label: string
}

export interface EditMove {
  readonly document: string
  readonly client: string
  readonly at: string
  readonly number: number
}
