import type { TrialEvent } from '#wire/trials.ts'
/** An entry as this device noted it, until the workshop has it and ever after. */
export interface Noted {
  /** Of the event in the workshop; a correction has one of its own. */
  readonly id: string
  readonly trial: string
  /** `2031-05-17T14:05:00.000Z` */
  readonly at: string
  /** The entry as JSON. What was once sent is never changed: the workshop tells twins by it. */
  readonly body: string
  readonly replaces: string | null
  readonly withdrawn: boolean
  readonly sent: boolean
  /** Its times are of this device's own clock: nobody had told yet how far that is off. */
  readonly ownClock: boolean
}
/** A photo until the workshop has it. */
export interface KeptPhoto {
  readonly id: string
  readonly revision: string
  /** Of the act that brings it. */
  readonly act: string
  readonly trial: string
  readonly name: string
  readonly at: string
  readonly bytes: Blob
}
/** What this device knows of a burn beside the entries. */
export interface KnownBurn {
  readonly trial: string
  readonly name: string
  /** The trial's text in the workshop as last seen; empty: never seen. */
  readonly text: string
  /** Last of its events that was heard of. */
  readonly sequence: number
  /** To add to this device's clock [ms]; null: nobody told. Told once, it stays for the burn. */
  readonly shift: number | null
}
export interface KeptBurn {
  readonly burn: KnownBurn
  readonly noted: readonly Noted[]
  readonly heard: readonly TrialEvent[]
  /** Not yet with the workshop. */
  readonly photos: readonly KeptPhoto[]
}
/** Where a burn is kept on this device. Everything is there when the promise is. */
export interface BurnStore {
  readonly load: (trial: string) => Promise<KeptBurn>
  readonly note: (noted: Noted) => Promise<void>
  readonly knows: (trial: string, change: Partial<KnownBurn>) => Promise<void>
  /** The workshop has these. */
  readonly sent: (trial: string, ids: readonly string[]) => Promise<void>
  readonly hear: (trial: string, events: readonly TrialEvent[], sequence: number) => Promise<void>
  /** Sets how far the clock is off, and moves what was noted before anybody told. */
  readonly shift: (trial: string, by: number) => Promise<void>
  readonly keepPhoto: (photo: KeptPhoto) => Promise<void>
  readonly dropPhoto: (id: string) => Promise<void>
}
export declare const unknownBurn: (trial: string) => KnownBurn
/** An instant, so much later [ms]. */
export declare const later: (at: string, by: number) => string
/** The same on another clock. */
export declare const moved: (noted: Noted, by: number) => Noted
