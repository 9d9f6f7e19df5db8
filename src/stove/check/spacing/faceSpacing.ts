import { bodyInside } from '#stove/can/ends.ts'
import type {
  CanPart,
  DiscPart,
  Face,
  Finding,
  Opening,
  PatternOpening,
  Shelf,
  VanesOpening,
} from '#stove/model.ts'
import type { Check } from '../context.ts'
import { SAY, stop } from '../finding.ts'
import { largestBit } from '../handBits.ts'
import { called, long, openingsOf } from '../phrase.ts'
import { TIN } from '../rules.ts'
import {
  closestBetweenFaces,
  closestOnFace,
  type FaceOutline,
  faceOutlines,
  innerReach,
  outerReach,
} from './faceOutline.ts'
import { gradeWeb, lesserWeb, type Web, webOfCut, webOfHole } from './web.ts'

/** The flat tin of one face, from the rim of what is already open to its outer edge [m]. */
interface Sheet {
  readonly inner: number
  readonly outer: number
  readonly thickness: number
  /** What the outer edge is. */
  readonly border: 'edge of the disc' | 'seam' | 'corner of the drawn bottom'
}

const sheetOf = (part: CanPart | DiscPart, face: Face): Sheet | null => {
  if (part.form === 'disc')
    return { inner: 0, outer: part.diameter.value / 2, thickness: part.thickness, border: 'edge of the disc' }
  const { can } = part
  if (face === 'face') return null
  const end = can[face]
  const inside = bodyInside(can).value / 2
  switch (end.kind) {
    case 'plain':
      // The end's own upright wall stands inside the body's.
      return { inner: 0, outer: inside - can.endWall, thickness: can.endWall, border: 'seam' }
    case 'drawn':
      return { inner: 0, outer: inside, thickness: can.endWall, border: 'corner of the drawn bottom' }
    case 'pull-off':
    case 'friction':
      return { inner: end.opening.value / 2, outer: inside, thickness: can.endWall, border: 'seam' }
    case 'open':
    case 'cut':
      return null
  }
}

const webOf = (opening: Opening, thickness: number): Web =>
  opening.kind === 'pattern' ? webOfHole(opening.diameter, thickness) : webOfCut(thickness)

const reasonFor = (opening: Opening, tin: number, web: Web): string =>
  tin < web.least
    ? `thin sheet needs at least ${long(web.least)}.`
    : opening.kind === 'pattern'
      ? `a hand drill wants about one hole’s width (${long(web.full)}).`
      : `a strip under ${long(web.full)} bends when it is cut.`

/** The most vanes that leave the full web, or 0. */
const fewerVanes = (vanes: VanesOpening, full: number): number => {
  for (let count = vanes.count - 1; count > 1; count -= 1)
    if (closestOnFace(faceOutlines({ ...vanes, count })) >= full) return count
  return 0
}

const patternRemedy = (pattern: PatternOpening, tin: number, shelf: Shelf | null): string => {
  const bit = largestBit(shelf, (tin + pattern.diameter) / 2)
  return bit === null
    ? 'Use fewer holes.'
    : `Use fewer holes further apart, ${long(2 * pattern.diameter)} from middle to middle, or a ${bit.text}.`
}

const within = (opening: Opening, outlines: readonly FaceOutline[], sheet: Sheet, shelf: Shelf | null) => {
  const tin = closestOnFace(outlines)
  const web = webOf(opening, sheet.thickness)
  const severity = gradeWeb(tin, web)
  if (severity === null) return null
  const vanes = opening.kind === 'vanes' ? fewerVanes(opening, web.full) : 0
  return {
    severity,
    told:
      tin <= 0
        ? 'run into each other.'
        : `leave ${long(tin)} of tin between them; ${reasonFor(opening, tin, web)}`,
    fix:
      opening.kind === 'pattern'
        ? patternRemedy(opening, tin, shelf)
        : vanes > 0
          ? `Use ${vanes} vanes, or narrower ones.`
          : 'Use fewer or narrower vanes.',
  }
}

