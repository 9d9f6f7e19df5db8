/**
 * Seeded random numbers: the same seed gives the same numbers on every machine. `Math.random` is not used anywhere
 * in the pure folders.
 *
 * Generator: xoshiro128** 1.1 of Blackman and Vigna [bib:blackman2021], period 2¹²⁸ − 1, whose four words of state
 * come from SplitMix64 [bib:steele2014], as its authors advise.
 */
export interface RandomStream {
  /** Next number of the stream, 0 ≤ u < 1, in steps of 2⁻⁵³ [1]. */
  uniform(): number
  /** Next number, evenly between `low` and `high`. */
  between(low: number, high: number): number
  /** Next whole number from 0 to `count` − 1, each equally likely; `count` up to 2³². */
  integer(count: number): number
  /** One entry of a list, each equally likely. */
  pick<T>(entries: readonly T[]): T
  /**
   * A stream of its own for one part of the work. It depends on this stream's seed and on the label, not on how
   * many numbers were drawn before: adding a draw in one place shifts nothing elsewhere.
   */
  fork(label: string | number): RandomStream
}

const MASK_64 = (1n << 64n) - 1n

/** SplitMix64's output function: spreads every bit of the state over the result. */
const mixed = (state: bigint): bigint => {
  let z = state
  z = ((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n) & MASK_64
  z = ((z ^ (z >> 27n)) * 0x94d049bb133111ebn) & MASK_64
  return z ^ (z >> 31n)
}

/** SplitMix64, 64 bits a call: for seeding, not for speed. */
export const splitMix64 = (seed: bigint): (() => bigint) => {
  let state = seed & MASK_64
  return () => {
    state = (state + 0x9e3779b97f4a7c15n) & MASK_64
    return mixed(state)
  }
}

const rotatedLeft = (x: number, by: number): number => (x << by) | (x >>> (32 - by))

/** xoshiro128** from a state of four 32-bit words, not all zero; 32 bits a call, as an unsigned number. */
export const xoshiro128StarStar = (state: readonly [number, number, number, number]): (() => number) => {
  if (state.every((word) => word >>> 0 === 0))
    throw new RangeError('xoshiro128** cannot start from all zeros')
  let [a, b, c, d] = state
  return () => {
    const result = Math.imul(rotatedLeft(Math.imul(b, 5), 7), 9) >>> 0
    const t = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= t
    d = rotatedLeft(d, 11)
    return result
  }
}

/** FNV-1a, 64 bits, over UTF-16 code units: turns a label into a number. */
const labelHash = (label: string): bigint => {
  let hash = 0xcbf29ce484222325n
  for (let i = 0; i < label.length; i++)
    hash = ((hash ^ BigInt(label.charCodeAt(i))) * 0x100000001b3n) & MASK_64
  return hash
}

const streamFrom = (key: bigint): RandomStream => {
  const seeding = splitMix64(key)
  const [first, second] = [seeding(), seeding()]
  const word = (bits: bigint): number => Number(bits & 0xffffffffn)
  const next = xoshiro128StarStar([word(first), word(first >> 32n), word(second), word(second >> 32n)])

  // 27 + 26 bits make one 53-bit fraction.
  const uniform = (): number => ((next() >>> 5) * 2 ** 26 + (next() >>> 6)) / 2 ** 53

  const integer = (count: number): number => {
    if (!Number.isInteger(count) || count < 1 || count > 2 ** 32)
      throw new RangeError(`No whole number below ${count}`)
    // Draws past the last full run of `count` would favour the small numbers: draw again.
    const fair = 2 ** 32 - (2 ** 32 % count)
    let drawn = next()
    while (drawn >= fair) drawn = next()
    return drawn % count
  }

  return {
    uniform,
    between: (low, high) => low + (high - low) * uniform(),
    integer,
    pick: (entries) => entries[integer(entries.length)] as (typeof entries)[number],
    fork: (label) => streamFrom(mixed((key + labelHash(String(label))) & MASK_64)),
  }
}

/**
 * The stream of a seed.
 * @throws RangeError for a seed that is not a safe whole number.
 */
export const randomStream = (seed: number): RandomStream => {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`A seed is a whole number, not ${seed}`)
  return streamFrom(BigInt.asUintN(64, BigInt(seed)))
}
