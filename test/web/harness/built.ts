import { buildOnce } from '#scripts/openBench/build.ts'

/** Builds the pages once, before the first file of tests that looks at them. */
export const setup = (): Promise<void> => buildOnce()
