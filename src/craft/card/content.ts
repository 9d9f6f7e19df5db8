import { bottomOpening, topOpening } from '#stove/can/ends.ts'
import { bodyAtEnd } from '#stove/can/taper.ts'
import type { BandPart, Part, Stove } from '#stove/model.ts'
import { bandStrip } from '../flat/band.ts'
import { canEnds, discFace, type FlatDisc } from '../flat/disc.ts'
import { FINGER_TAB } from '../flat/outline.ts'
import type { Strip } from '../flat/strip.ts'
import type { BurnSummary } from '../section/airState.ts'
import { mm } from '../section/half.ts'
import type { PixelBox } from '../section/sheet.ts'
import { drawBand } from './bandView.ts'
import type { Block } from './block.ts'
import type { Board } from './board.ts'
import { canBlock, canInList, roleWords } from './canWords.ts'
import { drawElevation } from './elevation.ts'
import { drawFace, type FaceView } from './faceView.ts'
import type { CardFigures } from './figures.ts'
import type { CardFormat } from './format.ts'
import { size } from './length.ts'
import { openingBlock } from './openingWords.ts'
import { drawStove } from './stoveView.ts'
import { bandWallOf, canWallOf, type Wall } from './wall.ts'

/** What one picture shows and what is said beside it, before it is known how many cards that takes. */
export interface Content {
  /** Of the stove file; null for the whole stove. */
  readonly part: string | null
  readonly title: string
  /** Over the title. */
  readonly eyebrow: { readonly text: string; readonly strong: boolean }
  /** Under the title; null for none. */
  readonly sub: string | null
  readonly blocks: readonly Block[]
  /** Draws the picture for a card that tells of these openings. */
  readonly draw: (board: Board, format: CardFormat, region: PixelBox, told: ReadonlySet<string>) => void
}

const stoveContent = (
  stove: Stove,
  burn: BurnSummary | null,
  figures: CardFigures | null,
): readonly Content[] => {
  const cans = [...stove.parts].flatMap(([name, part]) =>
    part.form === 'can' ? [canInList(name, part.can)] : [],
  )
  const base: Pick<Content, 'part' | 'title' | 'draw'> = {
    part: null,
    title: stove.name,
    draw: (board, format, region) => drawStove(board, format, region, stove, burn),
  }
  return [
    {
      ...base,
      eyebrow: { text: 'wood-gas stove out of cans', strong: false },
      sub: stove.potDiameter === null ? null : `for a pot of ${size(stove.potDiameter)}`,
      blocks: cans,
    },
    ...(figures === null
      ? []
      : [
          {
            ...base,
            eyebrow: { text: figures.title, strong: true },
            sub: figures.conditions,
            blocks: figureBlocks(figures),
          },
        ]),
  ]
}

const figureBlocks = ({ rows, warning }: CardFigures): readonly Block[] => [
  ...(warning === null ? [] : [{ name: 'how it burns', opening: null, key: null, lines: [warning] }]),
  ...rows.map(
    ({ label, value, band, note }): Block => ({
      name: label,
      opening: null,
      key: value,
      keyPlace: 'beside',
      lines: [...(band === null ? [] : [`likely ${band}`]), ...(note === null ? [] : [note])],
    }),
  ),
]

/** Radius of a can's end as it is seen from its own side, and of what is open in it already [mm]. */
const endView = (
  part: Extract<Part, { form: 'can' }>,
  face: 'bottom' | 'top',
): { radius: number; openRadius: number } => {
  const { can } = part
  const open = face === 'bottom' ? bottomOpening(can) : topOpening(can)
  const radius = mm(bodyAtEnd(can, face).value) / 2
  return { radius, openRadius: open === null ? 0 : Math.min(radius, mm(open.value) / 2) }
}

const faceContent = (
  name: string,
  eyebrow: Content['eyebrow'],
  sub: string | null,
  { openings }: FlatDisc,
  first: readonly Block[],
  view: Pick<FaceView, 'radius' | 'openRadius' | 'face'>,
): Content => ({
  part: name,
  title: name,
  eyebrow,
  sub,
  blocks: [...first, ...openings.map(({ name: opening, opening: shape }) => openingBlock(opening, shape))],
  draw: (board, format, region, told) => drawFace(board, format, region, { ...view, openings, told }),
})

const wallBlocks = (part: Part, wall: Wall): readonly Block[] =>
  wall.rows.map(({ name, row }) => openingBlock(name, part.openings.get(name) ?? row))

const faceOf = ({ openings }: FlatDisc): 'bottom' | 'top' =>
  openings[0]?.opening.face === 'top' ? 'top' : 'bottom'

const canContent = (
  name: string,
  eyebrow: Content['eyebrow'],
  part: Extract<Part, { form: 'can' }>,
): readonly Content[] => {
  const wall = canWallOf(part)
  const role = roleWords(name, part)
  return [
    {
      part: name,
      title: name,
      eyebrow,
      sub: role,
      blocks: [canBlock(part.can), ...wallBlocks(part, wall)],
      draw: (board, format, region, told) =>
        drawElevation(board, format, region, { wall, told, width: true }),
    },
    ...canEnds(name, part).map((end) => {
      const face = faceOf(end)
      return faceContent(name, eyebrow, `the ${face}`, end, [], { ...endView(part, face), face })
    }),
  ]
}

/** Radius of the can that a band goes round [mm]: the strip is π (D + t) long. */
const hostRadius = ({ length }: Strip, { thickness }: BandPart): number =>
  (length / Math.PI - mm(thickness)) / 2

const partContent = (stove: Stove, name: string, part: Part): readonly Content[] => {
  const role = roleWords(name, part)
  const eyebrow = { text: stove.name, strong: false }
  switch (part.form) {
    case 'can':
      return canContent(name, eyebrow, part)
    case 'disc': {
      const own: Block = {
        name: 'disc',
        opening: null,
        key: null,
        lines: [`tin ${size(part.thickness)} thick`],
      }
      const view = { radius: mm(part.diameter.value) / 2, openRadius: 0, face: 'face' } as const
      return [faceContent(name, eyebrow, role, discFace(name, part), [own], view)]
    }
    case 'band': {
      const strip = bandStrip(stove, name, part)
      const wall = bandWallOf(part, hostRadius(strip, part))
      const own: Block = {
        name: 'band',
        opening: null,
        key: null,
        lines: [
          `${size(strip.length / 1000)} once round${strip.development.isTapered ? ' its lower edge' : ''}`,
          `and ${size(strip.tab / 1000)} to overlap`,
          `tin ${size(part.thickness)} thick`,
          `${strip.fingerTabs.length} finger tabs, ${size(FINGER_TAB.width / 1000)} wide`,
          `and ${size(FINGER_TAB.height / 1000)} high`,
        ],
      }
      return [
        {
          part: name,
          title: name,
          eyebrow,
          sub: role,
          blocks: [own, ...wallBlocks(part, wall)],
          draw: (board, format, region, told) => drawBand(board, format, region, { strip, wall, told }),
        },
      ]
    }
  }
}

/**
 * What there is to say of a stove, the whole first, then part by part in the order of the stove file.
 * Throws `BadInput` for a band that goes round no can.
 */
export const contentsOf = (
  stove: Stove,
  burn: BurnSummary | null,
  figures: CardFigures | null,
): readonly Content[] => [
  ...stoveContent(stove, burn, figures),
  ...[...stove.parts].flatMap(([name, part]) => partContent(stove, name, part)),
]
