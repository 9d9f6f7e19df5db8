import type { TestCase } from 'vitest/node'

/** What a test run came to, as plain data that one process can hand to another. */
export interface Tally {
  readonly passed: number
  readonly failed: number
  readonly skipped: number
  readonly rooms: readonly Room[]
  /** Tests that were not run, with the reason they gave. */
  readonly leftOut: readonly { readonly name: string; readonly reason: string }[]
  /** Tests marked as failing for a known reason; they fail when they start to pass. */
  readonly knownFailures: readonly string[]
  /** Tests that did not pass at the first try, whatever became of the second. */
  readonly secondTries: readonly SecondTry[]
}

export interface SecondTry {
  readonly name: string
  readonly file: string
  /** What the first try said, in a line. */
  readonly said: string
}

/** The tests of one folder under `test/`. */
export interface Room {
  readonly name: string
  readonly passed: number
  readonly failed: number
  readonly skipped: number
  /** Sum over its files, which run side by side [s]. */
  readonly seconds: number
}

/** The parts of a test case that a tally reads. */
export type CountedTest = Pick<TestCase, 'fullName' | 'options' | 'result' | 'diagnostic'>

/** The parts of a test file that a tally reads. */
export interface CountedModule {
  readonly relativeModuleId: string
  readonly state: () => string
  readonly diagnostic: () => { readonly duration: number }
  readonly children: { readonly allTests: () => Iterable<CountedTest> }
}

const roomOf = (file: string): string => {
  const parts = file.split('/')
  return parts.length > 2 ? parts.slice(0, 2).join('/') : (parts[0] ?? file)
}

const countModule = (module: CountedModule): Room => {
  const results = [...module.children.allTests()].map((test) => test.result().state)
  const count = (state: string): number => results.filter((found) => found === state).length
  const failed = count('failed')
  // A file that does not load, or whose hooks fail, has no failed test to show for it.
  const brokenFile = module.state() === 'failed' && failed === 0 ? 1 : 0
  return {
    name: roomOf(module.relativeModuleId),
    passed: count('passed'),
    failed: failed + brokenFile,
    // A test that never came to an end was not run, whatever else happened.
    skipped: count('skipped') + count('pending'),
    seconds: module.diagnostic().duration / 1000,
  }
}

const add = (a: Room, b: Room): Room => ({
  name: a.name,
  passed: a.passed + b.passed,
  failed: a.failed + b.failed,
  skipped: a.skipped + b.skipped,
  seconds: a.seconds + b.seconds,
})

const byRoom = (files: readonly Room[]): readonly Room[] => {
  const rooms = new Map<string, Room>()
  for (const file of files) {
    const sofar = rooms.get(file.name)
    rooms.set(file.name, sofar === undefined ? file : add(sofar, file))
  }
  return [...rooms.values()].sort((a, b) => a.name.localeCompare(b.name))
}

const reasonOf = (test: CountedTest): string => {
  const result = test.result()
  if (result.state === 'pending') return 'never came to an end'
  if (result.state === 'skipped' && result.note !== undefined) return result.note
  return test.options.mode === 'todo' ? 'still to be written' : 'no reason given'
}

const firstLine = (text: string | undefined): string => text?.trim().split('\n')[0] ?? ''

const secondTriesOf = (module: CountedModule): readonly SecondTry[] =>
  [...module.children.allTests()]
    .filter((test) => (test.diagnostic()?.retryCount ?? 0) > 0)
    .map((test) => ({
      name: test.fullName,
      file: module.relativeModuleId,
      said: firstLine(test.result().errors?.[0]?.message),
    }))

/**
 * Counts what a test run came to. Errors outside any test (`strays`) and a run without a single test
 * count as failures: neither may look like success.
 */
export const tally = (modules: readonly CountedModule[], strays: readonly unknown[]): Tally => {
  const rooms = byRoom(modules.map(countModule))
  const total = (key: 'passed' | 'failed' | 'skipped'): number =>
    rooms.reduce((sum, room) => sum + room[key], 0)
  const tests = modules.flatMap((module) => [...module.children.allTests()])
  const isLeftOut = (test: CountedTest): boolean => ['skipped', 'pending'].includes(test.result().state)
  const nothingRan = total('passed') + total('failed') === 0 ? 1 : 0
  return {
    passed: total('passed'),
    failed: total('failed') + strays.length + nothingRan,
    skipped: total('skipped'),
    rooms,
    leftOut: tests.filter(isLeftOut).map((test) => ({ name: test.fullName, reason: reasonOf(test) })),
    knownFailures: tests.filter((test) => test.options.fails === true).map((test) => test.fullName),
    secondTries: modules.flatMap(secondTriesOf),
  }
}

/** The line every run ends with. */
export const countsLine = (counts: Pick<Tally, 'passed' | 'failed' | 'skipped'>): string =>
  `${counts.passed} passed, ${counts.failed} failed${counts.skipped > 0 ? `, ${counts.skipped} skipped` : ''}`
