const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789'

/**
 * An id that nobody else makes: 24 letters and digits, 118 bits by lot. `crypto.randomUUID` is not there on a phone that
 * reaches the bench over the house's own network without a certificate.
 */
export const freshId = (): string => {
  const lots = crypto.getRandomValues(new Uint32Array(24))
  return Array.from(lots, (lot) => LETTERS[lot % LETTERS.length]).join('')
}

const KEY = 'tinwright.phone'

/** This browser, in the workshop's eyes. */
export const thisDevice = (): string => {
  try {
    const known = localStorage.getItem(KEY)
    if (known !== null) return known
    const made = `phone-${freshId()}`
    localStorage.setItem(KEY, made)
    return made
  } catch {
    return `phone-${freshId()}`
  }
}

/** Asks the browser to throw nothing away of what is kept here, however short of room it gets. */
export const askForRoom = (): void => {
  // Over plain HTTP there is nothing to ask.
  void navigator.storage?.persist?.().catch(() => undefined)
}

/** A touch that can be felt through a glove, where the phone has one. */
export const buzz = (milliseconds = 25): void => {
  try {
    navigator.vibrate?.(milliseconds)
  } catch {
    // Not allowed here; the words on the screen say it too.
  }
}

/** A choice that this browser remembers. */
export const remembered = (key: string, usual: string): string => {
  try {
    return localStorage.getItem(key) ?? usual
  } catch {
    return usual
  }
}

export const remember = (key: string, value: string): void => {
  try {
    localStorage.setItem(key, value)
  } catch {
    // Forgotten with the page, no more.
  }
}
