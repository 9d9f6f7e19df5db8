/** Every place of the bench that has an address of its own. */
export type Place =
  | { readonly at: 'home' }
  | { readonly at: 'stove'; readonly stove: string }
  | { readonly at: 'space'; readonly stove: string }
  | { readonly at: 'family'; readonly stove: string }
  | { readonly at: 'plan'; readonly stove: string }
  | { readonly at: 'trials'; readonly stove: string }
  | { readonly at: 'beside'; readonly stoves: readonly string[] }
  | { readonly at: 'shelf' }
  /** A new stove from cans of the shelf. */
  | { readonly at: 'start' }
  | { readonly at: 'trial'; readonly trial: string }
  | { readonly at: 'burn'; readonly trial: string }
  | { readonly at: 'help' }
  | { readonly at: 'workshop' }
  | { readonly at: 'nowhere'; readonly path: string }

const OF_A_STOVE = ['space', 'family', 'plan', 'trials'] as const
const PLAIN = ['shelf', 'start', 'help', 'workshop'] as const

const segments = (path: string): readonly string[] =>
  path
    .split('/')
    .filter((part) => part !== '')
    .map((part) => {
      try {
        return decodeURIComponent(part)
      } catch {
        return part
      }
    })

/** What an address shows. */
export const placeOf = (path: string): Place => {
  const [first, second, third, ...rest] = segments(path)
  if (rest.length > 0) return { at: 'nowhere', path }
  if (first === undefined) return { at: 'home' }
  if (second === undefined) {
    const plain = PLAIN.find((name) => name === first)
    return plain === undefined ? { at: 'nowhere', path } : { at: plain }
  }
  if (first === 'stove') {
    if (third === undefined) return { at: 'stove', stove: second }
    const room = OF_A_STOVE.find((name) => name === third)
    if (room !== undefined) return { at: room, stove: second }
  }
  if (third === undefined) {
    if (first === 'trial') return { at: 'trial', trial: second }
    if (first === 'burn') return { at: 'burn', trial: second }
    if (first === 'beside') {
      const stoves = second.split('+').filter((id) => id !== '')
      if (stoves.length > 0) return { at: 'beside', stoves }
    }
  }
  return { at: 'nowhere', path }
}

/** The address of a place. */
export const pathOf = (place: Place): string => {
  switch (place.at) {
    case 'home':
      return '/'
    case 'stove':
      return `/stove/${encodeURIComponent(place.stove)}`
    case 'space':
    case 'family':
    case 'plan':
    case 'trials':
      return `/stove/${encodeURIComponent(place.stove)}/${place.at}`
    case 'beside':
      return `/beside/${place.stoves.map(encodeURIComponent).join('+')}`
    case 'trial':
    case 'burn':
      return `/${place.at}/${encodeURIComponent(place.trial)}`
    case 'nowhere':
      return place.path
    default:
      return `/${place.at}`
  }
}
