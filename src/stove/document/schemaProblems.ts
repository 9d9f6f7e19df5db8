import type * as z from 'zod'
import type { Problem } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import { fieldPath } from '#basis/text/fieldPath.ts'
import type { JsonValue } from './json.ts'
import { meantKeys } from './meantKeys.ts'
import { NAME_ALLOWED } from './names.ts'
import { nearest } from './nearest.ts'
import { valueAt } from './place.ts'

/** What zod found, told as problems of the file. */
type Issue = z.core.$ZodIssue
type Path = readonly PropertyKey[]

const KINDS: Readonly<Record<string, string>> = {
  object: 'a group of fields in braces { }',
  record: 'a group of named entries in braces { }',
  array: 'a list in brackets [ ]',
  boolean: 'true or false',
  string: 'text in quotation marks',
}

const entriesOf = (count: number | bigint): string =>
  `${count} ${count === 1 || count === 1n ? 'entry' : 'entries'}`

const problem = (code: string, path: Path, value: string, allowed: string, fix: string): Problem => ({
  code,
  field: fieldPath(path) || 'file',
  value,
  allowed,
  fix,
})

const missing = (path: Path, allowed: string): Problem => {
  const key = String(path.at(-1) ?? 'file')
  return problem('key.missing', path, '', allowed, `Add "${key}" here.`)
}

/** `"tipped"`, or `one of "tipped", "upright"`. */
const oneOf = (words: readonly string[]): string => {
  const quoted = words.map((word) => `"${word}"`).join(', ')
  return words.length > 1 ? `one of ${quoted}` : quoted
}

const wrongChoice = (path: Path, value: JsonValue | undefined, choices: readonly string[]): Problem => {
  if (value === undefined) return missing(path, oneOf(choices))
  const near = typeof value === 'string' ? nearest(value, choices) : null
  const fix = near === null ? 'Write one of these words, in quotation marks.' : `Was "${near}" meant?`
  return problem('choice.unknown', path, shown(value), oneOf(choices), fix)
}

const unknownKeys = (path: Path, keys: readonly string[], known: readonly string[]): readonly Problem[] =>
  keys.map((key) => {
    const meant = meantKeys(key, known)
    const fix =
      meant.length === 0
        ? 'Take it out; remarks have their place in "about" at the top of the file.'
        : `Was ${meant.map((one) => `"${one}"`).join(' or ')} meant?`
    return problem('key.unknown', [...path, key], `"${key}"`, oneOf(known), fix)
  })

/** So many unknown keys of one group are enough to tell what was meant; a file of a thousand must not take long. */
const LOOKED_AT = 8

/** What a key that does not belong counts for: less where it is only written otherwise. */
const strangeness = (key: string, known: readonly string[]): number =>
  meantKeys(key, known).length > 0 ? 8 : 10

/** How badly a branch of a union fails to be what was meant: keys that do not belong, keys that are not there. */
const misfit = (issues: readonly Issue[], file: JsonValue | undefined): number =>
  issues.reduce((sum, issue) => {
    if (issue.code === 'unrecognized_keys' && issue.path.length === 0) {
      const known = issue.message.split(', ')
      return issue.keys.reduce((all, key, i) => all + (i < LOOKED_AT ? strangeness(key, known) : 10), sum)
    }
    const absent = issue.path.length === 1 && valueAt(file, issue.path) === undefined
    return sum + (absent ? 5 : 1)
  }, 0)

type Branch = readonly Issue[]

const unknownHere = (branch: Branch): readonly string[] =>
  branch.flatMap((one) => (one.code === 'unrecognized_keys' && one.path.length === 0 ? one.keys : []))

/** A branch that wants text: its reader complains about the value itself. */
const wantsText = (branch: Branch): boolean =>
  branch.some(({ code, path }) => code === 'custom' && path.length === 0)

