import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { licencesKept } from './scripts/build/licences.ts'
import { pagesKept } from './scripts/build/pagesKept.ts'

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as {
  readonly version: string
}

const web = join(import.meta.dirname, 'src/web')
const licences = licencesKept()

/** The bench in the browser: `src/web` to `dist/web`, which the server reads at its start. */
export default defineConfig({
  root: 'src/web',
  base: '/',
  plugins: [
    react({ jsxImportSource: '#whole-values' }),
    licences.page,
    pagesKept(join(web, 'offline/sw.ts'), join(web, 'public')),
  ],
  resolve: {
    alias: [{ find: /^zod$/, replacement: join(web, 'schema/zodWithoutEval.ts') }],
  },
  define: { TINWRIGHT_VERSION: JSON.stringify(version) },
  publicDir: 'public',
  worker: { format: 'es', plugins: () => [licences.worker] },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    // The policy of the page lets no script run from a data: address.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: { host: '127.0.0.1', proxy: { '/api': 'http://127.0.0.1:4300' } },
})
