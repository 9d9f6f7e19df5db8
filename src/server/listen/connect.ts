import { createServer, type Server as HttpServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { createServer as createSecureServer, type Server as HttpsServer } from 'node:https'
import type { Socket } from 'node:net'
import { getRequestListener } from '@hono/node-server'
import { NOT_KEPT, safeHeaders } from '../answer/headers.ts'
import type { TurnedAway } from '../answer/turnedAway.ts'
import type { Came } from '../app.ts'
import type { Entrance } from '../guest/asked.ts'
import { checkGuest } from '../guest/checkGuest.ts'
import type { GuestLog } from '../guest/guestLog.ts'

/** A phone in a weak network sends a large archive in a quarter of an hour. [ms] */
const WHOLE_REQUEST = 15 * 60_000
/** Header fields come at once, or somebody holds the line. [ms] */
const HEADERS = 20_000
const MOST_CONNECTIONS = 256
/** Header fields altogether [bytes] */
const HEADER_SIZE = 16_384

export interface Connecting {
  /** The answers; an error thrown there is answered there. */
  readonly fetch: (request: Request, came: Came) => Response | Promise<Response>
  readonly log: GuestLog
  readonly fault: (error: unknown) => void
}

export type BenchServer = HttpServer | HttpsServer

/** What a door shows to those who ask for proof; null: it speaks plain HTTP. */
export type Proof = { readonly cert: string; readonly key: string } | null

/** Why no encrypted line came about, as far as the other side says. */
const handshakeFault = (code: string): string => {
  if (code === 'ERR_SSL_HTTP_REQUEST') return 'It asked over http://; this door speaks https:// only.'
  if (/UNKNOWN_CA|CERTIFICATE_UNKNOWN|BAD_CERTIFICATE/.test(code))
    return `It does not trust the certificate (${code}). Make the authority that signed it known to the device.`
  return `No encrypted line came about (${code}).`
}

const notHttp = (code: string): string =>
  code.startsWith('ERR_SSL') ? handshakeFault(code) : `It is no HTTP (${code}).`

const addressOf = ({ socket }: IncomingMessage): string => socket.remoteAddress ?? 'unknown'

/** Whatever else a guest is sending is let pass for so long, so that the answer is read before the line is cut. [ms] */
const LINGER = 500

const sendAway = (
  incoming: IncomingMessage,
  outgoing: ServerResponse,
  { status, answer, fields = {} }: TurnedAway,
  entrance: Entrance,
): void => {
  const body = JSON.stringify(answer)
  outgoing.writeHead(status, {
    ...safeHeaders(entrance),
    ...NOT_KEPT,
    ...fields,
    'content-type': 'application/json; charset=utf-8',
    'content-length': Buffer.byteLength(body),
    connection: 'close',
  })
  outgoing.write(body)
  const end = (): void => {
    clearTimeout(late)
    outgoing.end()
  }
  const late = setTimeout(end, LINGER)
  for (const over of ['end', 'error', 'close'] as const) incoming.once(over, end)
  incoming.resume()
}

/** A server for one entrance. Guests are looked at before anything is made of what they ask. */
export const connect = (
  { fetch, log, fault }: Connecting,
  entrance: Entrance,
  proof: Proof = null,
): BenchServer => {
  const answer = getRequestListener(
    (request, { incoming }) => fetch(request, { entrance, address: addressOf(incoming as IncomingMessage) }),
    {
      overrideGlobalObjects: false,
      errorHandler: (error) => {
        fault(error)
        return new Response(null, { status: 500 })
      },
    },
  )
  // A request without a name is refused like one with a wrong name, with a sentence.
  const wish = { maxHeaderSize: HEADER_SIZE, requireHostHeader: false }
  const take = (incoming: IncomingMessage, outgoing: ServerResponse): void => {
    const { method = '', url: target = '', headers } = incoming
    const away = checkGuest({ method, target, headers }, entrance)
    if (away === null) {
      void answer(incoming, outgoing)
      return
    }
    log.refused({ address: addressOf(incoming), method, target, sentence: away.sentence })
    sendAway(incoming, outgoing, away, entrance)
  }
  const server: BenchServer =
    proof === null
      ? createServer(wish, take)
      : createSecureServer({ ...wish, ...proof, handshakeTimeout: HEADERS }, take)
  // Added for every kind of server; one without TLS never says it.
  server.on('tlsClientError', (error: NodeJS.ErrnoException, socket: Socket) => {
    if (error.code === 'ECONNRESET') return
    const address = socket.remoteAddress ?? 'unknown'
    log.refused({ address, method: '?', target: '?', sentence: handshakeFault(error.code ?? 'unknown') })
  })
  server.requestTimeout = WHOLE_REQUEST
  server.headersTimeout = HEADERS
  server.maxConnections = MOST_CONNECTIONS
  server.on('clientError', (error: NodeJS.ErrnoException, socket) => {
    if (error.code === 'ECONNRESET' || !socket.writable) return
    const address = 'remoteAddress' in socket ? String(socket.remoteAddress) : 'unknown'
    log.refused({
      address,
      method: '?',
      target: '?',
      sentence: notHttp(error.code ?? 'unknown'),
    })
    socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\nContent-Length: 0\r\n\r\n')
  })
  return server
}
