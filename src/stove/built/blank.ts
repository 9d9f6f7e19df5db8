import { formatted } from '#stove/document/format.ts'
import type { JsonValue } from '#stove/document/json.ts'
import type { Stove } from '#stove/model.ts'
import { measureText } from './plausible.ts'
import { BUILT_FORMAT, type BuiltFile, builtSchema } from './schema.ts'
import { builtSheet } from './sheet.ts'

type Group = Record<string, unknown>

/** What the plan says of all that is measured in one group, for the eye. */
const planOf = (told: readonly string[]): string => {
  const text = told.join('; ')
  return text.length <= 200 ? text : `${text.slice(0, 199)}…`
}

/** The as-built sheet of a stove with every field blank. */
export const blankBuilt = (stove: Stove): BuiltFile => {
  const file: Group = { format: BUILT_FORMAT, stove: stove.name }
  const told = new Map<Group, string[]>()
  for (const measure of builtSheet(stove)) {
    const { path, readings, planned, label } = measure
    const own = path.slice(0, path[2] === 'openings' ? 4 : path[0] === 'parts' ? 2 : 1)
    let holder = file
    for (const key of path.slice(0, -1)) {
      holder[key] ??= {}
      holder = holder[key] as Group
    }
    holder[path.at(-1) as string] = readings === null ? null : Array.from({ length: readings }, () => null)
    if (planned === null || path.length === 1) continue
    let owner = file
    for (const key of own) owner = owner[key] as Group
    told.set(owner, [...(told.get(owner) ?? []), `${label} ${measureText(measure, planned)}`])
  }
  for (const [owner, texts] of told) owner.plan = planOf(texts)
  return file as BuiltFile
}

/** An as-built file as text: every blank on a line that shows it. */
export const formatBuiltFile = (file: BuiltFile): string =>
  formatted(file as unknown as JsonValue, builtSchema)
