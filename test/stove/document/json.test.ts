import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { problemSentence } from '#basis/problem.ts'
import { MAX_CHARACTERS, MAX_DEPTH, readJson } from '#stove/document/json.ts'

const problemsOf = (text: string) => {
  const outcome = readJson(text)
  if (outcome.ok) throw new Error(`was read: ${JSON.stringify(outcome.value)}`)
  return outcome.problems
}

const parses = (text: string): boolean => {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

/** Things our reader refuses on purpose although RFC 8259 allows them. */
const REFUSED_ON_PURPOSE = /^json\.(duplicate-key|refused-key|too-large|too-deep)$/

describe('reading JSON', () => {
  test('gives what JSON.parse gives', () => {
    fc.assert(
      fc.property(fc.json(), fc.constantFrom(undefined, 1, 2, '\t'), (json, indent) => {
        const text = JSON.stringify(JSON.parse(json), null, indent)
        const outcome = readJson(text)
        if (!outcome.ok) return outcome.problems.every(({ code }) => REFUSED_ON_PURPOSE.test(code))
        expect(outcome.value).toEqual(JSON.parse(text))
        return true
      }),
      { numRuns: 500 },
    )
  })

  test('accepts exactly the texts JSON.parse accepts, a spoilt character at a time', () => {
    const character = fc.constantFrom(...'{}[]",:0123456789.eE+-\\u/tfn \n\t\u0001xN'.split(''))
    fc.assert(
      fc.property(
        fc.json({ maxDepth: 4 }),
        fc.nat(),
        fc.nat(3),
        fc.array(character, { maxLength: 3 }),
        (...a) => {
          const [json, at, removed, inserted] = a
          const start = at % (json.length + 1)
          const text = json.slice(0, start) + inserted.join('') + json.slice(start + removed)
          const outcome = readJson(text)
          if (outcome.ok) expect(outcome.value).toEqual(JSON.parse(text))
          else if (parses(text)) {
            const surrogate = outcome.problems.every(
              ({ code, value }) => code === 'json.escape' && value.startsWith('half'),
            )
            expect(surrogate || outcome.problems.every(({ code }) => REFUSED_ON_PURPOSE.test(code))).toBe(
              true,
            )
          }
        },
      ),
      { numRuns: 3000 },
    )
  })

  test('a byte order mark in front is no fault', () => {
    expect(readJson('\ufeff{"a": 1}')).toEqual({ ok: true, value: { a: 1 } })
  })

  test.each([
    ['cut short in a text', '{\n  "name": "ket', 'json.cut-short', 'line 2, column 15'],
    ['cut short after a comma', '{"a": 1,', 'json.cut-short', 'line 1, column 9'],
    ['empty', '', 'json.cut-short', 'line 1, column 1'],
    ['line comment', '{\n  // wind side\n  "a": 1 }', 'json.comment', 'line 2, column 3'],
    ['block comment', '{ "a": /* wide */ 1 }', 'json.comment', 'line 1, column 8'],
    ['hash comment', '# mine\n{}', 'json.comment', 'line 1, column 1'],
    ['comment after the end', '{}\n// mine', 'json.comment', 'line 2, column 1'],
    ['NaN', '{"a": NaN}', 'json.not-a-number', 'line 1, column 7'],
    ['-Infinity', '{"a": -Infinity}', 'json.not-a-number', 'line 1, column 7'],
    ['too large', '{"a": 1e999}', 'json.too-large', 'line 1, column 7'],
    ['leading zero', '{"a": 08}', 'json.number', 'line 1, column 7'],
    ['bare measure', '{"a": 16mm}', 'json.number', 'line 1, column 7'],
    ['leading dot', '{"a": .5}', 'json.number', 'line 1, column 7'],
    ['trailing comma', '{"a": [1, 2,]}', 'json.trailing-comma', 'line 1, column 13'],
    ['trailing comma in braces', '{"a": 1,}', 'json.trailing-comma', 'line 1, column 9'],
    ['single quotes', "{'a': 1}", 'json.quotes', 'line 1, column 2'],
    ['key without quotes', '{a: 1}', 'json.no-quotes', 'line 1, column 2'],
    ['missing comma', '{"a": 1\n "b": 2}', 'json.unexpected', 'line 2, column 2'],
    ['bad escape', '{"a": "\\q"}', 'json.escape', 'line 1, column 8'],
    ['half a surrogate pair', '{"a": "\\ud800"}', 'json.escape', 'line 1, column 7'],
    ['line break in a text', '{"a": "b\nc"}', 'json.line-break', 'line 1, column 9'],
    ['two values', '{} {}', 'json.after-the-end', 'line 1, column 4'],
    ['capital literal', '{"a": True}', 'json.word', 'line 1, column 7'],
    ['old Mac line ends are counted', '{\r"a": NaN}', 'json.not-a-number', 'line 2, column 6'],
    ['a space from a word processor', '{\u00a0"a": 1}', 'json.unexpected', 'line 1, column 2'],
  ])('says where and what: %s', (_, text, code, field) => {
    const [problem, ...more] = problemsOf(text)
    expect(more).toEqual([])
    expect(problem).toMatchObject({ code, field })
    expect(problem?.allowed).not.toBe('')
    expect(problem?.fix).not.toBe('')
    expect(problemSentence(problem as NonNullable<typeof problem>)).toContain(field)
  })

  test('names a character nobody can see', () => {
    expect(problemsOf('{\u00a0"a": 1}')[0]?.value).toBe('an invisible character (U+00A0)')
  })

  test('finds every repeated key, with both places', () => {
    const problems = problemsOf('{"a": {"b": 1,\n"b": 2}, "c": [{"d": 1, "d": 1, "d": 2}]}')
    expect(problems.map(({ field }) => field)).toEqual(['a.b', 'c[0].d', 'c[0].d'])
    expect(problems[0]?.value).toBe('"b" twice (line 1, column 8 and line 2, column 1)')
  })

  test.each(['__proto__', 'constructor', 'prototype'])('refuses the key %s and pollutes nothing', (key) => {
    const problems = problemsOf(`{"a": {"${key}": {"polluted": true}}}`)
    expect(problems).toMatchObject([{ code: 'json.refused-key', field: `a.${key}` }])
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined()
  })

  test('a refused key hidden behind an escape is refused too', () => {
    expect(problemsOf('{"\\u005f_proto__": 1}')[0]?.code).toBe('json.refused-key')
  })

  test('stops at its limits instead of running out of stack or memory', () => {
    expect(problemsOf('['.repeat(100_000))[0]?.code).toBe('json.too-deep')
    const deep = '['.repeat(MAX_DEPTH) + ']'.repeat(MAX_DEPTH)
    expect(readJson(deep).ok).toBe(true)
    expect(problemsOf(`[${deep}]`)[0]?.code).toBe('json.too-deep')
    expect(problemsOf(' '.repeat(MAX_CHARACTERS + 1))[0]?.code).toBe('json.too-long')
  })
})
