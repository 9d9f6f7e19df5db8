import { createHash } from 'node:crypto'

/** A year; whoever comes more often stays. [s] */
const LASTS = 365 * 24 * 3600

/**
 * Cookies know no ports: two workshops on one machine would take each other's away, so the name is the
 * workshop's own.
 */
export const cookieName = (workshop: string): string =>
  `tinwright-${createHash('sha256').update(workshop).digest('hex').slice(0, 10)}`

/** Out of reach of scripts, and sent by pages of this bench alone: RFC 6265bis. In the house there is no TLS, so not `Secure`. */
export const setCookie = (name: string, token: string): string =>
  `${name}=${token}; Path=/; HttpOnly; SameSite=Strict; Max-Age=${LASTS}`

export const endCookie = (name: string): string => `${name}=; Path=/; HttpOnly; SameSite=Strict; Max-Age=0`

const TOKEN = /^[A-Za-z0-9_-]{20,100}$/

export const tokenIn = (cookies: string | null, name: string): string | null => {
  for (const pair of (cookies ?? '').split(';')) {
    const [key, value = ''] = pair.trim().split('=')
    if (key === name && TOKEN.test(value)) return value
  }
  return null
}
