import type { Opening, Part, Stove } from '#stove/model.ts'
import { MAKING_CAUTIONS } from '../caution.ts'
import { bandStrip } from '../flat/band.ts'
import { FINGER_TAB } from '../flat/outline.ts'
import { bearingText } from '../flat/wording.ts'
import { canName, canWidths, endWords, roleWords } from './canWords.ts'
import type { CardFigures } from './figures.ts'
import { setOut, size } from './length.ts'
import {
  bitWords,
  firstPlace,
  holeManner,
  leftOutWords,
  NOUNS,
  patternLines,
  rowKey,
} from './openingWords.ts'
import { spoken } from './spoken.ts'

const EVERY_SIZE =
  'Every size is in millimetres, then in inches. Heights are from the bottom edge of the part, as it stands in the stove, to the middle of the opening. Places are counted clockwise, seen from above, from the front mark of the part.'

const joined = (items: readonly (string | null)[], by: string): string =>
  items.filter((item) => item !== null && item !== '').join(by)

/** One line: what is cut, how large, where, which places stay whole. */
const openingLine = (name: string, opening: Opening): string => {
  switch (opening.kind) {
    case 'row': {
      const { hole, count } = opening
      const middle = `${setOut(opening.height)} from the bottom edge to the ${NOUNS[hole.shape]} centre`
      const places =
        count === 1
          ? firstPlace(opening.bearing)
          : joined([`${count} places, the first ${firstPlace(opening.bearing)}`, leftOutWords(opening)], ', ')
      const bit = hole.shape === 'slit' ? null : bitWords(hole.bit)
      return `${name}: ${joined([joined([rowKey(opening), holeManner(hole), bit], ', ').concat(`, ${middle}`), places], '; ')}`
    }
    case 'pattern': {
      const many = `${opening.holes.length} ${opening.holes.length === 1 ? 'hole' : 'holes'}`
      return `${name}: ${joined([many, size(opening.diameter), bitWords(opening.bit)], ', ')}; ${patternLines(opening).join('; ')}`
    }
    case 'bore':
      return `${name}: one hole in the middle, ${size(opening.diameter)} across`
    case 'vanes': {
      const { count, width, innerRadius, outerRadius, angle, bend, hand, bearing } = opening
      return (
        `${name}: ${count} ${count === 1 ? 'vane' : 'vanes'}, ${size(width)} wide, from radius ${setOut(innerRadius)} ` +
        `to radius ${setOut(outerRadius)}; first hinge ${firstPlace(bearing)}; bent ${bend} ${bearingText(angle)}, ` +
        `so that the gas turns ${hand} seen from above`
      )
    }
  }
}

const ownLines = (stove: Stove, name: string, part: Part): readonly string[] => {
  switch (part.form) {
    case 'can': {
      const { can } = part
      return [
        ...canWidths(can).map(([what, value]) => `${what}: ${size(value)} across`),
        `height: ${size(can.height.value)}`,
        `ends: ${endWords('bottom', can.bottom)}; ${endWords('top', can.top)}`,
      ]
    }
    case 'disc':
      return [`disc: ${size(part.diameter.value)} across`, `tin: ${size(part.thickness)} thick`]
    case 'band': {
      const strip = bandStrip(stove, name, part)
      return [
        `height: ${size(part.height)}`,
        `length: ${size(strip.length / 1000)} once round${strip.development.isTapered ? ' the lower edge' : ''}, and ${size(strip.tab / 1000)} more to overlap`,
        `finger tabs: ${strip.fingerTabs.length} on the upper edge, ${size(FINGER_TAB.width / 1000)} wide, ${size(FINGER_TAB.height / 1000)} high`,
        `tin: ${size(part.thickness)} thick`,
      ]
    }
  }
}

const title = (name: string, part: Part): string =>
  joined([name, roleWords(name, part), part.form === 'can' ? canName(part.can) : null], ', ')

const partLines = (stove: Stove, name: string, part: Part): readonly string[] => [
  ...ownLines(stove, name, part),
  ...[...part.openings].map(([opening, shape]) => openingLine(opening, shape)),
]

const figureLines = ({ title: head, conditions, warning, rows }: CardFigures): readonly string[] => [
  `${head}: ${conditions}`,
  ...(warning === null ? [] : [`  ${warning}`]),
  ...rows.map(
    ({ label, value, band, note }) =>
      `  ${joined([`${label}: ${value}`, band === null ? null : `likely ${band}`, note], '; ')}`,
  ),
]

export interface ListInput {
  readonly stove: Stove
  readonly figures: CardFigures | null
  /** Day the list bears, `2031-05-17`. */
  readonly date: string
}

/** Everything of a stove that is drilled, cut or bought, one line a thing, to be read aloud in one way only. */
export const readAloud = ({ stove, figures, date }: ListInput): string => {
  const blocks = [
    [`${stove.name}: sizes to read aloud`, ...(stove.about === '' ? [] : [stove.about]), EVERY_SIZE],
    ...[...stove.parts].map(([name, part]) => [
      title(name, part),
      ...partLines(stove, name, part).map((line) => `  ${line}`),
    ]),
    ...(stove.potDiameter === null ? [] : [[`Pot: ${size(stove.potDiameter)} across`]]),
    ...(figures === null ? [] : [figureLines(figures)]),
    ['Before you cut or burn', ...MAKING_CAUTIONS.map((line) => `  ${line}`)],
    [`Tinwright, ${date}`],
  ]
  return `${spoken(blocks.map((lines) => lines.join('\n')).join('\n\n'))}\n`
}
