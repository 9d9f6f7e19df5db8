import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'

const root = join(import.meta.dirname, '..', '..')
const built = join(root, 'dist', 'web')
/** Beside the pages, not among them: the server shows everything that lies there. */
const stampFile = join(root, 'dist', 'web.stamp')

/** All that the pages are made of, and what makes them. */
const SOURCES = [
  'src',
  'schema',
  'examples',
  'scripts/build',
  'vite.config.ts',
  'package.json',
  'package-lock.json',
]

const filesIn = (path: string): readonly string[] => {
  try {
    return readdirSync(path, { withFileTypes: true, recursive: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOTDIR') return [path]
    throw error
  }
}

const stamp = (): string => {
  const hash = createHash('sha256')
  const files = SOURCES.flatMap((name) => filesIn(join(root, name))).sort()
  for (const file of files) {
    hash.update(relative(root, file)).update('\0').update(readFileSync(file)).update('\0')
  }
  return hash.digest('hex')
}

const isFresh = (now: string): boolean =>
  existsSync(join(built, 'index.html')) && existsSync(stampFile) && readFileSync(stampFile, 'utf8') === now

/** Builds `src/web` into `dist/web` where it has changed since; false and the builder's words when it cannot. */
export const buildBench = ({ always = false } = {}): boolean => {
  const now = stamp()
  if (!always && isFresh(now)) return true
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js')
  const done = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
    cwd: root,
    encoding: 'utf8',
    // Run by the tests it would inherit theirs, and carry a page for developers.
    env: { ...process.env, NODE_ENV: 'production' },
  })
  if (done.status === 0) {
    writeFileSync(stampFile, now)
    return true
  }
  console.error(`The pages of the bench could not be built:\n${done.stdout}${done.stderr}`)
  return false
}
