import { describe, expect, it } from 'vitest'
import { type Line, table, toldLines } from '#scripts/gate/table.ts'
import { type CountedModule, type CountedTest, countsLine, tally } from '#scripts/gate/tally.ts'

const options = (mode: 'run' | 'skip' | 'todo' = 'run', fails = false): CountedTest['options'] => ({
  each: undefined,
  fails,
  concurrent: undefined,
  shuffle: undefined,
  retry: undefined,
  repeats: undefined,
  tags: undefined,
  timeout: undefined,
  mode,
})
const test = (
  fullName: string,
  result: ReturnType<CountedTest['result']>,
  how: CountedTest['options'] = options(),
  retryCount = 0,
): CountedTest => ({
  fullName,
  options: how,
  result: () => result,
  diagnostic: () => ({
    slow: false,
    heap: undefined,
    duration: 1,
    startTime: 0,
    retryCount,
    repeatCount: 0,
    flaky: retryCount > 0 && result.state === 'passed',
  }),
})

const passed = (name: string, how?: CountedTest['options']): CountedTest =>
  test(name, { state: 'passed', errors: undefined } as ReturnType<CountedTest['result']>, how)
const failed = (name: string): CountedTest =>
  test(name, { state: 'failed', errors: [] } as unknown as ReturnType<CountedTest['result']>)
const skipped = (name: string, note: string | undefined, how?: CountedTest['options']): CountedTest =>
  test(name, { state: 'skipped', errors: undefined, note } as ReturnType<CountedTest['result']>, how)
const pending = (name: string): CountedTest =>
  test(name, { state: 'pending', errors: undefined } as ReturnType<CountedTest['result']>)

const file = (relativeModuleId: string, tests: readonly CountedTest[], state = 'passed'): CountedModule => ({
  relativeModuleId,
  state: () => state,
  diagnostic: () => ({ duration: 1500 }),
  children: { allTests: () => tests },
})

describe('the tally of a test run', () => {
  it('counts what passed, failed and was skipped, by folder', () => {
    const counts = tally(
      [
        file('test/stove/a.test.ts', [passed('a'), failed('b')], 'failed'),
        file('test/stove/can/b.test.ts', [passed('c'), skipped('d', 'no reader')]),
        file('test/basis/c.test.ts', [passed('e')]),
      ],
      [],
    )
    expect(counts).toMatchObject({ passed: 3, failed: 1, skipped: 1 })
    expect(counts.rooms).toEqual([
      { name: 'test/basis', passed: 1, failed: 0, skipped: 0, seconds: 1.5 },
      { name: 'test/stove', passed: 2, failed: 1, skipped: 1, seconds: 3 },
    ])
  })

  it('counts a file that does not load as a failure, though no test of it failed', () => {
    expect(
      tally([file('test/a/a.test.ts', [passed('a')]), file('test/a/b.test.ts', [], 'failed')], []),
    ).toMatchObject({ passed: 1, failed: 1 })
  })

  it('counts an error outside any test as a failure', () => {
    expect(tally([file('test/a/a.test.ts', [passed('a')])], [new Error('stray')]).failed).toBe(1)
  })

  it('counts a run without a test as a failure', () => {
    expect(tally([], []).failed).toBe(1)
    expect(tally([file('test/a/a.test.ts', [skipped('a', 'why')])], []).failed).toBe(1)
  })

  it('says why each test was left out', () => {
    const tests = [
      passed('ran'),
      skipped('a', 'pdftotext is not installed'),
      skipped('b', undefined),
      skipped('c', undefined, options('todo')),
      pending('d'),
    ]
    expect(tally([file('test/a/a.test.ts', tests)], []).leftOut).toEqual([
      { name: 'a', reason: 'pdftotext is not installed' },
      { name: 'b', reason: 'no reason given' },
      { name: 'c', reason: 'still to be written' },
      { name: 'd', reason: 'never came to an end' },
    ])
  })

  it('names the known failures', () => {
    const counts = tally(
      [file('test/a/a.test.ts', [passed('too hot above 1500 K', options('run', true))])],
      [],
    )
    expect(toldLines(counts)).toEqual(['Known failures:', '  too hot above 1500 K'])
  })

  it('names each test that needed a second try, with its file and what the first one said', () => {
    const errors = [{ message: 'expected 3 to be 4\n\nand much more' }]
    const again = (state: 'passed' | 'failed') =>
      test(state, { state, errors } as unknown as ReturnType<CountedTest['result']>, options(), 1)
    const counts = tally(
      [file('test/web/browser/a.test.ts', [passed('at once'), again('passed'), again('failed')], 'failed')],
      [],
    )
    expect(counts).toMatchObject({ passed: 2, failed: 1 })
    expect(toldLines(counts)).toEqual([
      'Needed a second try:',
      '  test/web/browser/a.test.ts > passed: expected 3 to be 4',
      '  test/web/browser/a.test.ts > failed: expected 3 to be 4',
    ])
  })

  it('tells nothing where there is nothing to tell', () => {
    expect(toldLines(tally([file('test/a/a.test.ts', [passed('a')])], []))).toEqual([])
  })

  it('breaks what is long between words, and sets the rest in', () => {
    const long = `${'word '.repeat(40)}end`
    const lines = toldLines({ leftOut: [], knownFailures: [long], secondTries: [] })
    expect(lines[0]).toBe('Known failures:')
    expect(lines.slice(1).map((line) => /^ */.exec(line)?.[0].length)).toEqual([2, 6])
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(110)
    expect(lines.slice(1).join(' ').split(/\s+/).filter(Boolean)).toEqual(long.split(' '))
  })
})

describe('what a run ends with', () => {
  it.each([
    [{ passed: 12, failed: 0, skipped: 0 }, '12 passed, 0 failed'],
    [{ passed: 12, failed: 3, skipped: 2 }, '12 passed, 3 failed, 2 skipped'],
  ])('%o', (counts, line) => {
    expect(countsLine(counts)).toBe(line)
  })

  it('is a table whose columns stand under each other', () => {
    const lines: readonly Line[] = [
      { name: 'types', ok: true, seconds: 2.04, note: '' },
      { name: 'format and lint', ok: false, seconds: 0.4, note: 'a note' },
    ]
    expect(table(lines)).toEqual([
      '  types            ok        2.0 s',
      '  format and lint  FAILED    0.4 s  a note',
    ])
  })
})
