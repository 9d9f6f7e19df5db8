import * as z from 'zod'
import type { Call } from './calls.ts'
import type { DocumentHead } from './documents.ts'
import { act, photoWords } from './fields.ts'
import type { ArchiveReport } from './files.ts'
import { MAX_ARCHIVE, MAX_PHOTO } from './limits.ts'

/** Something sent up as bytes, with a few words before them. */
export interface Upload<Schema extends z.ZodType = z.ZodType, T = unknown> extends Call<Schema, T> {
  /** The bytes alone [bytes] */
  readonly mostBytes: number
  /** What it is, for sentences. */
  readonly what: string
}

const sends =
  <T>() =>
  <S extends z.ZodType>(what: string, mostBytes: number, request: S): Upload<S, T> => ({
    request,
    writes: true,
    mostBytes,
    what,
  })

export const UPLOADS = {
  /** A JPEG, PNG or WebP picture. */
  attach: sends<DocumentHead>()('photo', MAX_PHOTO, z.strictObject({ act, photo: photoWords })),
  importArchive: sends<ArchiveReport>()('archive', MAX_ARCHIVE, z.strictObject({ act })),
} as const

export type UploadName = keyof typeof UPLOADS
export type UploadRequestOf<N extends UploadName> = z.input<(typeof UPLOADS)[N]['request']>
export type UploadValueOf<N extends UploadName> =
  (typeof UPLOADS)[N] extends Upload<z.ZodType, infer T> ? T : never

export const isUploadName = (word: string): word is UploadName => Object.hasOwn(UPLOADS, word)
