import type { BenchServer } from './connect.ts'

/** Of the ports that follow, so many are tried. */
export const TRIED = 20

export type PortFault = 'in use' | 'not allowed' | 'no such address'

const FAULTS: Readonly<Record<string, PortFault>> = {
  EADDRINUSE: 'in use',
  EACCES: 'not allowed',
  EADDRNOTAVAIL: 'no such address',
}

/** Listens, or says why not. Other faults are thrown. */
export const listen = (server: BenchServer, port: number, host: string): Promise<PortFault | null> =>
  new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException): void => {
      const fault = FAULTS[error.code ?? '']
      if (fault === undefined) reject(error)
      else resolve(fault)
    }
    server.once('error', failed)
    server.listen({ port, host }, () => {
      server.off('error', failed)
      resolve(null)
    })
  })

const stop = (server: BenchServer): Promise<void> =>
  new Promise((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })

const portOf = (server: BenchServer): number => {
  const address = server.address()
  return typeof address === 'object' && address !== null ? address.port : 0
}

export interface Taken {
  readonly port: number
  readonly servers: readonly BenchServer[]
}

/** One server at each address, all at the same port; `null` where one of them is in use. */
const takeAll = async (
  make: (host: string) => BenchServer,
  hosts: readonly string[],
  wanted: number,
): Promise<Taken | PortFault> => {
  const servers: BenchServer[] = []
  let port = wanted
  for (const host of hosts) {
    const server = make(host)
    const fault = await listen(server, port, host)
    if (fault !== null) {
      await Promise.all(servers.map(stop))
      return fault
    }
    servers.push(server)
    // 0: the system's choice for the first is everybody's.
    port = portOf(server)
  }
  return { port, servers }
}

/** The wanted port, or the first free one after it. */
export const takePort = async (
  make: (host: string) => BenchServer,
  hosts: readonly string[],
  wanted: number,
): Promise<Taken | PortFault> => {
  let fault: PortFault = 'in use'
  for (let port = wanted; port <= Math.min(wanted + TRIED, 65_535); port++) {
    const taken = await takeAll(make, hosts, port)
    if (typeof taken === 'object') return taken
    fault = taken
    if (taken !== 'in use' || wanted === 0) break
  }
  return fault
}
