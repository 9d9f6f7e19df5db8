export type Key = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | 'back' | 'clear'

/** So many figures as any kitchen scale shows, and one more. */
const MOST = 6

/** The text after a key. */
export const pressed = (text: string, key: Key): string => {
  if (key === 'clear') return ''
  if (key === 'back') return text.slice(0, -1)
  if (key === '.') return text.includes('.') ? text : `${text === '' ? '0' : text}.`
  if (text.replace('.', '').length >= MOST) return text
  return text === '0' ? key : text + key
}

/** Whether it is a number; a lone point at its end is forgiven. */
export const typed = (text: string): string | null =>
  /^\d+(?:\.\d*)?$/.test(text) ? text.replace(/\.$/, '') : null
