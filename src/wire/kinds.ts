/** What a workshop keeps. All of them have a name, revisions and a place in the undo journal. */
export const KINDS = ['stove', 'can', 'bit', 'fuel', 'pot', 'trial', 'photo', 'setting'] as const
export type Kind = (typeof KINDS)[number]

/** What lies on the shelf. */
export const SHELF_KINDS = ['can', 'bit', 'fuel', 'pot'] as const satisfies readonly Kind[]

export const isKind = (word: string): word is Kind => (KINDS as readonly string[]).includes(word)
