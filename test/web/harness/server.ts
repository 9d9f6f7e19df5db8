export { type BenchServer, startServer } from '#scripts/openBench/server.ts'
