import { describe, expect, it } from 'vitest'
import { tokenIn } from '#server/door/cookie.ts'
import { deviceList, MOST_DEVICES } from '#server/door/devices.ts'
import { houseAddresses } from '#server/door/house.ts'
import { invitations, MOST_OF_ALL } from '#server/door/invitations.ts'

/** A clock and a chance that a test can foresee. */
const rig = () => {
  let time = 0
  let n = 0
  const door = invitations({ clock: () => time, below: (most) => n++ % most })
  return { door, pass: (passed: number) => (time += passed) }
}

describe('invitations', () => {
  it('end after so many wrong codes from all addresses together', () => {
    const { door } = rig()
    const { code } = door.begin()
    for (let n = 0; n < MOST_OF_ALL; n++) expect(door.take('AAAA-AAAA', `10.0.0.${n}`)).toBe('wrong')
    expect(door.take(code, '10.0.1.1')).toBe('wrong')
    expect(door.take(door.begin().code, '10.0.1.1')).toBe('let in')
  })

  it('remember no more addresses than they can hold', () => {
    const { door } = rig()
    for (let n = 0; n < 5000; n++) door.take('x', `address ${n}`)
    for (let n = 0; n < 5; n++) door.take('x', 'address 4999')
    expect(door.take(door.begin().code, 'address 4999')).toBe('too often')
    expect(door.take(door.begin().code, 'address 0')).toBe('let in')
  })

  it('are never open before the first is made', () => {
    const { door } = rig()
    for (const code of ['', ' ', '\0', '-'.repeat(40)]) expect(door.take(code, 'a')).toBe('wrong')
  })
})

describe('addresses of the house', () => {
  const at = (address: string, internal = false) => ({
    address,
    family: address.includes(':') ? ('IPv6' as const) : ('IPv4' as const),
    internal,
    netmask: '',
    mac: '',
    cidr: null,
    scopeid: 0,
  })
  it('are those that lead nowhere beyond it: RFC 1918, RFC 3927, RFC 4193', () => {
    const inside = [
      '10.1.2.3',
      '172.16.0.1',
      '172.31.255.254',
      '192.168.178.20',
      '169.254.3.4',
      'fd00::2',
      'fc00::1',
    ]
    const outside = [
      '172.32.0.1',
      '172.15.0.1',
      '192.169.0.1',
      '8.8.8.8',
      '100.64.0.1',
      '2001:db8::1',
      'fe80::1',
    ]
    const all = [...outside, ...inside].map((address) => at(address))
    const found = houseAddresses({ one: all, lo: [at('127.0.0.1', true), at('10.9.9.9', true)] } as never)
    expect(found.toSorted()).toEqual(inside.toSorted())
    // Those that can be typed come first.
    expect(found.at(-1)).toContain(':')
  })
})

describe('a cookie', () => {
  const token = 'a'.repeat(43)
  it.each([
    [`t=${token}`, token],
    [`other=1; t=${token}; more=2`, token],
    [`tt=${token}`, null],
    [`t=short`, null],
    [`t=${token}$`, null],
    ['t', null],
    ['', null],
    [null, null],
  ])('%s', (cookies, found) => {
    expect(tokenIn(cookies, { name: 't', secure: false })).toBe(found)
  })
})

describe('the list of devices', () => {
  it('makes room for a new one by the one that was not seen for longest', () => {
    let text: string | null = null
    let day = 0
    const list = deviceList(
      { read: () => text, write: (written) => (text = written) },
      {
        now: () => new Date(Date.UTC(2031, 0, 1 + day)).toISOString(),
        newToken: () => `token-${day}`,
        newId: () => `device-${day}`,
      },
    )
    for (day = 0; day < MOST_DEVICES; day++) list.add('Phone')
    // The first one comes again: the second is the one nobody saw.
    expect(list.bearer('token-0')).toMatchObject({ id: 'device-0' })
    list.add('New')
    const ids = list.list().map(({ id }) => id)
    expect(ids).toHaveLength(MOST_DEVICES)
    expect(ids).toContain('device-0')
    expect(ids).not.toContain('device-1')
  })
})
