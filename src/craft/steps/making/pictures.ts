import { bodyInside } from '#stove/can/ends.ts'
import type { BandPart, CanPart, DiscPart, Opening, Part } from '#stove/model.ts'
import type { Drawing } from '../../drawing.ts'
import { bandStrip } from '../../flat/band.ts'
import { canWrap } from '../../flat/wrap.ts'
import { type Making, makingOf } from '../../shop/making.ts'
import { canPicture, type RowLook } from '../picture/can.ts'
import { discPicture, type FaceLook } from '../picture/disc.ts'
import { stripPicture } from '../picture/strip.ts'
import { boughtOf } from '../prepare.ts'
import { type Bench, isFace, isRow, openingsAt, type Where } from './bench.ts'

/** Order in which openings of one part come about; what was made earlier is there when the next is made. */
export const ORDER: readonly Making[] = ['drill', 'bore', 'foot and snips', 'snips', 'vanes']

const lookAt = (opening: Opening, now: readonly Making[] | 'marking'): (RowLook & FaceLook) | null => {
  if (now === 'marking') return 'punched'
  const making = makingOf(opening)
  if (now.includes(making)) return 'made'
  const first = Math.min(...now.map((one) => ORDER.indexOf(one)))
  return ORDER.indexOf(making) < first ? 'there' : null
}

export const wallPicture = (
  { cans }: Bench,
  title: string,
  name: string,
  part: CanPart,
  now: readonly Making[] | 'marking',
  captions: readonly string[],
): Drawing => {
  const strip = canWrap(name, part)
  return canPicture({
    title,
    part,
    rows: openingsAt(part, 'wall')
      .filter(isRow)
      .flatMap(([row, opening]) => {
        const look = lookAt(opening, now)
        return look === null ? [] : [[row, opening, look] as const]
      }),
    bought: boughtOf(
      part,
      cans.find((can) => can.part === name),
    ),
    cuts: [],
    left: null,
    paper: now === 'marking' && strip !== null ? { low: strip.low * 1000, high: strip.high * 1000 } : null,
    captions,
  })
}

export const facePicture = (
  title: string,
  part: CanPart | DiscPart,
  where: Where,
  now: readonly Making[] | 'marking',
  captions: readonly string[],
): Drawing => {
  const end = part.form === 'can' && where !== 'wall' && where !== 'face' ? part.can[where] : null
  return discPicture({
    title,
    diameter: part.form === 'can' ? bodyInside(part.can).value : part.diameter.value,
    openDiameter: end?.kind === 'pull-off' || end?.kind === 'friction' ? end.opening.value : 0,
    seen: where === 'bottom' ? 'from below' : 'from above',
    openings: openingsAt(part, where)
      .filter(isFace)
      .flatMap(([name, opening]) => {
        const look = lookAt(opening, now)
        return look === null ? [] : [[name, opening, look] as const]
      }),
    outline: part.form === 'disc' && now !== 'marking' && now.includes('bore') ? 'cut' : 'paper',
    captions,
  })
}

export const bandPicture = (
  { stove }: Bench,
  title: string,
  name: string,
  part: BandPart,
  now: readonly Making[] | 'outline' | 'marking',
  captions: readonly string[],
): Drawing => {
  const rows = openingsAt(part, 'wall')
  const names = (look: string): ReadonlySet<string> =>
    new Set(
      rows.flatMap(([row, opening]) =>
        (now === 'outline' ? 'there' : now === 'marking' ? 'made' : lookAt(opening, now)) === look
          ? [row]
          : [],
      ),
    )
  return stripPicture({
    title,
    strip: bandStrip(stove, name, part),
    there: names('there'),
    made: names('made'),
    look: now === 'marking' ? 'marked' : 'cut',
    outline: now === 'outline' ? 'cut' : 'paper',
    captions,
  })
}

export const picture = (
  bench: Bench,
  title: string,
  name: string,
  where: Where,
  now: readonly Making[],
  captions: readonly string[],
): Drawing => {
  const part = bench.stove.parts.get(name) as Part
  if (part.form === 'band') return bandPicture(bench, title, name, part, now, captions)
  return where === 'wall' && part.form === 'can'
    ? wallPicture(bench, title, name, part, now, captions)
    : facePicture(title, part as CanPart | DiscPart, where, now, captions)
}
