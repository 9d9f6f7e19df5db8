import { defineConfig } from 'vitest/config'
import { countsReporter } from './scripts/gate/reporter.ts'

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    environment: 'node',
    testTimeout: 30_000,
    // A page on a machine under load is slow; what is awaited comes, or the test has failed.
    expect: { poll: { timeout: 12_000 } },
    reporters: ['default', countsReporter()],
  },
})
