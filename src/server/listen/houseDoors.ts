import type { HouseCertificate } from '../door/certificate.ts'
import { inAddress } from '../door/house.ts'
import type { BenchServer } from './connect.ts'
import { listen } from './takePort.ts'

/** The house that a bench is open to. */
export interface House {
  /** Addresses of this machine that only the house can reach, as they are now. */
  readonly addresses: () => readonly string[]
  /** What the doors show; null: they speak plain HTTP. */
  readonly certificate: HouseCertificate | null
}

export interface HouseDoors {
  readonly certificate: HouseCertificate | null
  /** Where the house finds the bench, `http://192.168.1.20:4300`, as it was at the last look. */
  readonly origins: () => readonly string[]
  /** Opens at addresses that this machine has got since the last look, and closes at those it has lost. */
  readonly look: () => Promise<void>
  /** Whether a door to the house is open just now. */
  readonly open: () => boolean
  /** Takes over the doors that were opened at the start, all at one port. */
  readonly begin: (port: number, opened: ReadonlyMap<string, BenchServer>) => void
  /** Looks no more; gives the doors that are to be closed. */
  readonly end: () => Promise<readonly BenchServer[]>
}

export interface Doorkeeping extends House {
  readonly make: (address: string) => BenchServer
  /** A line for whoever sits at the terminal. */
  readonly write: (line: string) => void
  /** A fault of the program, for whoever can mend it. */
  readonly fault: (error: unknown) => void
}

/** Addresses for people: those that a browser will trust, where it looks. */
const originsOf = (
  certificate: HouseCertificate | null,
  open: readonly string[],
  port: number,
): readonly string[] => {
  const hosts =
    certificate === null || open.length === 0
      ? open
      : [...open.filter((address) => certificate.covers(address)), ...certificate.names]
  return hosts.map((host) => `${certificate === null ? 'http' : 'https'}://${inAddress(host)}:${port}`)
}

/** A machine's addresses come and go with its networks; the doors to the house go with them. */
export const houseDoors = ({ addresses, certificate, make, write, fault }: Doorkeeping): HouseDoors => {
  const doors = new Map<string, BenchServer>()
  let port = 0
  let ended = false
  const lookOnce = async (): Promise<void> => {
    if (ended) return
    const now = addresses()
    for (const [address, server] of doors)
      if (!now.includes(address)) {
        doors.delete(address)
        server.close()
        // Whoever came in by an address that is gone cannot be heard any more.
        server.closeAllConnections()
      }
    for (const address of now) {
      if (doors.has(address)) continue
      const server = make(address)
      const hindrance = await listen(server, port, address)
      if (hindrance === null) {
        server.on('error', fault)
        doors.set(address, server)
      } else write(`The bench cannot be reached at ${address}: port ${port} is ${hindrance} there.`)
    }
  }
  let looking = Promise.resolve()
  return {
    certificate,
    origins: () => originsOf(certificate, [...doors.keys()], port),
    look: () => {
      // One after the other: two looks at once would both open the same door.
      looking = looking.then(lookOnce, lookOnce)
      return looking
    },
    open: () => doors.size > 0,
    begin: (taken, opened) => {
      port = taken
      for (const [address, server] of opened) doors.set(address, server)
    },
    end: async () => {
      ended = true
      await looking.catch(() => undefined)
      return [...doors.values()]
    },
  }
}
