import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import type { Metres } from '#basis/units.ts'
import type { Face, Opening, Part } from '#stove/model.ts'
import { faceRing } from '#stove/opening/face.ts'
import type { OpeningRead } from './openingSchema.ts'
import { type Place, within } from './place.ts'
import { readCan } from './readCan.ts'
import { openFace, readBore, readVanes } from './readFace.ts'
import { readPattern } from './readPattern.ts'
import { readRow, type Wall } from './readRow.ts'
import type { PartRead } from './schema.ts'

/** A part without its openings: they need its walls and faces to lie in. */
const bare = (read: PartRead, place: Place): Outcome<Part> => {
  const openings = new Map<string, Opening>()
  switch (read.form) {
    case 'can': {
      const places = { measures: within(place, 'can'), part: place }
      const can = readCan(read.can, read.bottom, read.top, read.trim?.height, places)
      return can.ok ? good({ form: 'can', role: read.role, can: can.value, openings }) : can
    }
    case 'disc':
      return good({
        form: 'disc',
        role: read.role,
        diameter: read.diameter,
        thickness: read.thickness,
        openings,
      })
    case 'band':
      return good({ form: 'band', role: read.role, height: read.height, thickness: read.thickness, openings })
  }
}

const wallOf = (partName: string, part: Part, bandDiameter: Metres | null): Wall => {
  const name = `"${partName}"`
  switch (part.form) {
    case 'can':
      return { name, height: part.can.height.value, diameter: part.can.bodyDiameter.value }
    case 'band':
      return { name, height: part.height, diameter: bandDiameter }
    case 'disc':
      return { name, height: part.thickness, diameter: part.diameter.value }
  }
}

const readOpening = (read: OpeningRead, part: Part, wall: Wall, place: Place): Outcome<Opening> => {
  if (read.kind === 'row') return readRow(read, wall, place)
  const face: Face = read.face ?? 'face'
  const ring = faceRing(part, face)
  if (ring === null) return bad(openFace(place, face))
  switch (read.kind) {
    case 'pattern':
      return readPattern(read, face, ring, place)
    case 'bore':
      return readBore(read, face, ring, place)
    case 'vanes':
      return readVanes(read, face, ring, place)
  }
}

/** A part as far as it could be read: without openings that cannot be, null where its own body cannot be. */
export interface PartReading {
  readonly part: Part | null
  readonly problems: readonly Problem[]
}

/**
 * A part with its openings in it. `bandDiameter` is the outside of the can a band goes round, or null
 * where the assembly does not say.
 */
export const readPart = (
  name: string,
  read: PartRead,
  bandDiameter: Metres | null,
  place: Place,
): PartReading => {
  const body = bare(read, place)
  if (!body.ok) return { part: null, problems: body.problems }
  const part = body.value
  const wall = wallOf(name, part, bandDiameter)
  const openings = new Map<string, Opening>()
  const problems: Problem[] = []
  for (const [key, opening] of Object.entries(read.openings ?? {})) {
    const outcome = readOpening(opening, part, wall, within(place, 'openings', key))
    if (outcome.ok) openings.set(key, outcome.value)
    else problems.push(...outcome.problems)
  }
  return { part: { ...part, openings }, problems }
}
