import type { Kind } from '#wire/kinds.ts'

export { isKind, KINDS, type Kind } from '#wire/kinds.ts'

/** With an article, for sentences. */
export const aKind = (kind: Kind): string => `a ${kind}`
