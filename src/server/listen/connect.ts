import { createServer, type Server as HttpServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { createServer as createSecureServer, type Server as HttpsServer } from 'node:https'
import type { Socket } from 'node:net'
import type { Duplex } from 'node:stream'
import { getRequestListener } from '@hono/node-server'
import { NOT_KEPT, safeHeaders } from '../answer/headers.ts'
import { guestProblem, type TurnedAway, turnAway } from '../answer/turnedAway.ts'
import type { Came } from '../app.ts'
import { WHOLE_REQUEST } from '../body/readBody.ts'
import type { Entrance } from '../guest/asked.ts'
import { checkGuest } from '../guest/checkGuest.ts'
import type { GuestLog } from '../guest/guestLog.ts'
import { addressOfSocket, brokenBy, handshakeFault, lastWord } from './broken.ts'
import { leaveRoom, MOST_CONNECTIONS, MOST_OF_ONE_DEVICE } from './crowd.ts'

/** Header fields come at once, or somebody holds the line. [ms] */
const HEADERS = 20_000
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
  /** Lines on which somebody was turned away: what was sent behind that is not looked at. */
  const over = new WeakSet<Socket>()
  const refuse = (incoming: IncomingMessage, outgoing: ServerResponse, away: TurnedAway): void => {
    const { method = '', url: target = '', socket } = incoming
    over.add(socket)
    log.refused({ address: addressOf(incoming), method, target, sentence: away.sentence })
    sendAway(incoming, outgoing, away, entrance)
  }
  const look = ({ method = '', url: target = '', headers }: IncomingMessage): TurnedAway | null =>
    checkGuest({ method, target, headers }, entrance)
  const take = (incoming: IncomingMessage, outgoing: ServerResponse): void => {
    if (over.has(incoming.socket)) {
      incoming.resume()
      return
    }
    const away = look(incoming)
    if (away === null) void answer(incoming, outgoing)
    else refuse(incoming, outgoing, away)
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
  // Whoever sits at this machine has better ways to keep it busy.
  leaveRoom(
    server,
    entrance.from === 'the house' ? MOST_OF_ONE_DEVICE : MOST_CONNECTIONS,
    (address, sentence) => log.refused({ address, method: '?', target: '?', sentence }),
  )
  server.on('clientError', (error: NodeJS.ErrnoException, socket) => {
    if (error.code === 'ECONNRESET' || !socket.writable) return
    // A browser opens lines ahead, and says nothing on those that it does not need.
    if (error.code === 'ERR_HTTP_REQUEST_TIMEOUT' && 'bytesRead' in socket && socket.bytesRead === 0) {
      socket.destroy()
      return
    }
    const broken = brokenBy(error.code ?? 'unknown')
    const { sentence } = broken
    log.refused({ address: addressOfSocket(socket), method: '?', target: '?', sentence })
    lastWord(socket, entrance, broken)
  })
  // For whom the bench would be a way to somewhere else.
  server.on('connect', (incoming: IncomingMessage, socket: Duplex) => {
    const { method = '', url: target = '' } = incoming
    const sentence = look(incoming)?.sentence ?? 'The bench leads nowhere else.'
    log.refused({ address: addressOf(incoming), method, target, sentence })
    lastWord(socket, entrance, { status: '405 Method Not Allowed', sentence })
  })
  server.on('checkExpectation', (incoming: IncomingMessage, outgoing: ServerResponse) => {
    const expected = incoming.headers.expect ?? null
    const problem = guestProblem(
      'expect',
      'Expect',
      expected,
      '100-continue',
      'Ask as the pages of the bench do.',
    )
    refuse(incoming, outgoing, look(incoming) ?? turnAway('not allowed', problem, 417))
  })
  return server
}
