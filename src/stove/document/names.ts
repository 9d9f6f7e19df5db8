import * as z from 'zod'

/**
 * Names the maker gives to parts, openings and cans. They begin with a letter, so that a name can
 * neither be taken for a position in a list nor lose its place in the file (JavaScript sorts keys
 * that look like numbers to the front), and hold no dot, so that `parts.shell.top` is unambiguous.
 */
const NAME = /^\p{L}[\p{L}\p{M}\p{N} _'-]{0,39}$/u

/** So many letters the name of a stove may have. */
export const STOVE_NAME_MOST = 80

export const NAME_ALLOWED = "a name of up to 40 letters, digits, spaces, - _ or ' that begins with a letter"

/** Each of the maker's names with what it names; at most `most`, so that a file cannot swamp a machine. */
export const named = <T extends z.ZodType>(thing: T, most: number, description: string) =>
  z
    .record(z.string().regex(NAME), thing)
    .check((context) => {
      const names = Object.keys(context.value)
      if (names.length <= most) return
      context.issues.push({
        code: 'custom',
        input: context.value,
        message: 'names.too-many',
        params: {
          problem: {
            code: 'names.too-many',
            field: '',
            value: `${names.length} entries`,
            allowed: `at most ${most}`,
            fix: 'Join what belongs together: one row can hold many holes.',
          },
        },
      })
    })
    .meta({ description, maxProperties: most })
