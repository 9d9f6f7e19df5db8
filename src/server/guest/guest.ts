import type { Device } from '#wire/door.ts'
import type { Entrance } from './asked.ts'

/** Who asks, once the door has been looked at. */
export interface Guest {
  readonly entrance: Entrance
  readonly address: string
  /** As it was let in; null for this machine, and for a stranger. */
  readonly device: Device | null
  /** May ask for what is kept. */
  readonly letIn: boolean
}
