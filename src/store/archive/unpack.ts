import { Unzip, UnzipInflate } from 'fflate'
import { MAX_ARCHIVE } from '#wire/limits.ts'
import { Refused, refuse } from '../answer.ts'

export interface ArchiveLimits {
  /** The archive itself [bytes]. */
  readonly packed: number
  /** Everything in it [bytes]. */
  readonly unpacked: number
  readonly files: number
}

/** What is in an archive is held in memory. */
const ARCHIVE_LIMITS: ArchiveLimits = { packed: MAX_ARCHIVE, unpacked: 1_500_000_000, files: 50_000 }

/** Fed in slices, so that a bomb is seen before it is large: a slice swells to a thousand times itself at most. */
const SLICE = 16_384

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(0)} MB`

const refuseLarge = (what: string): never =>
  refuse('too large', `The archive is too large: ${what}. Nothing was changed.`)

const spoilt = (what: string): never =>
  refuse('damaged', `The archive is damaged: ${what}. Nothing was changed. Use another copy of it.`)

/** Paths in an archive are names of its parts; none ever becomes a path on a drive. One that would lead out is no slip. */
const checkPath = (path: string, known: ReadonlyMap<string, unknown>): void => {
  const parts = path.split('/')
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for
  const odd = path.length > 200 || /[\\:\u0000-\u001f]/.test(path) || path.startsWith('/')
  if (odd || parts.includes('..') || parts.includes('.'))
    refuse(
      'bad input',
      `The archive names a file ${JSON.stringify(path.slice(0, 80))}, which leads out of it: no archive of ours does. Nothing was changed.`,
    )
  if (known.has(path)) spoilt(`it holds ${path} twice`)
}

/** A whole zip ends in a record of its own, behind which only a remark of 64 kB may stand: APPNOTE 4.3.16. */
const hasEnd = (bytes: Uint8Array): boolean => {
  const last = bytes.length - 22
  for (let at = last; at >= Math.max(0, last - 0xffff); at--)
    if (bytes[at] === 0x50 && bytes[at + 1] === 0x4b && bytes[at + 2] === 5 && bytes[at + 3] === 6)
      return true
  return false
}

const joined = (chunks: readonly Uint8Array[]): Uint8Array => {
  const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const chunk of chunks) {
    whole.set(chunk, at)
    at += chunk.length
  }
  return whole
}

/** Files of a zip, by path. Counts what comes out, whatever the archive says of itself. Throws refusals. */
export const unpack = (
  bytes: Uint8Array,
  limits: ArchiveLimits = ARCHIVE_LIMITS,
): ReadonlyMap<string, Uint8Array> => {
  if (bytes.length > limits.packed)
    refuseLarge(`${megabytes(bytes.length)}, and up to ${megabytes(limits.packed)} are read`)
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b)
    refuse('not a workshop', 'This is no archive of a workshop: it is no zip file. Nothing was changed.')
  if (!hasEnd(bytes)) spoilt('it is cut short')
  const files = new Map<string, Uint8Array>()
  const begun = new Set<string>()
  let total = 0
  const unzip = new Unzip((file) => {
    if (begun.size >= limits.files) refuseLarge(`it holds more than ${limits.files} files`)
    checkPath(file.name, files)
    if (begun.has(file.name)) spoilt(`it holds ${file.name} twice`)
    begun.add(file.name)
    const chunks: Uint8Array[] = []
    file.ondata = (error, chunk, final) => {
      if (error !== null) throw error
      total += chunk.length
      if (total > limits.unpacked) refuseLarge(`unpacked it is more than ${megabytes(limits.unpacked)}`)
      chunks.push(chunk)
      if (final) files.set(file.name, joined(chunks))
    }
    file.start()
  })
  unzip.register(UnzipInflate)
  try {
    for (let at = 0; at < bytes.length; at += SLICE)
      unzip.push(bytes.subarray(at, at + SLICE), at + SLICE >= bytes.length)
  } catch (error) {
    if (error instanceof Refused) throw error
    spoilt(error instanceof Error ? error.message : String(error))
  }
  for (const name of begun) if (!files.has(name)) spoilt(`${name} is cut short`)
  return files
}
