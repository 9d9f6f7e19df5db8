import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'
import { countsReporter } from './scripts/gate/reporter.ts'
import { GateSequencer } from './scripts/gate/sequencer.ts'

/** What is pure leaves nothing behind in a module: such files share a process, and load the model once. */
const PURE = ['basis', 'stove', 'science', 'proof', 'compose', 'wire', 'docs']
const IN_BROWSER = 'test/web/browser/**/*.test.ts'
const pure = PURE.map((room) => `test/${room}/**/*.test.ts`)

export default defineConfig({
  test: {
    environment: 'node',
    // A machine under load is slow, and nothing here measures time: only what hangs is to be ended.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    // What is awaited comes, or the test has failed.
    expect: { poll: { timeout: 60_000 } },
    // While one file waits for a page or a program, another one works.
    maxWorkers: Math.max(2, availableParallelism()),
    sequence: { sequencer: GateSequencer },
    reporters: ['default', countsReporter()],
    // What a test that passes prints is meant for whoever runs it alone.
    silent: 'passed-only',
    slowTestThreshold: 5_000,
    projects: [
      { extends: true, test: { name: 'pure', include: pure, isolate: false } },
      {
        extends: true,
        test: { name: 'rooms', include: ['test/**/*.test.ts'], exclude: [...pure, IN_BROWSER] },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: [IN_BROWSER],
          globalSetup: ['test/web/harness/built.ts'],
          // Chromium, a server and a page have to meet in time. The gate names every test that needed this.
          retry: 1,
        },
      },
    ],
  },
})
