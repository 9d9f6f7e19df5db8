import type { IncomingHttpHeaders } from 'node:http'

/** Where a guest came in. Known by the socket that listens, not by anything the guest says. */
export interface Entrance {
  readonly from: 'this machine' | 'the house'
  readonly scheme: 'http' | 'https'
  /** Names under which this entrance is called, without a port; an IPv6 address in brackets. */
  readonly names: readonly string[]
}

/** A request as it came, before anything is made of it. */
export interface Asked {
  readonly method: string
  /** What stands between method and version, as it was sent. */
  readonly target: string
  readonly headers: IncomingHttpHeaders
}

export const headerOf = ({ headers }: Asked, name: string): string | null => {
  const value = headers[name]
  return Array.isArray(value) ? value.join(', ') : (value ?? null)
}
