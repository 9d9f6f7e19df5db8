import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Environment } from '#cli/environment.ts'
import { loadPngPainter } from '#cli/png.ts'
import { run } from '#cli/program.ts'
import { solidKernel } from '#cli/solidKernel.ts'
import { fonts } from '../craft/fonts.ts'

/** How a command ended, and what it left behind. */
export interface Ended {
  readonly code: number
  readonly out: string
  readonly err: string
  /** Path to bytes, in the order of writing. */
  readonly written: ReadonlyMap<string, Uint8Array>
}

export type Files = Readonly<Record<string, string>>

const fault = (code: string, path: string): Error => Object.assign(new Error(`${code}: ${path}`), { code })

/** Reads the files it is given; a name that ends in `/` is a folder. */
const memory = (
  files: Files,
  own: Partial<Environment> = {},
): { readonly env: Environment; readonly left: Omit<Ended, 'code'> } => {
  const left = { out: '', err: '', written: new Map<string, Uint8Array>() }
  const env: Environment = {
    out: (text) => {
      left.out += text
    },
    err: (text) => {
      left.err += text
    },
    readText: (path) => {
      const text = files[path]
      if (text !== undefined) return text
      throw fault(`${path}/` in files ? 'EISDIR' : 'ENOENT', path)
    },
    readBytes: (path) => new TextEncoder().encode(env.readText(path)),
    write: (folder, name, bytes) => {
      left.written.set(`${folder}/${name}`, bytes)
      return `${folder}/${name}`
    },
    progress: () => undefined,
    fonts: () => fonts,
    solidKernel,
    pngPainter: loadPngPainter,
    planScript: () => readFileSync(new URL('../../src/page/plan.js', import.meta.url), 'utf8'),
    today: () => '2031-05-17',
    now: () => '2031-05-17T14:05:00Z',
    newId: () => 'id-1',
    workshop: async () => {
      throw new Error('no workshop in this test')
    },
    bench: async () => {
      throw new Error('no bench in this test')
    },
    version: '0.1.0',
    width: 80,
    ...own,
  }
  return { env, left }
}

/** One command on files in memory. */
export const tinwright = async (
  args: readonly string[],
  files: Files,
  own: Partial<Environment> = {},
): Promise<Ended> => {
  const { env, left } = memory(files, own)
  const code = await run(args, env)
  return { ...left, code }
}

const folder = (name: string): string => fileURLToPath(new URL(`../../${name}/`, import.meta.url))

const textsIn = (name: string, ending: string): Files =>
  Object.fromEntries(
    readdirSync(folder(name))
      .filter((file) => file.endsWith(ending))
      .map((file) => [file, readFileSync(folder(name) + file, 'utf8')]),
  )

/** The files of `examples/` and of `test/bad-files/`, by name. */
export const exampleFiles: Files = { ...textsIn('examples', '.json'), ...textsIn('examples', '.csv') }
/** Small files in the shapes that loggers write. */
export const loggerFiles: Files = textsIn('examples/loggers', '')
export const badFiles: Files = textsIn('test/bad-files', '.txt')

export const exampleStoves: readonly string[] = Object.keys(exampleFiles).filter((name) =>
  name.endsWith('.stove.json'),
)

/** Text without its line breaks and indents, for looking sentences up. */
export const flat = (text: string): string => text.replace(/\s+/g, ' ')

/** A row of figures, or the names over them: tables are as wide as they are. */
export const isTableRow = (line: string): boolean =>
  /\S {2,}\S.*\S {2,}\S/.test(line) ||
  /(?: +-?[\d./]+){3}/.test(line) ||
  /^ {6,}\S.*\S {3,}\S/.test(line) ||
  /mm².*in²/.test(line)

type Json = { readonly [key: string]: unknown }

/** An example with something changed in it. */
export const changed = (name: string, change: (stove: Json & Record<string, never>) => void): string => {
  const stove = JSON.parse(exampleFiles[name] as string) as Json & Record<string, never>
  change(stove)
  return JSON.stringify(stove)
}
