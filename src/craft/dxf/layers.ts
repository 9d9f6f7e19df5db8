import type { Layer } from '../drawing.ts'
import { PENS } from '../pen.ts'
import { decimal, type Group, whole, word } from './groups.ts'

/** How a layer looks on a screen: a colour of the index that every reader knows, and a line of its own. */
interface LayerLook {
  readonly name: string
  readonly colour: number
  readonly line: 'CONTINUOUS' | 'FOLD_LINE' | 'MARK_LINE'
}

/** Colours by number: 1 red, 3 green, 5 blue, 6 magenta, 7 black or white, 8 grey. */
export const LAYER_LOOKS: Readonly<Record<Layer, LayerLook>> = {
  cut: { name: 'CUT', colour: 1, line: 'CONTINUOUS' },
  drill: { name: 'DRILL', colour: 5, line: 'CONTINUOUS' },
  fold: { name: 'FOLD', colour: 3, line: 'FOLD_LINE' },
  mark: { name: 'MARK', colour: 8, line: 'MARK_LINE' },
  paper: { name: 'PAPER', colour: 6, line: 'CONTINUOUS' },
  text: { name: 'TEXT', colour: 7, line: 'CONTINUOUS' },
  dimension: { name: 'DIMENSION', colour: 7, line: 'CONTINUOUS' },
}

const table = (name: string, entries: readonly (readonly Group[])[]): readonly Group[] => [
  word(0, 'TABLE'),
  word(2, name),
  whole(70, entries.length),
  ...entries.flat(),
  word(0, 'ENDTAB'),
]

/** A line's dashes; a gap is a negative length [mm]. */
const lineType = (name: string, looks: string, dash: readonly number[]): readonly Group[] => [
  word(0, 'LTYPE'),
  word(2, name),
  whole(70, 0),
  word(3, looks),
  whole(72, 65),
  whole(73, dash.length),
  decimal(
    40,
    dash.reduce((sum, length) => sum + length, 0),
  ),
  ...dash.map((length, index) => decimal(49, index % 2 === 0 ? length : -length)),
]

const layer = ({ name, colour, line }: LayerLook): readonly Group[] => [
  word(0, 'LAYER'),
  word(2, name),
  whole(70, 0),
  whole(62, colour),
  word(6, line),
]

/** Line types, layers and the one text style that a drawing uses. Layer 0 has to be there. */
export const tables = (layers: readonly Layer[]): readonly Group[] => [
  word(0, 'SECTION'),
  word(2, 'TABLES'),
  ...table('LTYPE', [
    lineType('CONTINUOUS', 'Solid line', []),
    lineType('FOLD_LINE', '____ _ ____ _', PENS.fold.dash),
    lineType('MARK_LINE', '__ __ __ __', PENS.mark.dash),
  ]),
  ...table('LAYER', [
    layer({ name: '0', colour: 7, line: 'CONTINUOUS' }),
    ...layers.map((name) => layer(LAYER_LOOKS[name])),
  ]),
  ...table('STYLE', [
    [
      word(0, 'STYLE'),
      word(2, 'STANDARD'),
      whole(70, 0),
      decimal(40, 0),
      decimal(41, 1),
      decimal(50, 0),
      whole(71, 0),
      decimal(42, 2.5),
      word(3, 'txt'),
      word(4, ''),
    ],
  ]),
  word(0, 'ENDSEC'),
]
