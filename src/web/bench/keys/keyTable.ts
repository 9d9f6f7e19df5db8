/** Keys of the whole bench, for the list that `?` opens and for the help page. Each room adds its own rows. */
export interface KeyRow {
  readonly keys: readonly string[]
  readonly does: string
}

export interface KeyGroup {
  readonly where: string
  readonly rows: readonly KeyRow[]
}

export const KEY_TABLE: readonly KeyGroup[] = [
  {
    where: 'Everywhere',
    rows: [
      { keys: ['Ctrl Z', '⌘ Z'], does: 'Take back the last thing done here' },
      { keys: ['Ctrl Shift Z', '⌘ Shift Z', 'Ctrl Y'], does: 'Do it again' },
      { keys: ['Tab', 'Shift Tab'], does: 'To the next thing, to the one before' },
      { keys: ['Enter', 'Space'], does: 'Do what is marked' },
      { keys: ['Escape'], does: 'Abandon a move, close what is open' },
      { keys: ['?'], does: 'Show these keys' },
    ],
  },
  {
    where: 'On the bench',
    rows: [
      { keys: ['Ctrl S', '⌘ S'], does: 'Save a revision, or make a variant' },
      { keys: ['↑', '↓', '←', '→'], does: 'Move the row or part that is marked, by a millimetre or a step' },
      { keys: ['Shift', 'with an arrow'], does: 'Move it ten times as far' },
    ],
  },
]
