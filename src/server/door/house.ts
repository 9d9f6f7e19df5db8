import { BlockList } from 'node:net'
import type { networkInterfaces } from 'node:os'

/** Ranges that lead nowhere beyond a house: RFC 1918, RFC 3927, RFC 4193. */
const house = new BlockList()
house.addSubnet('10.0.0.0', 8)
house.addSubnet('172.16.0.0', 12)
house.addSubnet('192.168.0.0', 16)
house.addSubnet('169.254.0.0', 16)
house.addSubnet('fc00::', 7, 'ipv6')

/** Addresses of this machine that only the house can reach. */
export const houseAddresses = (interfaces: ReturnType<typeof networkInterfaces>): readonly string[] => {
  const all = Object.values(interfaces).flatMap((each) => each ?? [])
  const own = all.filter(
    ({ address, family, internal }) => !internal && house.check(address, family === 'IPv6' ? 'ipv6' : 'ipv4'),
  )
  // The short ones first: a person may have to type one.
  const byFamily = own.toSorted((a, b) => a.family.localeCompare(b.family))
  return [...new Set(byFamily.map(({ address }) => address))]
}

/** As it stands in an address: IPv6 in brackets (RFC 3986, section 3.2.2). */
export const inAddress = (host: string): string => (host.includes(':') ? `[${host.toLowerCase()}]` : host)
