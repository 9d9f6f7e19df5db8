import { randomInt, randomUUID } from 'node:crypto'
import type { Workshop } from '#store/workshop.ts'
import { type Answer, given, type NoAnswer, refused } from '#wire/answer.ts'
import type { Invitation } from '#wire/door.ts'
import { benchApp } from './app.ts'
import type { Assets } from './asset/assets.ts'
import type { Bench } from './bench.ts'
import { cookieName } from './door/cookie.ts'
import { type DeviceFile, deviceList, newToken } from './door/devices.ts'
import { inAddress } from './door/house.ts'
import { invitations } from './door/invitations.ts'
import { invite } from './door/invite.ts'
import { pairPage } from './door/pairPage.ts'
import type { Entrance } from './guest/asked.ts'
import { guestLog } from './guest/guestLog.ts'
import { type BenchServer, type Connecting, connect } from './listen/connect.ts'
import { type House, houseDoors } from './listen/houseDoors.ts'
import { type PortFault, TRIED, takePort } from './listen/takePort.ts'

const THIS_MACHINE = '127.0.0.1'
/** The last requests get so long to end when the bench closes [ms] */
const LAST_REQUESTS = 3000

export interface BenchOptions {
  readonly workshop: Workshop
  readonly assets: Assets
  readonly deviceFile: DeviceFile
  /** Wanted; the first free one from there on is taken. 0: any. */
  readonly port: number
  /** The house to listen to, too; null: closed to the house. */
  readonly house: House | null
  readonly version: string
  /** Lines for whoever sits at the terminal. */
  readonly write: (line: string) => void
  /** Milliseconds since any fixed moment [ms] */
  readonly clock: () => number
  /** `2031-05-17T14:05:00.000Z` */
  readonly now: () => string
}

export interface RunningBench {
  readonly port: number
  /** Where to open it at this machine, `http://127.0.0.1:4300/`. */
  readonly address: string
  /** Where the house found it at the start. */
  readonly houseOrigins: readonly string[]
  /** A new code for one device. */
  readonly invite: () => Promise<Answer<Invitation>>
  /** Takes no new guests, lets the last requests end, ends watchers. The workshop stays open: it is the caller's. */
  readonly close: () => Promise<void>
}

const REASONS: Readonly<Record<PortFault, string>> = {
  'in use': `it and the ${TRIED} after it are in use`,
  'not allowed': 'the system lets no program of yours listen there',
  'no such address': 'this machine has no such address any more',
}

const portRefused = (port: number, fault: PortFault): NoAnswer =>
  refused(
    'not allowed',
    `The bench cannot listen at port ${port}: ${REASONS[fault]}. Name another with --port, from 1024 up.`,
  )

const AT_THIS_MACHINE: Entrance = {
  from: 'this machine',
  scheme: 'http',
  names: [THIS_MACHINE, 'localhost'],
}

/** A page of a foreign name cannot come here by a name of the certificate: nobody else has its key. */
const inTheHouse = (address: string, certificate: House['certificate']): Entrance => ({
  from: 'the house',
  scheme: certificate === null ? 'http' : 'https',
  names: [inAddress(address), ...(certificate?.names ?? [])],
})

/** Opens the bench to this machine, and to the house where addresses are given. */
export const openBench = async (options: BenchOptions): Promise<Answer<RunningBench>> => {
  const { workshop, assets, deviceFile, house, version, write, clock, now } = options
  const about = await workshop.about()
  if (!about.ok) return about
  const log = guestLog({ clock, now, write })
  const fault = (error: unknown): void =>
    write(
      `${now()} the bench broke: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
    )
  const closing = new AbortController()
  const connecting: Connecting = { fetch: (request, came) => app.fetch(request, came), log, fault }
  const certificate = house?.certificate ?? null
  const make = (host: string): BenchServer =>
    host === THIS_MACHINE
      ? connect(connecting, AT_THIS_MACHINE)
      : connect(connecting, inTheHouse(host, certificate), certificate)
  const doors = house === null ? null : houseDoors({ ...house, make, write, fault })
  const bench: Bench = {
    workshop,
    cookie: cookieName(about.value.id),
    assets,
    pairing: pairPage(),
    devices: deviceList(deviceFile, { now, newToken, newId: randomUUID }),
    invitations: invitations({ clock, below: (most) => randomInt(most) }),
    house: doors,
    version,
    now,
    log,
    fault,
    closing: closing.signal,
  }
  const app = benchApp(bench)
  const hosts = [THIS_MACHINE, ...(house?.addresses() ?? [])]
  const taken = await takePort(make, hosts, options.port)
  if (typeof taken === 'string') return portRefused(options.port, taken)
  const { port } = taken
  const [own, ...others] = taken.servers
  // No more files, say: told, and no reason to end.
  for (const server of taken.servers) server.on('error', fault)
  doors?.begin(port, new Map(others.map((server, n) => [hosts[n + 1] ?? '', server])))

  const close = async (): Promise<void> => {
    closing.abort()
    const servers = [...(own === undefined ? [] : [own]), ...(doors === null ? [] : await doors.end())]
    const closed = servers.map((server) => new Promise<void>((resolve) => server.close(() => resolve())))
    for (const server of servers) server.closeIdleConnections()
    const late = setTimeout(() => {
      for (const server of servers) server.closeAllConnections()
    }, LAST_REQUESTS)
    await Promise.all(closed)
    clearTimeout(late)
    log.flush()
  }
  return given({
    port,
    address: `http://${THIS_MACHINE}:${port}/`,
    houseOrigins: doors?.origins() ?? [],
    invite: () => invite(bench),
    close,
  })
}