const toBorder = (opening: Opening, outlines: readonly FaceOutline[], sheet: Sheet) => {
  const tin = sheet.outer - Math.max(...outlines.map(outerReach))
  const { least, poor, full } = webOf(opening, sheet.thickness)
  const formed =
    (sheet.border === 'edge of the disc' ? TIN.holeToEdge : TIN.holeToFormed).value * sheet.thickness
  const web = { least: Math.max(least, formed), poor, full }
  // A bore that takes the whole end up to its seam is simply a can cut open.
  if (opening.kind === 'bore' && sheet.border !== 'edge of the disc' && tin >= 0) return null
  const severity = gradeWeb(tin, web)
  if (severity === null) return null
  const move = full - tin
  return {
    severity,
    told:
      tin <= 0
        ? `reach over the ${sheet.border} by ${long(-tin)}.`
        : `leave ${long(tin)} of tin to the ${sheet.border}; ${reasonFor(opening, tin, web)}`,
    fix:
      opening.kind === 'bore'
        ? `Make the bore ${long(2 * (sheet.outer - full))} or less.`
        : `Keep everything at least ${long(move)} further in, within ${long(sheet.outer - full)} of the middle.`,
  }
}

/** Tin left on flat faces: within a pattern or a set of vanes, between them, to the edge, and to what is open already. */
export const faceSpacing: Check = (context) => {
  const findings: Finding[] = []
  for (const { name, part } of context.placed) {
    if (part.form === 'band') continue
    const cuts = [...part.openings].flatMap(([opening, what]) =>
      what.kind === 'row' ? [] : [{ opening, what, outlines: faceOutlines(what) }],
    )
    for (const [index, { opening, what, outlines }] of cuts.entries()) {
      if (outlines.length === 0) continue
      const where = { part: name, opening }
      const the = `The ${openingsOf(what)} in ${called(opening)} on ${called(name)}`
      const sheet = sheetOf(part, what.face)
      if (sheet === null) {
        findings.push(
          stop(
            'face.no-tin',
            where,
            `${the} cannot be made: the ${what.face} of that can has been cut out.`,
            'Leave that end whole, or put the openings in a disc.',
          ),
        )
        continue
      }
      const inner = Math.min(...outlines.map(innerReach))
      if (sheet.inner > 0 && inner < sheet.inner + TIN.holeToEdge.value * sheet.thickness)
        findings.push(
          stop(
            'face.no-tin',
            where,
            `${the} would lie in the opening of the ${what.face}: its ledge begins ${long(sheet.inner)} from the middle.`,
            'Use a can with that end whole, or put the openings in a disc.',
          ),
        )
      for (const [code, found] of [
        ['spacing.pattern', within(what, outlines, sheet, context.shelf)],
        ['spacing.disc-edge', toBorder(what, outlines, sheet)],
      ] as const)
        if (found !== null) findings.push(SAY[found.severity](code, where, `${the} ${found.told}`, found.fix))
      for (const other of cuts.slice(index + 1)) {
        if (other.what.face !== what.face) continue
        const tin = closestBetweenFaces(outlines, other.outlines)
        const web = lesserWeb(webOf(what, sheet.thickness), webOf(other.what, sheet.thickness))
        const severity = gradeWeb(tin, web)
        if (severity === null) continue
        const left =
          tin <= 0
            ? 'run into each other.'
            : `leave ${long(tin)} of tin between them; they want ${long(web.full)}.`
        findings.push(
          SAY[severity](
            'spacing.face-openings',
            { part: name, opening: other.opening },
            `${called(opening)} and ${called(other.opening)} on ${called(name)} ${left}`,
            `Move them ${long(web.full - tin)} further apart, or make one of them smaller.`,
          ),
        )
      }
    }
  }
  return findings
}
