/** Batches looked at; the middle one counts, so that the few in which the engine collects do not. */
const BATCHES = 201

/**
 * Memory that one call of `work` asks for, on the heap and beside it, once it runs at full speed [byte]. A batch of `calls`
 * should ask for some hundred kilobytes: much more than the engine's own bookkeeping, much less than it collects at.
 */
export const bytesAllocated = (work: () => unknown, calls: number): number => {
  const used = (): number => {
    const { heapUsed, external } = process.memoryUsage()
    return heapUsed + external
  }
  const batch = (): number => {
    const before = used()
    for (let i = 0; i < calls; i++) work()
    return used() - before
  }
  for (let i = 0; i < BATCHES; i++) batch()
  const grown = Array.from({ length: BATCHES }, batch).sort((a, b) => a - b)
  return (grown[BATCHES >> 1] as number) / calls
}
