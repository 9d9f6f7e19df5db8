import type { CallName } from './calls.ts'
import type { UploadName } from './uploads.ts'

// Where things are, so that page, service worker and server say the same.

/** Everything below is answered by the server alone, never from a cache. */
export const API = '/api/'

/** `POST`, JSON in, JSON out. */
export const callPath = (name: CallName): string => `${API}${name}`

/** `POST`, a frame in (frame.ts), JSON out. */
export const uploadPath = (name: UploadName): string => `${API}upload/${name}`

/** `GET`, server-sent events: watch.ts. */
export const watchPath = (since: number): string => `${API}watch?since=${since}`

/** `GET`, the picture itself, for `src`. */
export const photoPath = (document: string): string => `${API}photo/${encodeURIComponent(document)}`

/** `GET`, the whole workshop as a zip, to be saved. */
export const ARCHIVE_PATH = `${API}archive`
