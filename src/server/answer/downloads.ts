import type { Workshop } from '#store/workshop.ts'
import { BARE_POLICY, NOT_KEPT } from './headers.ts'
import { replyWith } from './reply.ts'

/** Bytes as a reply; those that came from a database may lie in a larger piece of memory. */
const bytesReply = (bytes: Uint8Array, headers: Readonly<Record<string, string>>): Response =>
  new Response(new Uint8Array(bytes), { headers: { 'content-security-policy': BARE_POLICY, ...headers } })

/** A photo, for `src`. Asked for again, it is not sent again. */
export const sendPhoto = async (workshop: Workshop, id: string, request: Request): Promise<Response> => {
  const photo = await workshop.photo(id)
  if (!photo.ok) return replyWith(photo)
  const { document, mediaType, bytes } = photo.value
  const etag = `"${document.head}"`
  const headers = { etag, 'cache-control': 'private, no-cache', 'content-type': mediaType }
  if (request.headers.get('if-none-match') === etag) return new Response(null, { status: 304, headers })
  return bytesReply(bytes, headers)
}

/** The whole workshop, to be saved under the day's name. */
export const sendArchive = async (workshop: Workshop, now: string): Promise<Response> => {
  const archive = await workshop.exportArchive(now)
  if (!archive.ok) return replyWith(archive)
  return bytesReply(archive.value.bytes, {
    ...NOT_KEPT,
    'content-type': 'application/zip',
    'content-disposition': `attachment; filename="tinwright-${now.slice(0, 10)}.zip"`,
  })
}
