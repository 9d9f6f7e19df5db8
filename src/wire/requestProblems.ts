import type * as z from 'zod'
import { type Problem, problemSentence } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import { fieldPath } from '#basis/text/fieldPath.ts'
import { type Answer, given, type NoAnswer } from './answer.ts'

type Issue = z.core.$ZodIssue

const KINDS: Readonly<Record<string, string>> = {
  object: 'a group of fields in braces { }',
  array: 'a list in brackets [ ]',
  string: 'text',
  boolean: 'true or false',
  number: 'a number',
  int: 'a whole number',
}

/** Enough to see what is wrong; a request of a thousand wrong fields gets no answer of a thousand lines. */
const MOST_TOLD = 20

const AGAIN = 'Load the page again: it and the server may be of two versions.'

const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (at, key) =>
      typeof at === 'object' && at !== null && Object.hasOwn(at, key)
        ? (at as Readonly<Record<PropertyKey, unknown>>)[key]
        : undefined,
    value,
  )

const problemsOf = (issue: Issue, request: unknown): readonly Problem[] => {
  const value = valueAt(request, issue.path)
  const field = fieldPath(issue.path) || 'the request'
  const told = (code: string, allowed: string, fix = AGAIN): Problem => ({
    code: `request.${code}`,
    field,
    value: shown(value),
    allowed,
    fix,
  })
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.slice(0, MOST_TOLD).map((key) => ({
        code: 'request.unknown-field',
        field: shown(fieldPath([...issue.path, key])),
        value: shown(valueAt(value, [key])),
        allowed: 'only the fields that this call knows',
        fix: AGAIN,
      }))
    case 'invalid_type':
      return [
        told(value === undefined ? 'missing' : 'wrong-type', KINDS[issue.expected] ?? String(issue.expected)),
      ]
    case 'invalid_value':
      return [told('unknown-word', `one of ${issue.values.map(String).join(', ')}`)]
    case 'too_big': {
      const length = typeof value === 'string' || Array.isArray(value) ? value.length : null
      const unit = typeof value === 'string' ? ' characters' : Array.isArray(value) ? ' entries' : ''
      const problem = told('too-large', `at most ${issue.maximum}${unit}`, 'Make it smaller.')
      return [length === null ? problem : { ...problem, value: `${length}${unit}` }]
    }
    case 'too_small':
      return [told('too-small', `at least ${issue.minimum}`)]
    default:
      // A schema of ours says in its message what may stand there.
      return [told('unusable', issue.message)]
  }
}

const requestProblems = (issues: readonly Issue[], request: unknown): readonly Problem[] =>
  issues.flatMap((issue) => problemsOf(issue, request)).slice(0, MOST_TOLD)

/** Problems as a refusal: what is only too large is told from what is wrong. */
export const refusedFor = (problems: readonly Problem[]): NoAnswer => ({
  ok: false,
  refusal: {
    code: problems.every(({ code }) => code.endsWith('.too-large')) ? 'too large' : 'bad input',
    sentence: problems.map(problemSentence).join('\n'),
  },
  problems,
})

/** A request as its call wants it, or what is wrong with it, field by field. */
export const readRequest = <S extends z.ZodType>(
  { request: schema }: { readonly request: S },
  request: unknown,
): Answer<z.output<S>> => {
  const parsed = schema.safeParse(request)
  return parsed.success ? given(parsed.data) : refusedFor(requestProblems(parsed.error.issues, request))
}
