import { at, type Draft } from './draft.ts'

/** As our demo's trials say of themselves in their remarks (scripts/series). */
const SAYS_SO = /^Invented demo data\b/

/** Whether a burn is one of the demo: nothing of it may slip into a burn that somebody really makes. */
export const isInvented = (draft: Draft): boolean => {
  const about = at(draft, ['about'])
  return typeof about === 'string' && SAYS_SO.test(about)
}
