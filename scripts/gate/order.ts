/**
 * The order in which files of tests are begun. What takes long is begun first, or one core would end alone with it.
 * Half of a browser test is spent waiting for a page: tests in the browser and the others are taken in turn, so that
 * two files that run side by side are seldom both of them in the browser.
 */

/** Files that take long, by about what they take on two cores that do nothing else [s]. Only the order rests on it. */
export const LONG: Readonly<Record<string, number>> = {
  'test/compose/artefacts.test.ts': 15,
  'test/craft/card/cards.test.ts': 12,
  'test/craft/guide/guides.test.ts': 24,
  'test/craft/plan/plan.test.ts': 20,
  'test/craft/plan/screen.test.ts': 15,
  'test/craft/solid/parts.test.ts': 30,
  'test/craft/trueSize/everyStove.test.ts': 80,
  'test/proof/compare/compare.test.ts': 10,
  'test/proof/compare/errorRate.test.ts': 15,
  'test/server/kills.test.ts': 40,
  'test/store/kills.test.ts': 30,
  'test/web/browser/atStove.test.ts': 30,
  'test/web/browser/frame.test.ts': 30,
  'test/web/browser/keeping.test.ts': 50,
  'test/web/browser/newer.test.ts': 25,
  'test/web/browser/plan.test.ts': 30,
  'test/web/browser/space.test.ts': 30,
  'test/web/browser/stove.test.ts': 70,
  'test/web/browser/trials.test.ts': 40,
}

const IN_BROWSER = 'test/web/browser/'

/** Seconds that a file takes which is not in the list. */
const OTHERWISE = { browser: 15, other: 2 }

const isInBrowser = (file: string): boolean => file.startsWith(IN_BROWSER)

const secondsOf = (file: string): number =>
  LONG[file] ?? (isInBrowser(file) ? OTHERWISE.browser : OTHERWISE.other)

const longestFirst = (files: readonly string[]): readonly string[] =>
  [...files].sort((a, b) => secondsOf(b) - secondsOf(a) || a.localeCompare(b))

/** Puts files in order, given by their paths below the checkout. */
export const inOrder = (files: readonly string[]): readonly string[] => {
  const lanes = [
    { files: longestFirst(files.filter(isInBrowser)), next: 0, seconds: 0 },
    { files: longestFirst(files.filter((file) => !isInBrowser(file))), next: 0, seconds: 0 },
  ]
  return files.map(() => {
    const open = lanes.filter((lane) => lane.next < lane.files.length)
    const lane = open.reduce((a, b) => (b.seconds < a.seconds ? b : a))
    const file = lane.files[lane.next] as string
    lane.next += 1
    lane.seconds += secondsOf(file)
    return file
  })
}
