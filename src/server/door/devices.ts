import { createHash, randomBytes } from 'node:crypto'
import * as z from 'zod'
import type { Device } from '#wire/door.ts'

/** Where the list of devices is kept: a file beside the workshop, out of every archive of it. */
export interface DeviceFile {
  /** What it says, or null where there is none. */
  readonly read: () => string | null
  /** Writes it whole or not at all, for the maker's own eyes. */
  readonly write: (text: string) => void
}

export interface Surroundings {
  /** `2031-05-17T14:05:00Z` */
  readonly now: () => string
  /** Thirty-two bytes that nobody can foresee, as text. */
  readonly newToken: () => string
  readonly newId: () => string
}

export interface Devices {
  /** The device that bears a token, or null. */
  readonly bearer: (token: string | null) => Device | null
  /** Lets one in, and gives it its token: the only time that anybody sees it. */
  readonly add: (name: string) => { readonly device: Device; readonly token: string }
  /** Whether there was one. Its token is worth nothing from now on. */
  readonly revoke: (id: string) => boolean
  /** Those let in, the first one first. */
  readonly list: () => readonly Device[]
}

const FORMAT = 'tinwright/devices@1'
/** More phones than any house has. */
export const MOST_DEVICES = 50

const kept = z.strictObject({
  format: z.literal(FORMAT),
  devices: z
    .array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        since: z.string(),
        seen: z.string(),
        /** SHA-256 of the token: who reads this file gets in nowhere by it. */
        token: z.string().regex(/^[0-9a-f]{64}$/),
      }),
    )
    .readonly(),
})

type Kept = z.output<typeof kept>['devices'][number]

/** Thirty-two random bytes as text that a cookie may hold. */
export const newToken = (): string => randomBytes(32).toString('base64url')

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex')

const withoutToken = ({ id, name, since, seen }: Kept): Device => ({ id, name, since, seen })

/** A list that does not read lets nobody in, and is told to whoever wants to change it. */
const readAll = (file: DeviceFile): readonly Kept[] | null => {
  const text = file.read()
  if (text === null) return []
  try {
    return kept.parse(JSON.parse(text)).devices
  } catch {
    return null
  }
}

/**
 * Devices that may ask for what is kept. Read anew each time, so that one taken off the list by another
 * program is out at once. Tokens have 256 random bits and are found by their digests: nothing to guess, and
 * no time to measure.
 */
export const deviceList = (file: DeviceFile, { now, newToken, newId }: Surroundings): Devices => {
  const write = (devices: readonly Kept[]): void =>
    file.write(`${JSON.stringify({ format: FORMAT, devices }, null, 2)}\n`)
  const note = (devices: readonly Kept[]): void => {
    try {
      write(devices)
    } catch {
      // A full drive is told by whatever else wants to write; the day alone keeps nobody out.
    }
  }
  return {
    bearer: (token) => {
      if (token === null) return null
      const devices = readAll(file) ?? []
      const hash = hashOf(token)
      const found = devices.find((one) => one.token === hash)
      if (found === undefined) return null
      const today = now().slice(0, 10)
      if (found.seen !== today) note(devices.map((one) => (one === found ? { ...one, seen: today } : one)))
      return withoutToken({ ...found, seen: today })
    },
    add: (name) => {
      const token = newToken()
      const since = now()
      const device: Kept = { id: newId(), name, since, seen: since.slice(0, 10), token: hashOf(token) }
      // Those not seen for longest make room.
      const others = [...(readAll(file) ?? [])]
      const stay = others.toSorted((a, b) => (a.seen < b.seen ? 1 : -1)).slice(0, MOST_DEVICES - 1)
      write([...others.filter((one) => stay.includes(one)), device])
      return { device: withoutToken(device), token }
    },
    revoke: (id) => {
      const devices = readAll(file) ?? []
      const left = devices.filter((one) => one.id !== id)
      if (left.length === devices.length) return false
      write(left)
      return true
    },
    list: () => (readAll(file) ?? []).map(withoutToken),
  }
}
