import { promisify } from 'node:util'
import { gzip } from 'node:zlib'
import type { Asset } from './assets.ts'

const packed = new WeakMap<Asset, Promise<Uint8Array<ArrayBuffer>>>()
const pack = promisify(gzip)

/** Photos and fonts are packed already. */
const PACKS = /^(?:text|application)\/|svg/
/** Less is sent as it is. [bytes] */
const WORTH_IT = 1400

/** Packed when it is first asked for, and kept so. */
const packedOf = (asset: Asset): Promise<Uint8Array<ArrayBuffer>> => {
  const before = packed.get(asset)
  if (before !== undefined) return before
  const made = pack(asset.bytes, { level: 6 }).then((bytes) => new Uint8Array(bytes))
  packed.set(asset, made)
  return made
}

const takesGzip = (request: Request): boolean =>
  (request.headers.get('accept-encoding') ?? '')
    .toLowerCase()
    .split(',')
    .some((one) => /^\s*gzip\s*(?:;\s*q=(?!0(?:\.0+)?\s*$).*)?$/.test(one))

/** One asset, packed where the browser takes it so, or a word that it has it already. */
export const serveAsset = async (request: Request, asset: Asset): Promise<Response> => {
  const headers: Record<string, string> = {
    'content-type': asset.type,
    etag: asset.etag,
    // Asked about each time, the service worker and the page itself are never older than the server.
    'cache-control': asset.immutable ? 'public, max-age=31536000, immutable' : 'no-cache',
    vary: 'accept-encoding',
  }
  if (request.headers.get('if-none-match')?.includes(asset.etag))
    return new Response(null, { status: 304, headers })
  if (PACKS.test(asset.type) && asset.bytes.length > WORTH_IT && takesGzip(request))
    return new Response(await packedOf(asset), { headers: { ...headers, 'content-encoding': 'gzip' } })
  return new Response(asset.bytes, { headers })
}
