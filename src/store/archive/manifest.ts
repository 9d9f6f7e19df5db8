import * as z from 'zod'
import { refuse } from '../answer.ts'
import { KINDS } from '../kinds.ts'

export const ARCHIVE = 'tinwright/archive'
/** Of the manifest. An archive of an older one will go on to be read. */
export const ARCHIVE_VERSION = 1
export const MANIFEST = 'manifest.json'

const hash = z.string().regex(/^[0-9a-f]{64}$/)
const id = z.string().min(1).max(80)
const path = z.string().min(1).max(200)

const manifestSchema = z.strictObject({
  format: z.literal(`${ARCHIVE}@${ARCHIVE_VERSION}`),
  workshop: id,
  written: z.string(),
  documents: z.array(
    z.strictObject({
      id,
      kind: z.enum(KINDS),
      name: z.string(),
      head: id,
      deleted: z.boolean(),
      aboutDocument: id.nullable(),
      aboutRevision: id.nullable(),
      created: z.string(),
    }),
  ),
  /** Parents before children. */
  revisions: z.array(
    z.strictObject({
      id,
      document: id,
      parents: z.array(id),
      note: z.string(),
      created: z.string(),
      path,
      sha256: hash,
    }),
  ),
  events: z.array(z.strictObject({ trial: id, path, sha256: hash })),
  photos: z.array(z.strictObject({ path, sha256: hash })),
})

export type Manifest = z.output<typeof manifestSchema>
export type ArchivedDocument = Manifest['documents'][number]
export type ArchivedRevision = Manifest['revisions'][number]

const eventSchema = z.strictObject({
  id,
  at: z.string(),
  body: z.string(),
  replaces: id.nullable(),
  withdrawn: z.boolean(),
  client: id,
  created: z.string(),
})
export type ArchivedEvent = z.output<typeof eventSchema>

const spoilt = (what: string): never =>
  refuse('damaged', `The archive is damaged: ${what}. Nothing was changed. Use another copy of it.`)

const jsonOf = (text: string, file: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return spoilt(`${file} is no JSON`)
  }
}

const firstIssue = (file: string, { issues }: z.core.$ZodError): never =>
  spoilt(`${file} does not read at ${issues[0]?.path.join('.') || 'its top'} (${issues[0]?.message ?? ''})`)

/** Reads a manifest, or refuses: `newer` before anything else. */
export const readManifest = (text: string): Manifest => {
  const json = jsonOf(text, MANIFEST)
  const format = (json as { readonly format?: unknown } | null)?.format
  const version = typeof format === 'string' ? /^tinwright\/archive@(\d{1,6})$/.exec(format)?.[1] : undefined
  if (version === undefined)
    return refuse(
      'not a workshop',
      'This is no archive of a workshop: its manifest says so. Nothing was changed.',
    )
  if (Number(version) > ARCHIVE_VERSION)
    refuse(
      'newer',
      `The archive is newer than this program: format ${version}, this reads up to ${ARCHIVE_VERSION}. Nothing was changed. Import it with the newer program, or update this one.`,
    )
  const parsed = manifestSchema.safeParse(json)
  return parsed.success ? parsed.data : firstIssue(MANIFEST, parsed.error)
}

export const readEvents = (text: string, file: string): readonly ArchivedEvent[] => {
  const parsed = z.array(eventSchema).safeParse(jsonOf(text, file))
  return parsed.success ? parsed.data : firstIssue(file, parsed.error)
}
