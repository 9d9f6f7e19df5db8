/** Text of a logger's file, and how its bytes were read where they are not the UTF-8 that everybody writes now. */
export interface FileText {
  readonly text: string
  readonly remark: string | null
}

const decoded = (bytes: Uint8Array, encoding: string): string => new TextDecoder(encoding).decode(bytes)

/** Figures and marks are the same bytes in UTF-8 and in Windows-1252; only ° and letters with accents differ. */
export const textOf = (bytes: Uint8Array): FileText => {
  const [first, second] = bytes
  if (first === 0xff && second === 0xfe)
    return { text: decoded(bytes, 'utf-16le'), remark: 'Its text is UTF-16, as its first bytes say.' }
  if (first === 0xfe && second === 0xff)
    return { text: decoded(bytes, 'utf-16be'), remark: 'Its text is UTF-16, as its first bytes say.' }
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), remark: null }
  } catch {
    return {
      text: decoded(bytes, 'windows-1252'),
      remark: 'Its text is no UTF-8; letters such as ° were read as Windows-1252.',
    }
  }
}
