import { LAYERS } from '../drawing.ts'
import type { LooseSheet } from '../sheet/looseSheet.ts'
import { entity } from './entities.ts'
import { decimal, type Group, point, whole, word, written } from './groups.ts'
import { tables } from './layers.ts'
import { plainComment } from './plainText.ts'

/** A variable of the header, by its name. */
const variable = (name: string, ...values: readonly Group[]): readonly Group[] => [word(9, name), ...values]

/**
 * The header of an R12 drawing in millimetres. `$INSUNITS` came later than R12; readers of R12 pass over
 * what they do not know, the others learn the unit from it.
 */
const header = ({ width, height }: LooseSheet): readonly Group[] => {
  const [low, high] = [
    { x: 0, y: 0 },
    { x: width, y: height },
  ]
  return [
    word(0, 'SECTION'),
    word(2, 'HEADER'),
    ...variable('$ACADVER', word(1, 'AC1009')),
    ...variable('$INSBASE', ...point(10, low)),
    ...variable('$EXTMIN', ...point(10, low)),
    ...variable('$EXTMAX', ...point(10, high)),
    ...variable('$LIMMIN', decimal(10, low.x), decimal(20, low.y)),
    ...variable('$LIMMAX', decimal(10, high.x), decimal(20, high.y)),
    ...variable('$LUNITS', whole(70, 2)),
    ...variable('$LUPREC', whole(70, 4)),
    ...variable('$MEASUREMENT', whole(70, 1)),
    ...variable('$INSUNITS', whole(70, 4)),
    ...variable('$LTSCALE', decimal(40, 1)),
    ...variable('$TEXTSTYLE', word(7, 'STANDARD')),
    ...variable('$CLAYER', word(8, '0')),
    word(0, 'ENDSEC'),
  ]
}

/**
 * Writes a sheet as a DXF of Release 12 (AC1009) at true size [mm], a layer for every layer of the drawing,
 * arcs as arcs, all ASCII. The words stand in it twice: drawn on the text layer, and as comments at the
 * top for who opens it as text. The same sheet gives the same bytes.
 */
export const dxfDrawing = (sheet: LooseSheet): string =>
  written([
    ...sheet.words.map((paragraph) => word(999, plainComment(paragraph))),
    ...header(sheet),
    ...tables(LAYERS),
    word(0, 'SECTION'),
    word(2, 'BLOCKS'),
    word(0, 'ENDSEC'),
    word(0, 'SECTION'),
    word(2, 'ENTITIES'),
    ...LAYERS.flatMap((layer) => sheet.shapes.filter((shape) => shape.layer === layer)).flatMap(entity),
    word(0, 'ENDSEC'),
    word(0, 'EOF'),
  ])
