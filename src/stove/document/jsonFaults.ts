/** What people write that looks like JSON and is not, and what to write instead. */
export interface JsonFault {
  readonly code: string
  readonly value: string
  readonly fix: string
}

/** Recognises the usual slips. `word` is what stands there up to the next bracket, comma or space. */
export const notJsonValue = (word: string, start: string): JsonFault | null => {
  if (start === '//' || start === '/*' || start.startsWith('#')) {
    return {
      code: 'comment',
      value: `a comment (${start.startsWith('#') ? '#' : start})`,
      fix: 'JSON knows no comments: delete it, or put the remark into "about".',
    }
  }
  if (/^[+-]?(?:nan|inf|infinity)$/i.test(word)) {
    return { code: 'not-a-number', value: word, fix: 'Write the number that was meant; this is not one.' }
  }
  if (start.startsWith("'") || start.startsWith('“') || start.startsWith('”') || start.startsWith('„')) {
    return {
      code: 'quotes',
      value: `the quotation mark ${start[0]}`,
      fix: 'Use the straight double mark " on both sides.',
    }
  }
  if (/^[+-]?\.?\d/.test(word)) {
    return {
      code: 'number',
      value: word,
      fix: 'Put a measure with its unit in quotation marks ("16 mm"); write a count as plain digits, without + or leading zeros.',
    }
  }
  if (/^(?:true|false|null|none|undefined)$/i.test(word)) {
    return {
      code: 'word',
      value: word,
      fix: 'Write true or false in small letters; leave a key out where there is nothing to say.',
    }
  }
  if (/^\p{L}/u.test(word)) {
    return { code: 'no-quotes', value: word, fix: `Put it in quotation marks: "${word}".` }
  }
  return null
}
