import * as z from 'zod'
import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import { addDocument, addRevision } from '../documents/add.ts'
import { doStep } from '../documents/journal.ts'
import { documentRow, headOf, revisionRow, type Trx } from '../documents/rows.ts'
import type { Engine } from '../engine/engine.ts'
import { read } from '../engine/transaction.ts'
import { sha256 } from '../hash.ts'
import { checkId, checkName, checkText, MAX_NOTE, MAX_PHOTO } from '../limits.ts'
import type { Act, DocumentHead, NewPhoto, Photo } from '../workshop.ts'
import { photoKind } from './kind.ts'

const PHOTO_FORMAT = 'tinwright/photo@1'

/** What a photo's revision says; the bytes lie beside, by their hash. */
const photoText = z.strictObject({
  format: z.literal(PHOTO_FORMAT),
  mediaType: z.string(),
  size: z.int().positive(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
})

export type PhotoText = z.output<typeof photoText>

export const readPhotoText = (text: string): PhotoText | null => {
  try {
    const parsed = photoText.safeParse(JSON.parse(text))
    return parsed.success ? parsed.data : null
  } catch {
    return null
  }
}

export const putBlob = async (trx: Trx, bytes: Uint8Array): Promise<string> => {
  const hash = sha256(bytes)
  await trx
    .insertInto('blobs')
    .values({ hash, size: bytes.length, bytes })
    .onConflict((on) => on.column('hash').doNothing())
    .execute()
  return hash
}

export const attach = (engine: Engine, act: Act, photo: NewPhoto): Promise<Answer<DocumentHead>> => {
  const { bytes, ...words } = photo
  return doStep(
    engine,
    act,
    ['attach', words, sha256(bytes)],
    async (step) => {
      const { id, revision, name, aboutDocument, note = '' } = words
      checkId(id, 'the id of the photo')
      checkId(revision, 'the id of the revision')
      checkName(name, 'the name of the photo')
      checkText(note, 'the note', MAX_NOTE)
      if (bytes.length > MAX_PHOTO)
        refuse(
          'too large',
          `The photo “${name}” has ${(bytes.length / 1e6).toFixed(1)} MB; allowed are ${MAX_PHOTO / 1e6} MB. Nothing was changed. Make it smaller.`,
        )
      const kind = photoKind(bytes)
      if (kind === null)
        return refuse('bad input', `“${name}” is no JPEG, PNG or WebP picture. Nothing was changed.`)
      await documentRow(step.trx, aboutDocument)
      const hash = await putBlob(step.trx, bytes)
      const said: PhotoText = {
        format: PHOTO_FORMAT,
        mediaType: kind.mediaType,
        size: bytes.length,
        sha256: hash,
      }
      const text = `${JSON.stringify(said, null, 2)}\n`
      const head = await addDocument(step, {
        id,
        kind: 'photo',
        name,
        head: revision,
        about_document: aboutDocument,
        about_revision: null,
        created: act.at,
      })
      await addRevision(step.trx, {
        id: revision,
        document: id,
        text,
        note,
        created: act.at,
        parents: [],
      })
      return { label: `attach “${name}”`, value: head }
    },
    async (trx) => headOf(await documentRow(trx, words.id)),
  )
}

export const blobOf = async (trx: Trx, hash: string): Promise<Uint8Array | null> => {
  const row = await trx.selectFrom('blobs').select('bytes').where('hash', '=', hash).executeTakeFirst()
  if (row === undefined) return null
  // Plain bytes, whatever the database's package makes of them.
  const bytes = new Uint8Array(row.bytes)
  return sha256(bytes) === hash ? bytes : null
}

export const photo = (engine: Engine, document: string): Promise<Answer<Photo>> =>
  read(engine, async (trx) => {
    const row = await documentRow(trx, document)
    if (row.kind !== 'photo') refuse('bad input', `“${row.name}” is no photo.`)
    const said = readPhotoText((await revisionRow(trx, row.head)).text)
    const bytes = said === null ? null : await blobOf(trx, said.sha256)
    if (said === null || bytes === null)
      return refuse('damaged', `The photo “${row.name}” is not the one that was kept: the drive changed it.`)
    return { document: headOf(row), mediaType: said.mediaType, bytes }
  })
