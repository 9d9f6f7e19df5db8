import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { buildBench } from './build/bench.ts'

// Builds the pages where they have changed, then opens the bench: `npm start -- --port 4400` hands options on.

const main = join(import.meta.dirname, '..', 'src', 'cli', 'main.ts')

if (buildBench()) {
  const bench = spawn(process.execPath, [main, 'bench', ...process.argv.slice(2)], { stdio: 'inherit' })
  // The terminal tells both; the bench closes in its own time, and then so does this.
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => bench.kill(signal))
  bench.on('exit', (code, signal) => {
    process.exitCode = code ?? (signal === null ? 1 : 0)
  })
} else process.exitCode = 1
