import type { Socket } from 'node:net'
import type { Duplex } from 'node:stream'
import { NOT_KEPT, safeHeaders } from '../answer/headers.ts'
import type { Entrance } from '../guest/asked.ts'

// What comes in and is no request that could be answered: said in a sentence, to whoever sent it and to the terminal.

/** Why no encrypted line came about, as far as the other side says. */
export const handshakeFault = (code: string): string => {
  if (code === 'ERR_SSL_HTTP_REQUEST') return 'It asked over http://; this door speaks https:// only.'
  if (/UNKNOWN_CA|CERTIFICATE_UNKNOWN|BAD_CERTIFICATE/.test(code))
    return `It does not trust the certificate (${code}). Make the authority that signed it known to the device.`
  return `No encrypted line came about (${code}).`
}

export interface Broken {
  /** With its reason: RFC 9110, section 15; 431 is RFC 6585. */
  readonly status: string
  readonly sentence: string
}

/** What Node says of a request that it could not read. */
export const brokenBy = (code: string): Broken => {
  if (code.startsWith('ERR_SSL')) return { status: '400 Bad Request', sentence: handshakeFault(code) }
  switch (code) {
    case 'ERR_HTTP_REQUEST_TIMEOUT':
      return { status: '408 Request Timeout', sentence: 'It did not come in time.' }
    case 'HPE_HEADER_OVERFLOW':
      return {
        status: '431 Request Header Fields Too Large',
        sentence: `Its header fields are too long: it is no HTTP that the bench reads (${code}).`,
      }
    case 'HPE_INVALID_EOF_STATE':
      return { status: '400 Bad Request', sentence: 'It broke off in the middle.' }
    default:
      return { status: '400 Bad Request', sentence: `It is no HTTP (${code}).` }
  }
}

/** A last word over a line that is then cut, past what would read another request from it. */
export const lastWord = (socket: Duplex, entrance: Entrance, { status, sentence }: Broken): void => {
  const body = `${sentence}\n`
  const fields = {
    ...safeHeaders(entrance),
    ...NOT_KEPT,
    'content-type': 'text/plain; charset=utf-8',
    'content-length': String(Buffer.byteLength(body)),
    connection: 'close',
  }
  const head = Object.entries(fields).map(([name, value]) => `${name}: ${value}\r\n`)
  socket.end(`HTTP/1.1 ${status}\r\n${head.join('')}\r\n${body}`)
}

export const addressOfSocket = (socket: Duplex | Socket): string =>
  ('remoteAddress' in socket ? socket.remoteAddress : undefined) ?? 'unknown'
