import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import type { Metres } from '#basis/units.ts'
import type { Part, Placement, Stove } from '#stove/model.ts'
import { assemblyProblems, placementOf } from './assembly.ts'
import { checkFormat } from './formatLine.ts'
import { type JsonValue, readJson } from './json.ts'
import { type Place, within } from './place.ts'
import { readFuel } from './readFuel.ts'
import { readPart } from './readPart.ts'
import { STOVE_FORMAT, type StoveFile, type StoveRead, stoveSchema } from './schema.ts'
import { schemaProblems } from './schemaProblems.ts'

interface Shaped {
  readonly file: StoveFile
  readonly read: StoveRead
}

const readShape = (json: JsonValue): Outcome<Shaped> => {
  const format = checkFormat(json, STOVE_FORMAT)
  if (!format.ok) return format
  const parsed = stoveSchema.safeParse(json)
  if (!parsed.success) return bad(...schemaProblems(parsed.error.issues, json))
  return good({ file: json as unknown as StoveFile, read: parsed.data })
}

/** Outside of the can a band goes round; null where the assembly does not say, which it tells itself [m]. */
const diameterUnderBand = (
  name: string,
  placements: readonly Placement[],
  parts: ReadonlyMap<string, Part>,
): Metres | null => {
  const host = parts.get(placements.find(({ part }) => part === name)?.host ?? '')
  return host?.form === 'can' ? host.can.bodyDiameter.value : null
}

/** Cans and discs first: what lies in a band depends on the can under it. */
const readParts = (
  read: StoveRead,
  placements: readonly Placement[],
  root: Place,
): { readonly parts: ReadonlyMap<string, Part>; readonly problems: readonly Problem[] } => {
  const found = new Map<string, Part>()
  const problems: Problem[] = []
  const names = Object.keys(read.parts)
  const bandsLast = Object.entries(read.parts).sort(
    ([, a], [, b]) => Number(a.form === 'band') - Number(b.form === 'band'),
  )
  for (const [name, entry] of bandsLast) {
    const under = entry.form === 'band' ? diameterUnderBand(name, placements, found) : null
    const reading = readPart(name, entry, under, within(root, 'parts', name))
    if (reading.part !== null) found.set(name, reading.part)
    problems.push(...reading.problems)
  }
  // Back into the order of the file.
  const parts = new Map([...found].sort(([a], [b]) => names.indexOf(a) - names.indexOf(b)))
  return { parts, problems }
}

const resolve = ({ read }: Shaped, json: JsonValue): Outcome<Stove> => {
  const root: Place = { file: json, path: [] }
  const placements = read.assembly.map(placementOf)
  const { parts, problems: partProblems } = readParts(read, placements, root)
  const fuel = readFuel(read.fuel, placements, parts, within(root, 'fuel'))
  const problems = [
    ...partProblems,
    ...assemblyProblems(read.assembly, new Map(Object.entries(read.parts)), root),
    ...(fuel.ok ? [] : fuel.problems),
  ]
  if (problems.length > 0 || !fuel.ok) return bad(...problems)
  if (fuel.value === null) throw new Error('A stove without a fuel can passed the assembly')
  return good({
    name: read.name,
    about: read.about ?? '',
    parts,
    assembly: placements,
    fuel: fuel.value,
    potDiameter: read.pot?.diameter ?? null,
    ...(read.pot?.gap === undefined ? {} : { potGap: read.pot.gap }),
  })
}

/** A document and the stove it describes. */
export interface StoveDocument {
  readonly file: StoveFile
  readonly stove: Stove
}

/** Reads a document that is in memory already: the one an editor has changed, say. */
export const readStoveValue = (json: JsonValue): Outcome<StoveDocument> => {
  const shaped = readShape(json)
  if (!shaped.ok) return shaped
  const stove = resolve(shaped.value, json)
  return stove.ok ? good({ file: shaped.value.file, stove: stove.value }) : stove
}

/** Puts a stove file together: SI, every hole in its place. Problems as of `readStove`. */
export const resolveStove = (file: StoveFile): Outcome<Stove> => {
  const read = readStoveValue(file as unknown as JsonValue)
  return read.ok ? good(read.value.stove) : read
}

/** Reads a stove file and keeps what its maker wrote beside what it means. Problems as of `readStove`. */
export const readStoveDocument = (text: string): Outcome<StoveDocument> => {
  const json = readJson(text)
  return json.ok ? readStoveValue(json.value) : json
}

/**
 * Reads a stove file (`tinwright/stove@1`) into SI. All problems of one stage are collected: first
 * those of the JSON text, then of each field by itself, then of what does not go together. Each names
 * its field as written, such as `parts.shell.openings.intake.hole.bit`.
 */
export const readStove = (text: string): Outcome<Stove> => {
  const read = readStoveDocument(text)
  return read.ok ? good(read.value.stove) : read
}
