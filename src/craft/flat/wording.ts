import { long } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import type { RowOpening, WallHole } from '#stove/model.ts'
import { isFootDrilled } from './hole.ts'

const UNBROKEN_SPACE = '\u00a0'

/** A length in both units, which no line break may part. */
export const both = (value: number): string => long(value).replaceAll(' ', UNBROKEN_SPACE)

/** A bearing without needless digits. */
export const bearingText = (bearing: number): string => `${Number(bearing.toFixed(1))}°`

const bitText = (bit: string | null, diameter: Metres): string =>
  bit === null ? both(diameter) : `${both(diameter)}, bit ${bit.replaceAll(' ', UNBROKEN_SPACE)}`

/** What one opening of a row is, in a few words: `Ø 16.0 mm (5/8 in)`. */
const holeText = (hole: WallHole): string => {
  switch (hole.shape) {
    case 'round':
      return `Ø ${both(hole.diameter)}`
    case 'window':
      return `${both(hole.width)} wide, ${both(hole.height)} high`
    case 'slit':
      return `${both(hole.length)} long, ${both(hole.width)} wide`
  }
}

const cutText = (hole: WallHole): string => {
  switch (hole.shape) {
    case 'round':
      return `Ø ${bitText(hole.bit, hole.diameter)}`
    case 'window':
      if (hole.foot === 'square') return holeText(hole)
      return isFootDrilled(hole)
        ? `${holeText(hole)}: drill the round foot Ø ${bitText(hole.bit, hole.width)}, then cut up from its sides`
        : `${holeText(hole)}, the foot a half circle`
    case 'slit':
      return `${holeText(hole)}, ${hole.along === 'axis' ? 'upright' : 'round the can'}`
  }
}

const countText = (count: number, hole: WallHole): string => {
  const noun = hole.shape === 'round' ? 'hole' : hole.shape
  return `${hole.shape === 'round' ? 'drill' : 'cut'} ${count} ${noun}${count === 1 ? '' : 's'}`
}

/** The row's label on the tin: what, how many, how high. */
export const rowLabel = (name: string, row: RowOpening): readonly string[] => [
  `${name}: ${row.count - row.leftOut.length} × ${holeText(row.hole)}`,
  `centres ${both(row.height)} up from the bottom edge`,
]

const leftOutText = (row: RowOpening): string => {
  if (row.leftOut.length === 0) return ''
  const places = row.leftOut.map(
    (position) => `${position} (${bearingText((row.bearing + ((position - 1) * 360) / row.count) % 360)})`,
  )
  return places.length === 1
    ? ` Place ${places.join()}, crossed out, stays whole.`
    : ` Places ${places.join(', ')}, crossed out, stay whole.`
}

/**
 * All there is to say about a row, for the notes over the strip. `pitch` is measured along the paper;
 * `upPaper` is how far its middle lies up the paper, where that is not its height above the bottom edge.
 */
export const rowNote = (
  name: string,
  row: RowOpening,
  { pitch, upPaper }: { readonly pitch: Metres; readonly upPaper: Metres | null },
): string => {
  const fromPaper = upPaper === null ? '' : `, ${both(upPaper)} up the paper from its lower edge`
  const spacing =
    row.count === 1
      ? `At ${bearingText(row.bearing)}.`
      : `${row.count} places ${both(pitch)} apart along the paper, the first at ${bearingText(row.bearing)}.`
  return (
    `${name}: ${countText(row.count - row.leftOut.length, row.hole)} ${cutText(row.hole)}. ` +
    `Centres ${both(row.height)} above the bottom edge${fromPaper}. ${spacing}${leftOutText(row)}`
  )
}
