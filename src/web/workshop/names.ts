/** A fresh id: 128 random bits. `crypto.randomUUID` is missing where the bench is open to the house over plain HTTP. */
export const newId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('')

/** The time as the workshop writes it. */
export const now = (): string => new Date().toISOString()
