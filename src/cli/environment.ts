import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import type { LetteringFonts } from '#craft/pdf/face.ts'

/** What the commands touch outside themselves; tests bring their own. */
export interface Environment {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  readonly readText: (path: string) => string
  /** Writes a file whole or not at all; makes the folder. Returns the path written. */
  readonly write: (folder: string, name: string, bytes: Uint8Array) => string
  readonly fonts: () => LetteringFonts
  /** The day, `2031-05-17`. */
  readonly today: () => string
  readonly version: string
  /** Columns of the page. */
  readonly width: number
}

const require = createRequire(import.meta.url)

const fontFile = (script: string, weight: number): Uint8Array =>
  new Uint8Array(
    readFileSync(
      require.resolve(`@fontsource/source-sans-3/files/source-sans-3-${script}-${weight}-normal.woff`),
    ),
  )

const SCRIPTS = ['latin', 'latin-ext', 'greek', 'cyrillic'] as const

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
  readonly version: string
}

/** Local calendar day. */
const dayOf = (time: Date): string => {
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`
}

/** A page is read best at up to about a hundred letters a line. */
const WIDEST = 100

export const nodeEnvironment = (): Environment => ({
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  readText: (path) => readFileSync(path, 'utf8'),
  write: (folder, name, bytes) => {
    mkdirSync(folder, { recursive: true })
    const path = join(folder, name)
    const half = `${path}.${process.pid}.part`
    writeFileSync(half, bytes)
    renameSync(half, path)
    return path
  },
  fonts: () => ({
    regular: SCRIPTS.map((script) => fontFile(script, 400)),
    semibold: SCRIPTS.map((script) => fontFile(script, 600)),
  }),
  today: () => dayOf(new Date()),
  version,
  width: Math.min(WIDEST, process.stdout.columns ?? WIDEST),
})
