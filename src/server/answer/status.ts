import type { RefusalCode } from '#wire/answer.ts'

/** HTTP status of a refusal: RFC 9110, section 15; 507 is RFC 4918, 429 RFC 6585. */
export const STATUS: Readonly<Record<RefusalCode, number>> = {
  'bad input': 400,
  'not paired': 401,
  'not allowed': 403,
  unknown: 404,
  conflict: 409,
  'nothing left': 409,
  'too large': 413,
  'too often': 429,
  broken: 500,
  missing: 503,
  'not a workshop': 503,
  newer: 503,
  damaged: 503,
  busy: 503,
  'read-only': 503,
  'network drive': 503,
  unreachable: 503,
  full: 507,
}

/** Something is the matter with the workshop itself: whoever sits at the terminal wants to know. */
export const TROUBLE: readonly RefusalCode[] = [
  'missing',
  'not a workshop',
  'newer',
  'damaged',
  'read-only',
  'network drive',
  'unreachable',
  'full',
]
