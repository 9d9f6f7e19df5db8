import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** The top folder of the checkout. */
export const ROOT = join(import.meta.dirname, '..', '..')

export interface TextFile {
  /** From the top folder, with forward slashes. */
  readonly path: string
  readonly text: string
}

/** Every file under a folder of the checkout whose name ends in one of the endings. */
export const filesUnder = (folder: string, endings: readonly string[]): readonly TextFile[] =>
  readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => !path.includes('node_modules'))
    .map((path) => ({
      path: path.slice(ROOT.length + 1).replaceAll('\\', '/'),
      text: readFileSync(path, 'utf8'),
    }))
    .sort((a, b) => a.path.localeCompare(b.path))
