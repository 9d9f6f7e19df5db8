import { long, slack } from '#basis/text/bothUnits.ts'
import { fromMillimetres, type Metres } from '#basis/units.ts'
import { readSizeCode } from '#stove/can/sizeCode.ts'
import type { Can, CanEnd, CanPart, Shelf, Stove } from '#stove/model.ts'
import { emptiedBy } from './drilling.ts'

/** A can to find, with the part it becomes. */
export interface CanToFind {
  readonly part: string
  readonly role: CanPart['role']
  /** Size code, where the stove file has one. */
  readonly code: string | null
  readonly seamDiameter: Metres
  readonly bodyDiameter: Metres
  /** As it stands in the stove. */
  readonly height: Metres
  /** Least height of the can as bought. */
  readonly boughtHeight: Metres
  /** Where to put the rule, and what it must show. */
  readonly measure: readonly string[]
  /** What becomes of its ends. */
  readonly ends: readonly string[]
  /** The can of the shelf that serves; null where none does or no shelf was given. */
  readonly fromShelf: string | null
}

/** One size of can and how many of it. */
export interface CanSize {
  readonly count: number
  readonly parts: readonly string[]
  /** `502x608, 130.2 mm (5 1/8 in) over the seam, 165.1 mm (6 1/2 in) high`. */
  readonly size: string
}

/** A seam and what snips need to be steered beside it [m]. Workshop judgement, no source. */
const ABOVE_TRIM = 0.006

const isTrimmed = ({ bottom, top }: Can): boolean => bottom.kind === 'cut' || top.kind === 'cut'

const boughtHeightOf = (can: Can): Metres => {
  const code = can.code === null ? null : readSizeCode(can.code, 'code')
  if (code?.ok) return code.value.height
  return isTrimmed(can) ? ((can.height.value + ABOVE_TRIM) as Metres) : can.height.value
}

const within = (value: number, tolerance: number): string => `${long(value)} ± ${slack(tolerance)}`

const measureText = (can: Can): readonly string[] => {
  // One seam is enough to measure over, be it the one that is cut away later.
  const seam = `Over the seam, at its widest: ${within(can.seamDiameter.value, can.seamDiameter.tolerance)}.`
  const across = ({ value, tolerance }: Can['height']): string => `${within(value, tolerance)} across`
  const body =
    can.taper === undefined
      ? `Round the plain wall, away from seams and beads: ${across(can.bodyDiameter)}.`
      : `Its wall tapers: ${across(can.taper.bottom)} at the bottom edge as it stands, ${across(can.taper.top)} at the top edge.`
  const height = isTrimmed(can)
    ? `From seam to seam: at least ${long(boughtHeightOf(can))} high as bought; it is cut down to ${long(can.height.value)}.`
    : `From edge to edge: ${within(can.height.value, can.height.tolerance)} high.`
  return [seam, body, height]
}

const endText = (which: 'bottom' | 'top', end: CanEnd, can: Can): string => {
  switch (end.kind) {
    case 'plain':
      return `The ${which} stays on, seam and all.`
    case 'drawn':
      return `The ${which} is drawn in one piece with the wall and stays: look for a can without a seam there.`
    case 'pull-off':
      return `The ${which} has a ring-pull lid: pull it off; the ledge that is left is ${long(end.opening.value)} across inside.`
    case 'friction':
      return `The ${which} has a lever lid: take the lid off; the ring that stays is ${long(end.opening.value)} across inside.`
    case 'open':
      return `The ${which} is cut out along the wall; its seam stays. Not with a safety opener, which takes the seam apart.`
    case 'cut':
      return `The ${which} goes: the wall is cut down until ${long(can.height.value)} are left.`
  }
}

const emptyText = (part: CanPart): string => {
  const end = emptiedBy(part)
  const both = !isWholeEnd(part.can.bottom) && !isWholeEnd(part.can.top)
  if (end === null)
    return 'Both ends stay whole: choose a can that can be emptied through a hole that is drilled anyway.'
  return both
    ? `Empty it by the ${end} and leave the other end on until its wall is drilled: a closed end keeps the can round and stiff.`
    : `Empty it by the ${end}.`
}

const isWholeEnd = ({ kind }: CanEnd): boolean => kind === 'plain' || kind === 'drawn'

/** Sizes nobody measured are told only as well as this [m]. */
const SLACK = fromMillimetres(0.6)

/** Whether a can on the shelf is the one wanted, whatever is still to be cut off it. */
const serves = (wanted: Can, owned: Can): boolean => {
  const near = (a: Can['height'], b: Can['height']): boolean =>
    Math.abs(a.value - b.value) <= Math.max(a.tolerance + b.tolerance, SLACK)
  if (wanted.code !== null && owned.code !== null && wanted.code !== owned.code) return false
  if (!near(wanted.seamDiameter, owned.seamDiameter) || !near(wanted.bodyDiameter, owned.bodyDiameter))
    return false
  if (isTrimmed(wanted) ? owned.height.value < wanted.height.value : !near(wanted.height, owned.height))
    return false
  return (['bottom', 'top'] as const).every((which) => {
    const [want, have] = [wanted[which], owned[which]]
    if (want.kind === 'friction' || want.kind === 'pull-off') return want.kind === have.kind
    if (want.kind === 'drawn') return have.kind === 'drawn'
    return want.kind !== 'plain' || have.kind === 'plain'
  })
}

/** Every can of a stove, in the order of its file, each can of the shelf given away once. */
export const cansToFind = (stove: Stove, shelf: Shelf | null): readonly CanToFind[] => {
  const given = new Set<string>()
  return [...stove.parts].flatMap(([part, body]): readonly CanToFind[] => {
    if (body.form !== 'can') return []
    const { can } = body
    const turned = { ...can, bottom: can.top, top: can.bottom }
    const found = [...(shelf?.cans ?? [])].find(
      ([name, owned]) => !given.has(name) && (serves(can, owned) || serves(turned, owned)),
    )
    if (found !== undefined) given.add(found[0])
    return [
      {
        part,
        role: body.role,
        code: can.code,
        seamDiameter: can.seamDiameter.value,
        bodyDiameter: can.bodyDiameter.value,
        height: can.height.value,
        boughtHeight: boughtHeightOf(can),
        measure: measureText(can),
        ends: [endText('bottom', can.bottom, can), endText('top', can.top, can), emptyText(body)],
        fromShelf: found?.[0] ?? null,
      },
    ]
  })
}

const sizeText = ({ code, seamDiameter, boughtHeight }: CanToFind): string =>
  `${code === null ? '' : `${code}: `}${long(seamDiameter)} over the seam, ${long(boughtHeight)} high`

/** The same cans by size: what to ask the neighbours for. */
export const canSizes = (cans: readonly CanToFind[]): readonly CanSize[] => {
  const sizes = new Map<string, string[]>()
  for (const can of cans) sizes.set(sizeText(can), [...(sizes.get(sizeText(can)) ?? []), can.part])
  return [...sizes].map(([size, parts]) => ({ size, parts, count: parts.length }))
}
