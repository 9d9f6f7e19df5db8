import type { DocumentHead } from '#wire/documents.ts'
import type { Place } from '../routes/routes.ts'

export interface NamedPlace {
  readonly name: string
  readonly place: Place
}

/** Where the header leads. */
export const MAIN_PLACES: readonly NamedPlace[] = [
  { name: 'Stoves', place: { at: 'home' } },
  { name: 'Shelf', place: { at: 'shelf' } },
  { name: 'Workshop', place: { at: 'workshop' } },
  { name: 'Help', place: { at: 'help' } },
]

/** So many stoves stand side by side at most. */
export const MOST_BESIDE = 4

/** What there is of one stove. */
export const roomsOf = (stove: string): readonly NamedPlace[] => [
  { name: 'On the bench', place: { at: 'stove', stove } },
  { name: 'In space', place: { at: 'space', stove } },
  { name: 'Trials', place: { at: 'trials', stove } },
  { name: 'Family', place: { at: 'family', stove } },
  { name: 'Plan', place: { at: 'plan', stove } },
]

type Find = (document: string) => DocumentHead | null

/** The stove that a place is about, by its document. */
export const stoveAt = (place: Place, find: Find): string | null => {
  switch (place.at) {
    case 'stove':
    case 'space':
    case 'family':
    case 'plan':
    case 'trials':
      return place.stove
    case 'trial':
    case 'burn':
      return find(place.trial)?.aboutDocument ?? null
    default:
      return null
  }
}

/** Which of the main places a place lies under. */
export const mainPlaceOf = (place: Place): Place['at'] => {
  switch (place.at) {
    case 'shelf':
    case 'workshop':
    case 'help':
      return place.at
    default:
      return 'home'
  }
}

/** Stoves by name, several steps of one said once: `Heron, 2 steps of Redshank`. */
const besideNames = (ids: readonly string[], find: Find): string => {
  const steps = new Map<string, { readonly name: string; readonly count: number }>()
  for (const id of ids.slice(0, MOST_BESIDE)) {
    const head = find(id)
    const key = head?.id ?? id
    steps.set(key, { name: head?.name ?? 'a stove', count: (steps.get(key)?.count ?? 0) + 1 })
  }
  return [...steps.values()]
    .map(({ name, count }) => (count === 1 ? name : `${count} steps of ${name}`))
    .join(', ')
}

/** What stands over a place: the stove or trial first, then what of it. */
export const titleOf = (place: Place, find: Find): string => {
  const name = (document: string, unknown: string): string => find(document)?.name ?? unknown
  switch (place.at) {
    case 'home':
      return 'Stoves'
    case 'stove':
      return name(place.stove, 'A stove')
    case 'space':
      return `${name(place.stove, 'A stove')}: in space`
    case 'family':
      return `${name(place.stove, 'A stove')}: family`
    case 'plan':
      return `${name(place.stove, 'A stove')}: plan`
    case 'trials':
      return `${name(place.stove, 'A stove')}: trials`
    case 'trial':
      return name(place.trial, 'A trial')
    case 'burn':
      return `${name(place.trial, 'A trial')}: at the stove`
    case 'beside':
      return `Side by side: ${besideNames(place.stoves, find)}`
    case 'shelf':
      return 'Shelf'
    case 'start':
      return 'Start a stove'
    case 'workshop':
      return 'Workshop'
    case 'help':
      return 'Help'
    case 'nowhere':
      return 'Nothing here'
  }
}
