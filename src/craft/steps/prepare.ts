import { long } from '#basis/text/bothUnits.ts'
import type { CanPart, Part, Stove } from '#stove/model.ts'
import { type CanToFind, cansToFind } from '../shop/cans.ts'
import { emptiedBy } from '../shop/drilling.ts'
import { BURN_OFF_STEPS } from '../shop/finishing.ts'
import { tinToFind } from '../shop/tin.ts'
import { BURN_OFF_CAUTIONS, CUTTING_CAUTIONS } from './cautions.ts'
import { lengthCheck } from './checks.ts'
import type { Bought } from './picture/can.ts'
import { type OverviewItem, overviewPicture } from './picture/overview.ts'
import type { BuildStep } from './step.ts'

/** How much of a can as bought is cut away, and at which end [mm]. */
export const boughtOf = (part: CanPart, found: CanToFind | undefined): Bought => {
  const { bottom, top, height } = part.can
  const more = Math.max(0, ((found?.boughtHeight ?? height.value) - height.value) * 1000)
  if (bottom.kind === 'cut' && top.kind === 'cut') return { above: more / 2, below: more / 2 }
  if (bottom.kind === 'cut') return { above: 0, below: more }
  return top.kind === 'cut' ? { above: more, below: 0 } : { above: 0, below: 0 }
}

const NOTHING: Bought = { above: 0, below: 0 }

/** A part for a picture of several. */
export const itemOf = (
  stove: Stove,
  name: string,
  part: Part,
  shown: OverviewItem['shown'],
  words: string,
  cans: readonly CanToFind[],
): OverviewItem => {
  const host = stove.assembly.find((one) => one.part === name)?.host ?? ''
  const round = stove.parts.get(host)
  return {
    part,
    roundDiameter: round?.form === 'can' ? round.can.bodyDiameter.value : 0.08,
    bought:
      part.form === 'can'
        ? boughtOf(
            part,
            cans.find((can) => can.part === name),
          )
        : NOTHING,
    shown,
    opened: shown === 'ends' && part.form === 'can' ? emptiedBy(part) : null,
    words,
  }
}

const cansIn = (stove: Stove): readonly (readonly [string, CanPart])[] =>
  [...stove.parts].flatMap(([name, part]) => (part.form === 'can' ? [[name, part] as const] : []))

const gather = (stove: Stove, cans: readonly CanToFind[]): BuildStep => ({
  key: 'gather',
  title: 'Gather the cans and measure them',
  sentences: [
    'Measure every can before you cut one: cans of one code differ, and a part that is 1 mm (3/64 in) too wide does not go in.',
    ...cans.map(
      ({ part, code, measure }) => `${part}${code === null ? '' : ` (${code})`}: ${measure.at(-1)}`,
    ),
    ...tinToFind(stove).map(({ part, size }) => `${part}: flat tin, ${size}.`),
    'Try the cans in each other now, where they are to hang, slide or sit.',
  ],
  parts: [...stove.parts.keys()],
  makes: [],
  places: null,
  tools: ['calliper', 'rule', 'magnet'],
  checks: cansIn(stove).flatMap(([name, { can }]) => [
    lengthCheck(name, null, 'over the seam', can.seamDiameter.value, can.seamDiameter.tolerance),
    ...(can.taper === undefined
      ? [lengthCheck(name, null, 'across the plain wall', can.bodyDiameter.value, can.bodyDiameter.tolerance)]
      : [
          lengthCheck(
            name,
            null,
            'across the wall at the bottom',
            can.taper.bottom.value,
            can.taper.bottom.tolerance,
          ),
          lengthCheck(name, null, 'across the wall at the top', can.taper.top.value, can.taper.top.tolerance),
        ]),
  ]),
  cautions: CUTTING_CAUTIONS,
  picture: overviewPicture(
    'Gather the cans and measure them',
    cansIn(stove).map(([name, part]) => {
      const found = cans.find((can) => can.part === name)
      const size = `Ø ${long(part.can.seamDiameter.value)}, ${long(found?.boughtHeight ?? part.can.height.value)} high`
      return itemOf(stove, name, part, 'outline', `${name}: ${size}`, cans)
    }),
  ),
})

const endWords = (name: string, part: CanPart): string => {
  const end = emptiedBy(part)
  if (end === null) return `${name}: both ends stay`
  const kind = part.can[end].kind
  const how = kind === 'friction' ? 'lever the lid off' : kind === 'pull-off' ? 'pull the lid off' : 'cut out'
  return `${name}: ${how} the ${end}`.replace('cut out the', 'cut out the').replace('off the', 'off at the')
}

const empty = (stove: Stove, cans: readonly CanToFind[]): BuildStep => ({
  key: 'open the cans',
  title: 'Empty the cans: open one end of each',
  sentences: cans.map(({ part, ends }) => `${part}: ${ends.at(-1)}`),
  parts: cans.map(({ part }) => part),
  makes: [],
  places: null,
  tools: ['can opener that cuts inside the rim', 'pliers'],
  checks: [],
  cautions: CUTTING_CAUTIONS,
  picture: overviewPicture(
    'Empty the cans: open one end of each',
    cansIn(stove).map(([name, part]) => itemOf(stove, name, part, 'ends', endWords(name, part), cans)),
  ),
})

const burnOff = (stove: Stove, cans: readonly CanToFind[]): BuildStep => ({
  key: 'burn off',
  title: 'Clean the cans and burn their coatings off',
  sentences: BURN_OFF_STEPS,
  parts: [...stove.parts.keys()],
  makes: [],
  places: null,
  tools: ['small wood fire outdoors', 'tongs', 'water or sand at hand', 'brush'],
  checks: [],
  cautions: BURN_OFF_CAUTIONS,
  picture: overviewPicture(
    'Clean the cans and burn their coatings off',
    [...stove.parts].map(([name, part]) =>
      itemOf(
        stove,
        name,
        part,
        'outline',
        `${name}: ${part.form === 'can' ? 'inside and out, its open end up' : 'the tin it is cut from'}`,
        cans,
      ),
    ),
  ),
})

/** What comes before the first mark. */
export const preparingSteps = (stove: Stove): readonly BuildStep[] => {
  const cans = cansToFind(stove, null)
  return [gather(stove, cans), empty(stove, cans), burnOff(stove, cans)]
}
