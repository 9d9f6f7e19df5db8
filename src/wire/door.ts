/** What a browser withholds from pages that came over plain HTTP, what follows from it at the stove, and what to do. */
export const WITHOUT_CERTIFICATE =
  'Without a certificate a phone keeps every entry, but cannot open the page at the stove again while it is out of reach of this machine, and lets its screen go dark: keep that page open until the burn is over, or start the bench with a certificate of your own (--certificate and --key).'

/** How the one who asks stands to this bench. */
export interface Door {
  /** At this very machine, or from elsewhere in the house. */
  readonly from: 'this machine' | 'the house'
  /** May ask for what is kept. Always, at this machine. */
  readonly letIn: boolean
  /** The name under which it was let in, or null. */
  readonly device: string | null
  /** Whether the bench listens to the house at all. */
  readonly house: boolean
  /** Whether what passes between it and the house is; null where it does not listen there. */
  readonly encrypted: boolean | null
  readonly version: string
}

/** A device that was let in. */
export interface Device {
  readonly id: string
  /** As its owner named it. */
  readonly name: string
  readonly since: string
  /** Day on which it last asked for something, `2031-05-17`. */
  readonly seen: string
}

/** What a guest needs to be let in, once. */
export interface Invitation {
  /** Eight characters without any that look alike, in two groups: `K7QM-3XRD`. */
  readonly code: string
  readonly until: string
  /** Pages to open, one for each address of this machine in the house; the code is behind the `#`. */
  readonly pages: readonly string[]
  /** QR codes of those pages, as SVG, in their order. */
  readonly pictures: readonly string[]
}
