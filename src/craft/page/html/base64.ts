const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Bytes as base64, RFC 4648. */
export const base64 = (bytes: Uint8Array): string => {
  const parts: string[] = []
  for (let i = 0; i < bytes.length; i += 3) {
    const [a, b, c] = [bytes[i] as number, bytes[i + 1], bytes[i + 2]]
    const word = (a << 16) | ((b ?? 0) << 8) | (c ?? 0)
    parts.push(
      `${LETTERS[word >> 18]}${LETTERS[(word >> 12) & 63]}${b === undefined ? '=' : LETTERS[(word >> 6) & 63]}${c === undefined ? '=' : LETTERS[word & 63]}`,
    )
  }
  return parts.join('')
}
