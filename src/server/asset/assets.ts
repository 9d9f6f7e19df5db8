import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { extname, join, relative, sep } from 'node:path'

export interface Asset {
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly type: string
  readonly etag: string
  /** Its name changes with what is in it, so it never has to be asked for again. */
  readonly immutable: boolean
}

/** By path, `/assets/bench-1a2b3c.js`. */
export type Assets = ReadonlyMap<string, Asset>

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.gif': 'image/gif',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.webp': 'image/webp',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
}

/** Where the build puts what bears a hash in its name. */
const HASHED = '/assets/'

export const assetOf = (path: string, content: Uint8Array): Asset => {
  const bytes = new Uint8Array(content)
  return {
    bytes,
    type: TYPES[extname(path).toLowerCase()] ?? 'application/octet-stream',
    etag: `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 22)}"`,
    immutable: path.startsWith(HASHED),
  }
}

/** Reads a built page, once: from then on no request reaches a drive. Empty where nothing was built. */
export const readAssets = (folder: string): Assets => {
  const entries = (() => {
    try {
      return readdirSync(folder, { recursive: true, withFileTypes: true })
    } catch (error) {
      if ((error as { readonly code?: unknown }).code === 'ENOENT') return []
      throw error
    }
  })()
  return new Map(
    entries
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const file = join(entry.parentPath, entry.name)
        const path = `/${relative(folder, file).split(sep).join('/')}`
        return [path, assetOf(path, readFileSync(file))]
      }),
  )
}
