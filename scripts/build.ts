import { buildBench } from './build/bench.ts'

// Builds the pages of the bench, whether they need it or not.
process.exitCode = buildBench({ always: true }) ? 0 : 1
