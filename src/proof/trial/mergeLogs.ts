/** What the log needs to know of an entry to merge it. */
export interface LogEntry {
  readonly id: string
  readonly at: string
  readonly edit?: number | undefined
  readonly withdrawn?: boolean | undefined
}

/** The same text for the same entry, whatever the order its keys were written in. */
const canonical = (value: unknown): string =>
  JSON.stringify(value, (_, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  )

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/**
 * Which of two forms of one entry holds: the one edited more often; of two edited as often, the one withdrawn; else
 * the later in the alphabet. The last rule means nothing, but every phone comes to the same answer.
 */
const later = <T extends LogEntry>(a: T, b: T): T => {
  const order =
    (a.edit ?? 0) - (b.edit ?? 0) ||
    Number(a.withdrawn ?? false) - Number(b.withdrawn ?? false) ||
    byText(canonical(a), canonical(b))
  return order >= 0 ? a : b
}

/**
 * Brings the logs of several phones together: every entry once, in order of time. Merging again changes nothing, and
 * neither does the order of the logs: the entries of one id form a scale, and the highest one holds.
 * `seconds` reads the time of an entry.
 */
export const mergeLogs = <T extends LogEntry>(
  logs: readonly (readonly T[])[],
  seconds: (entry: T) => number,
): readonly T[] => {
  const known = new Map<string, T>()
  for (const entry of logs.flat()) {
    const other = known.get(entry.id)
    known.set(entry.id, other === undefined ? entry : later(other, entry))
  }
  return [...known.values()].sort((a, b) => seconds(a) - seconds(b) || byText(a.id, b.id))
}
