import type { Part, Stove } from '#stove/model.ts'
import { compareFace, type FaceFacts, faceOfDisc, faceOfEnd, facesCutOut } from './face.ts'
import type { Primitive } from './primitive.ts'
import { compareWall, type WallFacts, wallOfBand, wallOfCan } from './wall.ts'

/** What one drawing of a stove must show. */
export type Facts = { readonly wall: WallFacts } | { readonly face: FaceFacts }

/** What the drawings of one part must show. */
const factsOfPart = (stove: Stove, name: string, part: Part): readonly Facts[] => {
  switch (part.form) {
    case 'can': {
      const wall = wallOfCan(part)
      const faces = (['bottom', 'top'] as const).flatMap((which) => faceOfEnd(part, which) ?? [])
      const drawn = [...(wall === null ? [] : [{ wall }]), ...faces.map((face) => ({ face }))]
      return drawn.length > 0 ? drawn : facesCutOut(part).map((face) => ({ face }))
    }
    case 'disc':
      return [{ face: faceOfDisc(part) }]
    case 'band':
      return [{ wall: wallOfBand(stove, name) }]
  }
}

/** What the drawings of a stove must show, in the order of its parts. */
export const factsOf = (stove: Stove): readonly Facts[] =>
  [...stove.parts].flatMap(([name, part]) => factsOfPart(stove, name, part))

/** Compares what was read from one drawing with what it must show; gives how many openings were compared. */
export const compare = (facts: Facts, items: readonly Primitive[]): number =>
  'wall' in facts ? compareWall(facts.wall, items) : compareFace(facts.face, items)
