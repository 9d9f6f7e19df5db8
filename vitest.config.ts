import { defineConfig } from 'vitest/config'
import { countsReporter } from './scripts/gate/reporter.ts'

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    environment: 'node',
    testTimeout: 30_000,
    reporters: ['default', countsReporter()],
  },
})
