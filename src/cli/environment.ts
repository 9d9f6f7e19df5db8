import { randomUUID } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { homedir } from 'node:os'
import { dirname, join } from 'node:path'
import type { PngPainter } from '#craft/card/png.ts'
import type { LetteringFonts } from '#craft/pdf/face.ts'
import type { SolidKernel } from '#craft/solid/kernel.ts'
import type { Answer } from '#store/answer.ts'
import type { Workshop } from '#store/workshop.ts'
import type { BenchHost } from './bench/host.ts'
import { loadPngPainter } from './png.ts'
import { solidKernel } from './solidKernel.ts'
import { placeOf } from './workshopPlace.ts'

/** What the commands touch outside themselves; tests bring their own. */
export interface Environment {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  /** A line about work in progress that takes the place of the last one; null takes it away. Unseen where nobody watches. */
  readonly progress: (line: string | null) => void
  readonly readText: (path: string) => string
  readonly readBytes: (path: string) => Uint8Array
  /** Writes a file whole or not at all; makes the folder. Returns the path written. */
  readonly write: (folder: string, name: string, bytes: Uint8Array) => string
  readonly fonts: () => LetteringFonts
  /** What solids are made with; loaded when it is first asked for. */
  readonly solidKernel: () => Promise<SolidKernel>
  /** What turns pictures into PNG; loaded when it is first asked for. */
  readonly pngPainter: () => Promise<PngPainter>
  /** What runs in a published plan: text of a classic script. */
  readonly planScript: () => string
  /** The day, `2031-05-17`. */
  readonly today: () => string
  /** `2031-05-17T14:05:00.000Z` */
  readonly now: () => string
  /** An id that nobody else has. */
  readonly newId: () => string
  /**
   * The workshop that was named, or else the maker's own; `begin`: make it where there is none. Loaded when it is first
   * asked for.
   */
  readonly workshop: (begin: boolean, named?: string) => Promise<Answer<Workshop>>
  /** What the bench in the browser needs of this machine; loaded when it is first asked for. */
  readonly bench: () => Promise<BenchHost>
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

/** Whole, or not at all: a half-written file never bears the name. */
const writeWhole = (path: string, bytes: Uint8Array): void => {
  const half = `${path}.${process.pid}.part`
  try {
    writeFileSync(half, bytes)
    renameSync(half, path)
  } catch (error) {
    rmSync(half, { force: true })
    throw error
  }
}

/** Folder by folder: `mkdir -p` of Node never ends where the system says that a parent is not there, as in `/proc`. */
const makeFolder = (folder: string): void => {
  if (existsSync(folder)) return
  const parent = dirname(folder)
  if (parent !== folder) makeFolder(parent)
  // Another command may have made it in the meantime.
  if (!existsSync(folder)) mkdirSync(folder)
}

/** A page is read best at up to about a hundred letters a line. */
const WIDEST = 100
/** Where nobody says how wide the page is: a pipe, a file. */
const USUAL = 80
const NARROWEST = 40

/** Columns of the terminal, even where its output runs through a pager first; else as `COLUMNS` says. */
const pageWidth = (): number => {
  const said = Number(process.env.COLUMNS)
  const columns = process.stdout.columns ?? process.stderr.columns ?? (said > 0 ? said : USUAL)
  return Math.max(NARROWEST, Math.min(WIDEST, Math.floor(columns)))
}

const now = (): string => new Date().toISOString()

const openTheWorkshop = async (begin: boolean, named?: string): Promise<Answer<Workshop>> => {
  const { openWorkshop } = await import('#store/open.ts')
  const machine = { platform: process.platform, home: homedir(), variables: process.env }
  const place = placeOf(machine, named)
  return openWorkshop(place, { at: now(), beginAs: begin ? randomUUID() : null })
}

export const nodeEnvironment = (): Environment => ({
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  progress: (line) => {
    if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${line ?? ''}`)
  },
  readText: (path) => readFileSync(path, 'utf8'),
  readBytes: (path) => new Uint8Array(readFileSync(path)),
  write: (folder, name, bytes) => {
    makeFolder(folder)
    const path = join(folder, name)
    writeWhole(path, bytes)
    return path
  },
  fonts: () => ({
    regular: SCRIPTS.map((script) => fontFile(script, 400)),
    semibold: SCRIPTS.map((script) => fontFile(script, 600)),
  }),
  solidKernel,
  pngPainter: loadPngPainter,
  planScript: () => readFileSync(new URL('../page/plan.js', import.meta.url), 'utf8'),
  today: () => dayOf(new Date()),
  now,
  newId: randomUUID,
  workshop: openTheWorkshop,
  bench: async () => (await import('./bench/nodeHost.ts')).nodeBenchHost(),
  version,
  width: pageWidth(),
})
