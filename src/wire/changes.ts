import type { DocumentHead } from './documents.ts'
import type { Draft } from './drafts.ts'

export interface Changes {
  /** Ask from here next time. */
  readonly sequence: number
  /** Touched since. */
  readonly documents: readonly DocumentHead[]
  readonly drafts: readonly Pick<Draft, 'document' | 'client' | 'number' | 'closed'>[]
}
