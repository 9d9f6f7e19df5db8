import { long, onRuleAtLeast } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import { called } from '#stove/check/phrase.ts'
import type { Stove } from '#stove/model.ts'
import { boxRound } from '../box.ts'
import { bandStrip } from '../flat/band.ts'
import { outline } from '../flat/outline.ts'
import type { Strip } from '../flat/strip.ts'

/** A piece of flat tin to cut a disc or a band from. */
export interface TinToFind {
  readonly part: string
  readonly thickness: Metres
  /** What to look for, in both systems. */
  readonly size: string
  readonly source: string
}

/** Round a part, to clamp it by [m]. Workshop judgement, no source. */
const TO_CLAMP = 0.012

/** Of the flat tin of a band with its overlap and finger tabs [m]. */
const sidesOf = (strip: Strip): readonly [along: number, up: number] => {
  const { left, right, bottom, top } = boxRound(outline(strip))
  return [(right - left) / 1000, (top - bottom) / 1000]
}

/** Flat tin for every disc and band; throws `BadInput` for a band that goes round no can. */
export const tinToFind = (stove: Stove): readonly TinToFind[] =>
  [...stove.parts].flatMap(([name, part]): readonly TinToFind[] => {
    if (part.form === 'can') return []
    const wide = part.form === 'disc' ? part.diameter.value : bandStrip(stove, name, part)
    const [along, up] = typeof wide === 'number' ? [wide, wide] : sidesOf(wide)
    const size = `${onRuleAtLeast(along + 2 * TO_CLAMP)} by ${onRuleAtLeast(up + 2 * TO_CLAMP)}, ${long(part.thickness)} thick`
    return [
      {
        part: name,
        thickness: part.thickness,
        size,
        source: `For ${called(name)}: the wall of a can slit open and rolled flat, or a large lid; food can or paint can, never galvanised, no aluminium: it melts.`,
      },
    ]
  })
