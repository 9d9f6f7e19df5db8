import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'

/** The service worker of the bench, under an address that never changes. */
const WORKER = 'sw.js'

/** Files of `public/` are copied as they are, past the bundle. */
const copied = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))

/** Builds the service worker, and writes into it which files there are and a mark of this very build. */
export const pagesKept = (entry: string, publicFolder: string): Plugin => ({
  name: 'tinwright-pages-kept',
  apply: 'build',
  buildStart() {
    this.emitFile({ type: 'chunk', id: entry, fileName: WORKER })
  },
  generateBundle: {
    order: 'post',
    handler(_, bundle) {
      const worker = bundle[WORKER]
      if (worker?.type !== 'chunk') throw new Error('The service worker was not built')
      if (worker.imports.length > 0) throw new Error('The service worker has to stand alone')
      const hash = createHash('sha256')
      const made = Object.values(bundle).filter(({ fileName }) => fileName !== WORKER)
      for (const file of made)
        hash.update(file.fileName).update(file.type === 'chunk' ? file.code : file.source)
      const plain = copied(publicFolder)
      for (const path of plain) hash.update(path.slice(publicFolder.length)).update(readFileSync(path))
      const files = [
        ...made.map(({ fileName }) => `/${fileName}`),
        ...plain.map((path) => path.slice(publicFolder.length).replaceAll('\\', '/')),
      ].sort()
      worker.code = worker.code
        .replace('__BUILD__', hash.digest('hex').slice(0, 16))
        .replace('__FILES__', [...new Set(['/index.html', ...files])].join(' '))
    },
  },
})
