import type { Workshop } from '#store/workshop.ts'
import type { Assets } from './asset/assets.ts'
import type { Devices } from './door/devices.ts'
import type { Invitations } from './door/invitations.ts'
import type { GuestLog } from './guest/guestLog.ts'
import type { HouseDoors } from './listen/houseDoors.ts'

/** Everything that the answers are made from. */
export interface Bench {
  readonly workshop: Workshop
  /** What the cookie of a device in the house is called after. */
  readonly cookie: string
  readonly assets: Assets
  /** The page on which a device types its code. */
  readonly pairing: Assets
  readonly devices: Devices
  readonly invitations: Invitations
  /** The doors to the house; null when it may not come in. */
  readonly house: HouseDoors | null
  readonly version: string
  /** `2031-05-17T14:05:00.000Z` */
  readonly now: () => string
  readonly log: GuestLog
  /** A fault of the program, for whoever can mend it. */
  readonly fault: (error: unknown) => void
  /** Ends what would go on for ever, when the bench closes. */
  readonly closing: AbortSignal
}
