import { describe, expect, it } from 'vitest'
import { type Line, leftOutLines, table } from '#scripts/gate/table.ts'
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
): CountedTest => ({ fullName, options: how, result: () => result })

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
    expect(leftOutLines(counts)).toEqual(['Known failures:', '  too hot above 1500 K'])
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
