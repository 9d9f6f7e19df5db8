/** What was typed into a trial and is in no save yet: a page that goes away has no time left to lay one in. */
export interface LastTyped {
  /** The revision it goes on from. */
  readonly base: string
  readonly text: string
}

const keyOf = (trial: string): string => `tinwright.trial-typed.${trial}`

export const rememberTyped = (trial: string, typed: LastTyped): void => {
  try {
    localStorage.setItem(keyOf(trial), JSON.stringify(typed))
  } catch {
    // Then only the last second of typing is at stake.
  }
}

/** It is in a save now. Where more was typed meanwhile, that stays. */
export const forgetTyped = (trial: string, text: string): void => {
  try {
    if (typedIn(trial)?.text === text) localStorage.removeItem(keyOf(trial))
  } catch {
    // Nothing was remembered.
  }
}

export const typedIn = (trial: string): LastTyped | null => {
  try {
    const said: unknown = JSON.parse(localStorage.getItem(keyOf(trial)) ?? 'null')
    return typeof said === 'object' && said !== null && 'base' in said && 'text' in said
      ? { base: String(said.base), text: String(said.text) }
      : null
  } catch {
    return null
  }
}
