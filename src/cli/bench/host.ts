import type { Outcome } from '#basis/problem.ts'
import type { BroughtFile, HouseCertificate } from '#server/door/certificate.ts'
import type { Devices } from '#server/door/devices.ts'
import type { House } from '#server/listen/houseDoors.ts'
import type { RunningBench } from '#server/openBench.ts'
import type { DemoFile } from '#store/demo.ts'
import type { Place } from '#store/open.ts'
import type { Workshop } from '#store/workshop.ts'
import type { Answer } from '#wire/answer.ts'

/** What the bench needs of the machine that it runs on; tests bring their own. */
export interface BenchHost {
  /** The maker's workshop: the one named, or the usual one. */
  readonly place: (named: string | undefined) => Place
  /** Opens it, or begins it. */
  readonly open: (place: Place) => Promise<Answer<Workshop>>
  /** Invented stoves with their burns, and a shelf, for a workshop in which nothing was made yet. */
  readonly demo: () => readonly DemoFile[]
  /** Devices of the house that were let in to a workshop's bench. */
  readonly devices: (place: Place) => Devices
  /** Addresses of this machine that only the house can reach. */
  readonly houseAddresses: () => readonly string[]
  /** Reads a certificate and its key; `now`: `2031-05-17T14:05:00Z`; `called`: the name that the maker says. */
  readonly certificate: (
    certificate: BroughtFile,
    key: BroughtFile,
    now: string,
    called: string | null,
  ) => Outcome<HouseCertificate>
  /** Listens, and answers. */
  readonly serve: (wanted: Serving) => Promise<Answer<Served>>
  /** A picture for the terminal; null where nobody could scan it. */
  readonly qrLetters: (address: string) => string | null
  /** Opens a page in the browser, if there is one. */
  readonly openPage: (address: string) => void
  /** Calls back each time Enter is pressed. Returns what ends it. */
  readonly onEnter: (pressed: () => void) => () => void
  /** Until somebody wants it to end: Ctrl+C, or the system. */
  readonly untilStopped: () => Promise<void>
}

export interface Serving {
  readonly workshop: Workshop
  readonly place: Place
  readonly port: number
  readonly house: House | null
  readonly write: (line: string) => void
  readonly version: string
}

export interface Served {
  readonly bench: RunningBench
  /** Whether the pages have been built. */
  readonly built: boolean
}
