import { fuelTable } from '#science/fuel/table.ts'

/** A fuel of the table as a list of choices says it. */
export interface FuelChoice {
  readonly key: string
  /** Short enough for a narrow list: what it is, and its size where that tells two of them apart. */
  readonly name: string
  /** How its pieces are, to stand beside the list; null where the name says it. */
  readonly pieces: string | null
}

const headOf = (label: string): string => label.split(',')[0] as string

const labels = [...fuelTable.values()].map(({ label }) => label)
const shared = (head: string): boolean => labels.filter((label) => headOf(label) === head).length > 1

/** Fuels in the order of the table. */
export const fuelChoices: readonly FuelChoice[] = [...fuelTable.values()].map(({ key, label }) => {
  const head = headOf(label)
  const rest = label.slice(head.length + 1).trim()
  return shared(head) || rest === ''
    ? { key, name: label, pieces: null }
    : { key, name: head, pieces: `Pieces: ${rest}.` }
})

export const fuelChoice = (key: string): FuelChoice | null =>
  fuelChoices.find((choice) => choice.key === key) ?? null
