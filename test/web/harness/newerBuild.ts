import { join } from 'node:path'
import { build } from 'vite'

// Builds the pages as a later release of the program would: `node newerBuild.ts FOLDER`. In a process of its own, which
// is set to build for makers and not for tests.

const [folder = ''] = process.argv.slice(2)
await build({
  configFile: join(import.meta.dirname, '..', '..', '..', 'vite.config.ts'),
  logLevel: 'error',
  define: { TINWRIGHT_VERSION: '"99.0.0"' },
  build: { outDir: folder, emptyOutDir: true },
})
