import { createHash, timingSafeEqual } from 'node:crypto'

/** No two of them look or sound alike on paper. */
const LETTERS = 'ACDEFGHJKMNPQRTUVWXY34679'
const LENGTH = 8
/** Enough to fetch a phone from the next room. [ms] */
export const CODE_LASTS = 10 * 60_000
/** Wrong ones from one address; then it has to wait. */
export const MOST_OF_ONE = 5
/** Wrong ones from all addresses; then the code is over. */
export const MOST_OF_ALL = 15
/** Addresses remembered; an attacker in a house has few. */
const ADDRESSES = 500

export interface Chance {
  /** Milliseconds since any fixed moment [ms] */
  readonly clock: () => number
  /** A whole number below another, evenly spread, that nobody can foresee. */
  readonly below: (most: number) => number
}

export interface Code {
  /** `K7QM-3XRD` */
  readonly code: string
  /** How long it holds [ms] */
  readonly lasts: number
}

export type Taken = 'let in' | 'wrong' | 'too often'

export interface Invitations {
  /** A new code; an earlier one is over. */
  readonly begin: () => Code
  /** Takes the code, once. Wrong, used and over are one answer: a stranger learns nothing from it. */
  readonly take: (code: string, address: string) => Taken
}

const digest = (text: string): Buffer => createHash('sha256').update(text).digest()

/** As it was meant, whatever dashes, spaces and small letters it was typed with. */
const meant = (code: string): string => code.toUpperCase().replace(/[^A-Z0-9]/g, '')

/**
 * Codes that let one device in, once: 25^8 (1.5e11) of them, one at a time, for ten minutes and fifteen
 * wrong attempts. Digests of equal length are compared, in a time that does not depend on where they differ.
 */
export const invitations = ({ clock, below }: Chance): Invitations => {
  let standing: { readonly digest: Buffer; readonly until: number; wrong: number } | null = null
  const wrongBy = new Map<string, { count: number; readonly until: number }>()

  const noteWrong = (address: string): void => {
    const before = wrongBy.get(address)
    if (before !== undefined && before.until > clock()) before.count++
    else {
      wrongBy.delete(address)
      wrongBy.set(address, { count: 1, until: clock() + CODE_LASTS })
    }
    for (const oldest of wrongBy.keys()) {
      if (wrongBy.size <= ADDRESSES) break
      wrongBy.delete(oldest)
    }
    if (standing !== null && ++standing.wrong >= MOST_OF_ALL) standing = null
  }

  return {
    begin: () => {
      const letters = Array.from({ length: LENGTH }, () => LETTERS[below(LETTERS.length)]).join('')
      standing = { digest: digest(letters), until: clock() + CODE_LASTS, wrong: 0 }
      return { code: `${letters.slice(0, LENGTH / 2)}-${letters.slice(LENGTH / 2)}`, lasts: CODE_LASTS }
    },
    take: (code, address) => {
      const before = wrongBy.get(address)
      if (before !== undefined && before.until > clock() && before.count >= MOST_OF_ONE) return 'too often'
      const same = timingSafeEqual(digest(meant(code)), standing?.digest ?? digest(' '))
      if (same && standing !== null && standing.until > clock()) {
        standing = null
        wrongBy.delete(address)
        return 'let in'
      }
      noteWrong(address)
      return 'wrong'
    },
  }
}
