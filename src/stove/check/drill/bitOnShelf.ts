import { long } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import { nearestBits } from '#stove/bit/nearestBits.ts'
import type { Bit, Finding, Opening } from '#stove/model.ts'
import { holeArea } from '#stove/opening/area.ts'
import type { Check } from '../context.ts'
import { warn } from '../finding.ts'
import { called, percent, says } from '../phrase.ts'
import { DRILL } from '../rules.ts'

/** The diameter a bit must have to make an opening; null where snips, a chisel or a hole saw make it [m]. */
export const drilledDiameter = (opening: Opening): Metres | null => {
  switch (opening.kind) {
    case 'row':
      if (opening.hole.shape === 'round') return opening.hole.diameter
      return opening.hole.shape === 'window' && opening.hole.foot === 'round' ? opening.hole.width : null
    case 'pattern':
      return opening.diameter
    case 'bore':
    case 'vanes':
      return null
  }
}

/** The same opening made with another bit. */
export const drilledWith = (opening: Opening, diameter: Metres): Opening =>
  opening.kind === 'row' && opening.hole.shape === 'round'
    ? { ...opening, hole: { ...opening.hole, diameter } }
    : opening.kind === 'row' && opening.hole.shape === 'window'
      ? { ...opening, hole: { ...opening.hole, width: diameter } }
      : opening.kind === 'pattern'
        ? { ...opening, diameter }
        : opening

const choice = (bit: Bit, opening: Opening): string => {
  const change = holeArea(drilledWith(opening, bit.diameter)) / holeArea(opening) - 1
  return `${called(bit.name)} (area ${percent(Math.abs(change))} ${change < 0 ? 'smaller' : 'larger'})`
}

/** Whether the maker owns the bit each round hole asks for; says which owned ones come nearest. */
export const bitOnShelf: Check = ({ placed, shelf }) => {
  if (shelf === null) return []
  const findings: Finding[] = []
  for (const { name, part } of placed) {
    for (const [opening, what] of part.openings) {
      const diameter = drilledDiameter(what)
      if (diameter === null) continue
      const { below, above } = nearestBits(diameter, shelf.bits)
      const near = [below, above].filter((bit) => bit !== null)
      if (near.some((bit) => Math.abs(bit.diameter - diameter) <= DRILL.sameSize.value)) continue
      const choices = near.map((bit) => choice(bit, what))
      findings.push(
        warn(
          'bit.not-on-shelf',
          { part: name, opening },
          says(what, opening, name, `need a bit of ${long(diameter)}, which is not on the shelf.`),
          choices.length === 0
            ? 'Put your bits on the shelf, or borrow this one.'
            : `Nearest owned: ${choices.join(' or ')}.`,
        ),
      )
    }
  }
  return findings
}
