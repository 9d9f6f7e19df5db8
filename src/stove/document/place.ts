import type { Problem } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import { fieldPath } from '#basis/text/fieldPath.ts'
import type { JsonValue } from './json.ts'

/** A place in the file, to point at when what stands there does not go with the rest. */
export interface Place {
  readonly file: JsonValue
  readonly path: readonly PropertyKey[]
}

export const within = (place: Place, ...steps: readonly PropertyKey[]): Place => ({
  file: place.file,
  path: [...place.path, ...steps],
})

/** What stands at a path of the file; undefined where nothing does. */
export const valueAt = (file: JsonValue | undefined, path: readonly PropertyKey[]): JsonValue | undefined => {
  let here: unknown = file
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined
    here = (here as Record<PropertyKey, unknown>)[step]
  }
  return here as JsonValue | undefined
}

/** A problem of this place, showing what the maker wrote there unless told otherwise. */
export const problemAt = (
  place: Place,
  code: string,
  allowed: string,
  fix: string,
  value = shown(valueAt(place.file, place.path)),
): Problem => ({ code, field: fieldPath(place.path) || 'file', value, allowed, fix })
