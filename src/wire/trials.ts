export interface NewEvent {
  /** Made by the phone; handed in twice, it is kept once. */
  readonly id: string
  readonly at: string
  /** JSON text. */
  readonly body: string
  /** The event that this one corrects. */
  readonly replaces?: string
  /** Takes the replaced one back without a successor. Undo of that: an event that replaces this one. */
  readonly withdrawn?: boolean
}

export interface TrialEvent {
  readonly id: string
  readonly trial: string
  readonly at: string
  readonly body: string
  readonly replaces: string | null
  readonly withdrawn: boolean
  readonly client: string
  readonly created: string
  readonly sequence: number
}

export interface EventBatch {
  readonly trial: string
  readonly client: string
  readonly at: string
  readonly events: readonly NewEvent[]
}

/**
 * What counts of a trial's events, in the order of their times: those that nothing replaces and that do not
 * take one back. Two corrections of one event both count: a person has to say which.
 */
export const standingEvents = (all: readonly TrialEvent[]): readonly TrialEvent[] => {
  const replaced = new Set(all.map(({ replaces }) => replaces))
  return all
    .filter(({ id, withdrawn }) => !withdrawn && !replaced.has(id))
    .toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at) || (a.id < b.id ? -1 : 1))
}
