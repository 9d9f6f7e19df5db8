import { long } from '#basis/text/bothUnits.ts'
import { isWhole } from '#stove/can/ends.ts'
import type { Part } from '#stove/model.ts'
import { emptiedBy } from '../../shop/drilling.ts'
import { type Making, makingOf } from '../../shop/making.ts'
import { trimCheck } from '../checks.ts'
import { canPicture } from '../picture/can.ts'
import { boughtOf } from '../prepare.ts'
import type { BuildStep } from '../step.ts'
import { type Bench, isRow, openingsAt, step } from './bench.ts'
import { ORDER } from './pictures.ts'

const isGone = (kind: string): boolean => kind === 'open' || kind === 'cut'

/** The second end of a can, and what is trimmed off it. */
export const endSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] => {
  if (part.form !== 'can') return []
  const first = emptiedBy(part)
  const { can } = part
  const second = first === 'top' ? 'bottom' : 'top'
  const out = first !== null && isGone(can[second].kind) && !isWhole(can[second])
  const trims = (['bottom', 'top'] as const).filter((end) => can[end].kind === 'cut')
  if (!out && trims.length === 0) return []
  const title = out
    ? `Cut the ${second} out of ${name}${trims.length > 0 ? ' and cut it down' : ''}`
    : `Cut ${name} down`
  const drilled: readonly Making[] = ORDER.filter((making) => making !== 'vanes')
  return [
    step(`ends of ${name}`, title, name, {
      sentences: [
        ...(out
          ? [
              `Cut the ${second} out along the wall with the can opener, now that everything in the wall is made: until here it kept the can round.`,
            ]
          : []),
        ...trims.map(
          (end) =>
            `Cut the wall down at the ${end} until ${long(can.height.value)} are left: snip round 3 mm (1/8 in) outside the line first, then to the line, and file it level on emery laid on glass.`,
        ),
      ],
      makes: [],
      tools: [
        'can opener that cuts inside the rim',
        'straight and curved snips',
        'file, emery on a flat plate',
      ],
      checks: trims.length > 0 ? [trimCheck(name, part)] : [],
      picture: canPicture({
        title,
        part,
        rows: openingsAt(part, 'wall')
          .filter(isRow)
          .flatMap(([row, opening]) =>
            drilled.includes(makingOf(opening)) ? [[row, opening, 'there'] as const] : [],
          ),
        bought: boughtOf(
          part,
          bench.cans.find((one) => one.part === name),
        ),
        paper: null,
        cuts: [
          ...(out && can[second].kind === 'open'
            ? [second === 'top' ? can.height.value * 1000 - 2.5 : 2.5]
            : []),
          ...trims.map((end) => (end === 'top' ? can.height.value * 1000 : 0)),
        ],
        left: trims.length > 0 ? [long(can.height.value), 'are left'] : null,
        captions: [
          ...(out
            ? [
                `The ${second} is cut out, its ${can[second].kind === 'cut' ? 'seam goes too' : 'seam stays'}.`,
              ]
            : []),
          ...(trims.length > 0 ? ['Heavy: where it is cut. Dashed: what goes.'] : []),
        ],
      }),
    }),
  ]
}
