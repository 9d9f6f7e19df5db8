import { afterAll, afterEach, beforeAll } from 'vitest'
import type { Opening, Place } from '#store/open.ts'
import type { Workshop } from '#store/workshop.ts'
import { open } from '../acts.ts'

/** Where a suite gets empty places from: a folder, a server. */
export interface Places {
  readonly start: () => Promise<void>
  readonly next: () => Promise<Place>
  readonly stop: () => Promise<void>
  /** Random runs of a property: a server takes longer. */
  readonly runs: number
}

/** Opens workshops and closes them after each test. */
export interface Rig {
  readonly runs: number
  readonly place: () => Promise<Place>
  readonly workshop: (place?: Place, own?: Partial<Opening>) => Promise<Workshop>
}

export const rigOn = (places: Places): Rig => {
  const opened: Workshop[] = []
  beforeAll(places.start)
  afterAll(places.stop)
  afterEach(async () => {
    for (const workshop of opened.splice(0)) await workshop.close()
  })
  return {
    runs: places.runs,
    place: places.next,
    workshop: async (place, own) => {
      const workshop = await open(place ?? (await places.next()), own)
      opened.push(workshop)
      return workshop
    },
  }
}
