const LINE = 110
/** Short lists of words on one line, as the formatter of the house wants them. */
export const compact = (json: string): string =>
  json.replace(/^(.*)\[\n((?:\s+"[^"\n]*",?\n)+)\s+\]/gm, (all, start: string, words: string) => {
    const list = words.trim().replace(/\s*\n\s*/g, ' ')
    const line = `${start}[${list}]`
    return line.length < LINE ? line : all
  })
