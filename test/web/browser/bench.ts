import type { Browser } from 'playwright-core'
import { benchRig } from '../harness/benchTest.ts'
import type { BenchServer } from '../harness/server.ts'

/** One bench and one browser for a file of tests whose contexts are their own. */
export const benchForTests = () => {
  const rig = benchRig()
  return async (_test: unknown): Promise<{ readonly server: BenchServer; readonly browser: Browser }> => ({
    server: rig.server(),
    browser: rig.browser(),
  })
}
