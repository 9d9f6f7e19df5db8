import { long, onRuleAtLeast, onRuleAtMost } from '#basis/text/bothUnits.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import type { Finding, Opening, PatternOpening, Shelf, VanesOpening } from '#stove/model.ts'
import type { Check } from '../context.ts'
import { SAY, stop } from '../finding.ts'
import { largestBit } from '../handBits.ts'
import { called, says } from '../phrase.ts'
import { TIN } from '../rules.ts'
import {
  closestBetweenFaces,
  closestOnFace,
  type FaceOutline,
  faceOutlines,
  innerReach,
  outerReach,
} from './faceOutline.ts'
import { type FaceSheet, sheetOf } from './faceSheet.ts'
import { gradeWeb, lesserWeb, type Web, webOfCut, webOfHole } from './web.ts'

/** One opening of a face, with what it cuts out. */
interface FaceCut {
  readonly name: string
  readonly opening: Exclude<Opening, { kind: 'row' }>
  readonly outlines: readonly FaceOutline[]
}

interface Told {
  readonly code: string
  readonly severity: Finding['severity']
  readonly sentence: string
  readonly fix: string
}

const webOf = (opening: Opening, thickness: number): Web =>
  opening.kind === 'pattern' ? webOfHole(opening.diameter, thickness) : webOfCut(thickness)

const reasonFor = (drilled: boolean, tin: number, web: Web): string =>
  tin < web.least
    ? `thin sheet needs at least ${long(web.least)}.`
    : drilled
      ? `a hand drill wants about one hole’s width, ${long(web.full)}.`
      : `a strip under ${long(web.full)} bends when it is cut.`

/** The most vanes that leave the full web, or 0. */
const fewerVanes = (vanes: VanesOpening, full: number): number => {
  for (let count = vanes.count - 1; count > 1; count -= 1)
    if (closestOnFace(faceOutlines({ ...vanes, count })) >= full) return count
  return 0
}

const vanesRemedy = (vanes: VanesOpening, full: number): string => {
  const count = fewerVanes(vanes, full)
  return count > 0 ? `Use ${count} vanes, or narrower ones.` : 'Use fewer or narrower vanes.'
}

const patternRemedy = (pattern: PatternOpening, tin: number, shelf: Shelf | null): string => {
  const bit = largestBit(shelf, (tin + pattern.diameter) / 2)
  return bit === null
    ? 'Use fewer holes.'
    : `Use fewer holes further apart, ${onRuleAtLeast(2 * pattern.diameter)} from middle to middle, or ${bit.text}.`
}

const among = (
  { opening, outlines }: FaceCut,
  { thickness }: FaceSheet,
  shelf: Shelf | null,
): Told | null => {
  const tin = closestOnFace(outlines)
  const web = webOf(opening, thickness)
  const severity = gradeWeb(tin, web)
  if (severity === null || opening.kind === 'bore') return null
  const drilled = opening.kind === 'pattern'
  return {
    code: 'spacing.pattern',
    severity,
    sentence:
      tin <= 0
        ? 'run into each other.'
        : `leave ${long(tin)} of tin between them; ${reasonFor(drilled, tin, web)}`,
    fix: drilled ? patternRemedy(opening, tin, shelf) : vanesRemedy(opening, web.full),
  }
}

const toBorder = ({ opening, outlines }: FaceCut, { border, outer, thickness }: FaceSheet): Told | null => {
  const tin = outer - Math.max(...outlines.map(outerReach))
  const { least, poor, full } = webOf(opening, thickness)
  const formed = (border === 'edge of the disc' ? TIN.holeToEdge : TIN.holeToFormed).value * thickness
  const web = { least: Math.max(least, formed), poor, full }
  // A bore that takes the whole end up to its seam is simply a can cut open.
  if (opening.kind === 'bore' && border !== 'edge of the disc' && tin >= 0) return null
  const severity = gradeWeb(tin, web)
  if (severity === null) return null
  return {
    code: 'spacing.disc-edge',
    severity,
    sentence:
      tin <= 0
        ? `reach over the ${border} by ${long(-tin)}.`
        : `leave ${long(tin)} of tin to the ${border}; ${reasonFor(opening.kind === 'pattern', tin, web)}`,
    fix:
      opening.kind === 'bore'
        ? `Make the bore ${onRuleAtMost(2 * (outer - full))} or less.`
        : `Keep everything within ${onRuleAtMost(outer - full)} of the middle: ${onRuleAtLeast(full - tin)} further in.`,
  }
}

/** Tin that is not there: the face has been cut out, or torn out as far as its ledge. */
const noTin = (
  part: string,
  { name, opening, outlines }: FaceCut,
  sheet: FaceSheet | null,
): Finding | null => {
  const inner = Math.min(...outlines.map(innerReach))
  if (sheet !== null && (sheet.inner === 0 || inner >= sheet.inner + TIN.holeToEdge.value * sheet.thickness))
    return null
  return stop(
    'face.no-tin',
    { part, opening: name },
    says(
      opening,
      name,
      part,
      sheet === null
        ? `cannot be made: the ${opening.face} of that can has been cut out.`
        : `would lie in the opening of the ${opening.face}: its ledge begins ${long(sheet.inner)} from the middle.`,
    ),
    'Use a can with that end whole, or put the openings in a disc.',
  )
}

/** Two openings of one face. */
const between = (
  part: string,
  one: FaceCut,
  other: FaceCut,
  { thickness }: FaceSheet,
): readonly Finding[] => {
  if (one.opening.face !== other.opening.face) return []
  const tin = closestBetweenFaces(one.outlines, other.outlines)
  const web = lesserWeb(webOf(one.opening, thickness), webOf(other.opening, thickness))
  const severity = gradeWeb(tin, web)
  if (severity === null) return []
  const drilled = one.opening.kind === 'pattern' && other.opening.kind === 'pattern'
  const left =
    tin <= 0
      ? 'run into each other.'
      : `leave ${long(tin)} of tin between them; ${reasonFor(drilled, tin, web)}`
  return [
    SAY[severity](
      'spacing.face-openings',
      { part, opening: other.name },
      `${called(one.name)} and ${called(other.name)} on ${called(part)} ${left}`,
      `Move them ${onRuleAtLeast(web.full - tin)} further apart, or make one of them smaller.`,
    ),
  ]
}

const onPart = ({ name: partName, part }: PlacedPart, shelf: Shelf | null): readonly Finding[] => {
  if (part.form === 'band') return []
  const cuts = [...part.openings].flatMap(([name, opening]): readonly FaceCut[] => {
    const outlines = faceOutlines(opening)
    return opening.kind === 'row' || outlines.length === 0 ? [] : [{ name, opening, outlines }]
  })
  return cuts.flatMap((cut, index) => {
    const sheet = sheetOf(part, cut.opening.face)
    const missing = noTin(partName, cut, sheet)
    if (sheet === null) return missing === null ? [] : [missing]
    const told = [among(cut, sheet, shelf), toBorder(cut, sheet)].filter((found) => found !== null)
    return [
      ...(missing === null ? [] : [missing]),
      ...told.map(({ code, severity, sentence, fix }) =>
        SAY[severity](
          code,
          { part: partName, opening: cut.name },
          says(cut.opening, cut.name, partName, sentence),
          fix,
        ),
      ),
      ...cuts.slice(index + 1).flatMap((other) => between(partName, cut, other, sheet)),
    ]
  })
}

/** Tin left on flat faces: within a pattern or a set of vanes, between them, to the edge, and to what is open already. */
export const faceSpacing: Check = (context) =>
  context.placed.flatMap((placed) => onPart(placed, context.shelf))
