import type { Problem } from '#basis/problem.ts'
import { toMillimetres } from '#basis/units.ts'
import type { CanPart, Face, Measured, Part, Stove } from '#stove/model.ts'
import type { SolidKernel } from '../solid/kernel.ts'
import type { Mesh } from '../solid/mesh.ts'
import { centringMesh, centringShape } from './centring.ts'
import { collarMeshes } from './collar.ts'
import { collarShape, datumOf } from './collarShape.ts'
import type { DrillGuide, Guides } from './guide.ts'
import type { GuideOptions } from './options.ts'
import { guidedRows } from './wallHoles.ts'
import { centringNotes, collarNotes } from './wording.ts'

const measuredOf = ({ value, tolerance }: Measured): DrillGuide['measured'] => ({
  diameter: toMillimetres(value),
  tolerance: toMillimetres(tolerance),
})

/** Sides of the smallest upright box round a mesh as it may be turned on the bed, tried degree by degree [mm]. */
export const bedBox = ({ positions }: Mesh): readonly [number, number, number] => {
  let best: readonly [number, number] = [Infinity, Infinity]
  let [low, high] = [Infinity, -Infinity]
  for (let at = 2; at < positions.length; at += 3) {
    low = Math.min(low, positions[at]!)
    high = Math.max(high, positions[at]!)
  }
  for (let angle = 0; angle < 90; angle += 1) {
    const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
    let [left, right, near, far] = [Infinity, -Infinity, Infinity, -Infinity]
    for (let at = 0; at < positions.length; at += 3) {
      const [x, y] = [positions[at]!, positions[at + 1]!]
      const [u, v] = [cos * x + sin * y, cos * y - sin * x]
      left = Math.min(left, u)
      right = Math.max(right, u)
      near = Math.min(near, v)
      far = Math.max(far, v)
    }
    const sides = [right - left, far - near] as const
    if (Math.max(...sides) < Math.max(...best)) best = sides
  }
  return [Math.max(...best), Math.min(...best), high - low]
}

const largestBox = (pieces: readonly Mesh[]): readonly [number, number, number] => {
  const boxes = pieces.map(bedBox)
  return [0, 1, 2].map((side) => Math.max(...boxes.map((box) => box[side] as number))) as [
    number,
    number,
    number,
  ]
}

/** What one part gets. */
type PartGuides = { [key in keyof Guides]: Guides[key][number][] }

const none = (): PartGuides => ({ guides: [], without: [], refused: [] })

const tooHigh = (guide: DrillGuide, { bed }: GuideOptions): readonly Problem[] => {
  const room = toMillimetres(bed.height)
  if (guide.box[2] <= room) return []
  return [
    {
      code: 'guide.height',
      field: guide.name,
      value: `${guide.box[2].toFixed(0)} mm high`,
      allowed: `up to ${room} mm`,
      fix: 'Print it on a higher printer, or drill by the template.',
    },
  ]
}

const add = (found: PartGuides, guide: DrillGuide, options: GuideOptions): void => {
  const problems = tooHigh(guide, options)
  if (problems.length > 0) found.refused.push(...problems)
  else found.guides.push(guide)
}

const collarsOf = (kernel: SolidKernel, name: string, part: CanPart, options: GuideOptions): PartGuides => {
  const found = none()
  if (part.can.taper !== undefined) {
    for (const [opening, { kind }] of part.openings)
      if (kind === 'row')
        found.without.push({
          part: name,
          opening,
          why: 'The can tapers: a straight collar would not sit on it. Mark it from the template.',
        })
    return found
  }
  const { holes, without } = guidedRows(part, options)
  found.without.push(...without.map((one) => ({ part: name, ...one })))
  for (const datum of ['bottom', 'top'] as const) {
    const own = holes.filter((hole) => datumOf(part.can, hole) === datum)
    if (own.length === 0) continue
    const outcome = collarShape(name, part.can, datum, own, options)
    if (!outcome.ok) {
      found.refused.push(...outcome.problems)
      continue
    }
    const shape = outcome.value
    const title = `collar for the ${datum === 'bottom' ? 'lower' : 'upper'} holes of ${name}`
    const pieces = collarMeshes(kernel, title, shape, options)
    const lift = shape.lip?.thickness ?? 0
    add(
      found,
      {
        name: title,
        part: name,
        kind: 'collar',
        pieces,
        holes: shape.holes.map(({ opening, position, bearing, height, diameter, up, printedBearing }) => ({
          opening,
          position,
          bearing,
          at: height,
          diameter,
          printedBearing,
          printedAt: up + lift,
        })),
        fitDiameter: 2 * shape.inner,
        measured: measuredOf(part.can.bodyDiameter),
        box: largestBox(pieces),
        notes: collarNotes(name, shape, options),
      },
      options,
    )
  }
  return found
}

const discsOf = (kernel: SolidKernel, name: string, part: Part, options: GuideOptions): PartGuides => {
  const found = none()
  for (const face of ['bottom', 'top', 'face'] as readonly Face[]) {
    for (const [opening, what] of part.openings)
      if (what.kind === 'vanes' && what.face === face)
        found.without.push({
          part: name,
          opening,
          why: 'Vanes are cut and bent, not drilled: mark them from the template.',
        })
    const outcome = centringShape(name, part, face, options)
    if (!outcome.ok) {
      found.refused.push(...outcome.problems)
      continue
    }
    const shape = outcome.value
    if (shape === null) continue
    const title = `centring disc for ${face === 'face' ? name : `the ${face} of ${name}`}`
    const mesh = centringMesh(kernel, title, shape, options)
    add(
      found,
      {
        name: title,
        part: name,
        kind: 'centring disc',
        pieces: [mesh],
        holes: shape.holes,
        fitDiameter: 2 * shape.radius,
        measured: measuredOf(shape.measured),
        box: bedBox(mesh),
        notes: centringNotes(name, shape, options),
      },
      options,
    )
  }
  return found
}

/**
 * Drill guides to print for every part of a stove: collars for rows of holes in walls, centring discs for holes in faces
 * [mm]. A band is drilled flat by its template and gets none. Guides that cannot be made are refused in a sentence each.
 */
export const drillGuides = (kernel: SolidKernel, stove: Stove, options: GuideOptions): Guides => {
  const all = none()
  for (const [name, part] of stove.parts) {
    if (part.form === 'band') {
      for (const opening of part.openings.keys())
        all.without.push({
          part: name,
          opening,
          why: 'A band is drilled and cut flat: glue its template on.',
        })
      continue
    }
    const found = [
      ...(part.form === 'can' ? [collarsOf(kernel, name, part, options)] : []),
      discsOf(kernel, name, part, options),
    ]
    for (const { guides, without, refused } of found) {
      all.guides.push(...guides)
      all.without.push(...without)
      all.refused.push(...refused)
    }
  }
  return all
}
