import { createHash } from 'node:crypto'
import type { Entrance } from '../guest/asked.ts'

/** A year; whoever comes more often stays. [s] */
const LASTS = 365 * 24 * 3600

/**
 * Cookies know no ports: two workshops on one machine would take each other's away, so the name is the
 * workshop's own.
 */
export const cookieName = (workshop: string): string =>
  `tinwright-${createHash('sha256').update(workshop).digest('hex').slice(0, 10)}`

export interface DoorCookie {
  readonly name: string
  readonly secure: boolean
}

/**
 * The cookie of one entrance. Under TLS it goes over TLS alone and has a name that browsers keep for such (RFC 6265bis,
 * section 4.1.3.2); over plain HTTP another, since a browser would not let that take the place of a secure one.
 */
export const cookieAt = (name: string, { scheme }: Entrance): DoorCookie =>
  scheme === 'https' ? { name: `__Host-${name}`, secure: true } : { name, secure: false }

const cookieOf = ({ name, secure }: DoorCookie, token: string, lasts: number): string =>
  `${name}=${token}; Path=/; ${secure ? 'Secure; ' : ''}HttpOnly; SameSite=Strict; Max-Age=${lasts}`

/** Out of reach of scripts, and sent by pages of this bench alone: RFC 6265bis. */
export const setCookie = (cookie: DoorCookie, token: string): string => cookieOf(cookie, token, LASTS)

export const endCookie = (cookie: DoorCookie): string => cookieOf(cookie, '', 0)

const TOKEN = /^[A-Za-z0-9_-]{20,100}$/

export const tokenIn = (cookies: string | null, { name }: DoorCookie): string | null => {
  for (const pair of (cookies ?? '').split(';')) {
    const [key, value = ''] = pair.trim().split('=')
    if (key === name && TOKEN.test(value)) return value
  }
  return null
}