/** Several shapes were possible: tells what is wrong with the one that was most likely meant. */
const unionProblems = (
  issue: Extract<Issue, { code: 'invalid_union' }>,
  file: JsonValue | undefined,
  at: Path,
): readonly Problem[] => {
  const here = valueAt(file, at)
  if (issue.errors.length === 0) return [wrongChoice(at, here, issue.message.split(', '))]
  if (here === undefined) return [missing(at, issue.message)]
  const deeper = (branch: Branch): readonly Problem[] => branch.flatMap((one) => issueProblems(one, file, at))
  if (typeof here !== 'object' || here === null || Array.isArray(here)) {
    const text = issue.errors.find(wantsText)
    if (text !== undefined) return deeper(text)
    const fix = 'Say what it is, then how large: { "bit": "6 mm" }.'
    return [problem('type.wrong', at, shown(here), `braces with ${issue.message}`, fix)]
  }
  const keys = Object.keys(here)
  if (keys.length === 0)
    return [problem('key.missing', at, 'empty braces', issue.message, 'Say which of these it is.')]
  const branches = issue.errors.filter((branch) => !wantsText(branch))
  const scores = branches.map((branch) => misfit(branch, here))
  const best = branches[scores.indexOf(Math.min(...scores))] ?? []
  // More than one of the alternatives at once: naming one branch's complaint would mislead.
  const allKnown = keys.every((key) => branches.some((branch) => !unknownHere(branch).includes(key)))
  return allKnown && unknownHere(best).length > 0
    ? [problem('choice.several', at, keys.join(', '), issue.message, 'Keep one and take the others out.')]
    : deeper(best)
}

const issueProblems = (issue: Issue, file: JsonValue | undefined, base: Path = []): readonly Problem[] => {
  const path = [...base, ...issue.path]
  const value = valueAt(file, path)
  switch (issue.code) {
    case 'custom':
      return [{ ...(issue.params?.problem as Problem), field: fieldPath(path) || 'file' }]
    case 'unrecognized_keys':
      return unknownKeys(path, issue.keys, issue.message.split(', '))
    case 'invalid_union':
      return unionProblems(issue, file, path)
    case 'invalid_value':
      return [wrongChoice(path, value, issue.values.map(String))]
    case 'invalid_key':
      return [
        problem(
          'name.unusable',
          path,
          String(path.at(-1)).trim() === '' ? 'an empty name' : `"${shown(String(path.at(-1)))}"`,
          NAME_ALLOWED,
          'Choose a plain name; the words for it can go into "about".',
        ),
      ]
    case 'invalid_type': {
      const allowed = KINDS[issue.expected] ?? issue.expected
      return value === undefined
        ? [missing(path, allowed)]
        : [problem('type.wrong', path, shown(value), allowed, `Write ${allowed} here.`)]
    }
    case 'too_small':
    case 'too_big': {
      const [bound, limit] =
        issue.code === 'too_small' ? ['at least', issue.minimum] : ['at most', issue.maximum]
      const entries = Array.isArray(value) ? value.length : 0
      const fix =
        issue.code === 'too_small' ? 'Add what is missing.' : 'Take some out: one row can hold many holes.'
      return [problem('list.length', path, entriesOf(entries), `${bound} ${entriesOf(limit)}`, fix)]
    }
    default:
      return [problem('type.wrong', path, shown(value), issue.message, 'Look at this field again.')]
  }
}

/**
 * The problems of a file that does not have the shape asked for. A misspelt key is told once: the
 * complaint that the right key is missing follows from it.
 */
export const schemaProblems = (issues: readonly Issue[], file: JsonValue): readonly Problem[] => {
  const problems = issues.flatMap((issue) => issueProblems(issue, file))
  const meant = new Set(
    problems.flatMap(({ code, field, fix }) =>
      code === 'key.unknown' && fix.startsWith('Was ')
        ? [...fix.matchAll(/"([^"]*)"/g)].map(([, key]) => field.slice(0, field.lastIndexOf('.') + 1) + key)
        : [],
    ),
  )
  return problems.filter(
    ({ code, field, value }) => !(value === '' && code !== 'key.unknown' && meant.has(field)),
  )
}
