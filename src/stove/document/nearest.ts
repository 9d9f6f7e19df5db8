/** Number of letters to add, drop, change or swap with their neighbour to turn one word into the other. */
export const editDistance = (a: string, b: string): number => {
  const from = [...a.toLowerCase()]
  const to = [...b.toLowerCase()]
  let beforeLast: number[] = []
  let last = to.map((_, j) => j).concat(to.length)
  for (const [i, letter] of from.entries()) {
    const row = [i + 1]
    for (const [j, other] of to.entries()) {
      const change = (last[j] ?? 0) + (letter === other ? 0 : 1)
      let least = Math.min(change, (row[j] ?? 0) + 1, (last[j + 1] ?? 0) + 1)
      const swapped = i > 0 && j > 0 && letter === to[j - 1] && from[i - 1] === other
      if (swapped) least = Math.min(least, (beforeLast[j - 1] ?? 0) + 1)
      row.push(least)
    }
    beforeLast = last
    last = row
  }
  return last[to.length] ?? 0
}

/** Fewer letters than this begin too many words. */
const SHORTEST_BEGINNING = 3

/** The one candidate that begins with `word`, or null. */
const begunBy = (word: string, candidates: readonly string[]): string | null => {
  if (word.length < SHORTEST_BEGINNING) return null
  const begun = candidates.filter((candidate) => candidate.toLowerCase().startsWith(word.toLowerCase()))
  return begun.length === 1 ? (begun[0] ?? null) : null
}

/** The candidate that `word` was most likely meant to be, or null where none is near. */
export const nearest = (word: string, candidates: readonly string[]): string | null => {
  const begun = begunBy(word, candidates)
  if (begun !== null) return begun
  // A slip is a letter in a short word, two in a longer one, a third of the letters in a long one.
  const limit = word.length < 5 ? 1 : Math.max(2, Math.floor(word.length / 3))
  let best: string | null = null
  let bestDistance = limit + 1
  for (const candidate of candidates) {
    const distance = editDistance(word.slice(0, 60), candidate)
    // "d" is two letters from any one-letter word: more letters wrong than right is no slip.
    if (distance < bestDistance && distance < Math.max(word.length, candidate.length)) {
      best = candidate
      bestDistance = distance
    }
  }
  return best
}
