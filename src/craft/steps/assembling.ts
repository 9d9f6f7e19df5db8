import { orThrow } from '#basis/problem.ts'
import { long } from '#basis/text/bothUnits.ts'
import { type PlacedPart, placeParts } from '#stove/assembly/place.ts'
import { builtSheet } from '#stove/built/sheet.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Placement, Stove } from '#stove/model.ts'
import { fastenersOf } from '../shop/fasteners.ts'
import { BURNING_CAUTIONS, CUTTING_CAUTIONS } from './cautions.ts'
import { gapCheck, handCheck, heightCheck, lengthCheck } from './checks.ts'
import { sectionPicture } from './picture/section.ts'
import { reachingScrews } from './screws.ts'
import type { BuildStep, StepCheck } from './step.ts'

const marks = ({ turned, host }: Placement): string =>
  turned === 0
    ? host === null
      ? 'its front mark towards you'
      : 'front mark over front mark'
    : `its front mark ${Number(((turned % 360) + 360) % 360).toFixed(0)}° clockwise, seen from above, from the stove’s front`

const titleOf = ({ part, place, host }: Placement): string => {
  switch (place) {
    case 'on ground':
      return `Stand ${part} on the bench`
    case 'stands in':
      return `Stand ${part} in ${host}`
    case 'hangs in':
      return `Hang ${part} in ${host}`
    case 'sits on':
      return `Set ${part} on ${host}`
    case 'slips over':
      return `Close ${part} round ${host}`
    case 'slips into':
      return `Slide ${part} into ${host}`
  }
}

const howTo = (placement: Placement): readonly string[] => {
  const { part, place, host, raised } = placement
  switch (place) {
    case 'on ground':
      return [
        `Stand it on a flat, level board, ${marks(placement)}${raised > 0 ? `, on three feet ${long(raised)} high` : ''}.`,
      ]
    case 'stands in':
      return [
        `Lower it until it stands on the floor of ${host}${raised > 0 ? `, on three spacers ${long(raised)} high` : ''}, ${marks(placement)}, in the middle.`,
      ]
    case 'hangs in':
      return [
        `Lower it through the mouth of ${host}, ${marks(placement)}: it hangs by its own rim and touches nothing else.`,
      ]
    case 'sits on':
      return [`Set it down on the rim of ${host}, in the middle, ${marks(placement)}.`]
    case 'slips over':
      return [
        `Lay it round ${host} with its lower edge ${long(raised)} above the bottom edge of ${host}, draw the overlap up until it still turns by hand, and fasten it there.`,
      ]
    case 'slips into':
      return [
        raised > 0
          ? `Slide it in until its lower edge lies ${long(raised)} above the bottom edge of ${host}, and fasten it or let it rest there, ${marks(placement)}.`
          : `Slide it in down to the bottom edge of ${host}, ${marks(placement)}.`,
        `Try ${part} before the screws are tight: a disc that jams now bulges when it is hot.`,
      ]
  }
}

const handOf = ({ part, place, host }: Placement): StepCheck => {
  const said = {
    'on ground': 'stands without rocking.',
    'stands in': `drops in, stands level and does not touch the wall of ${host}.`,
    'hangs in': `drops in and hangs; it does not fall through, and turns by hand.`,
    'sits on': `lies on the rim of ${host} all round and does not rock.`,
    'slips over': `turns by hand round ${host} and stays where it is left.`,
    'slips into': `slides in without force and lies level.`,
  }[place]
  return handCheck(part, null, said)
}

const PLACED = 0.5e-4

const placeStep = (stove: Stove, placed: readonly PlacedPart[], index: number): BuildStep => {
  const placement = stove.assembly[index] as Placement
  const at = placed[index] as PlacedPart
  const { part, host, raised, place } = placement
  const title = titleOf(placement)
  const gap = builtSheet(stove).find(({ kind, part: of }) => kind === 'wall gap' && of === part)
  const round = gap?.label.replace(/^gap to /, '') ?? ''
  const inPlace = stove.assembly.slice(0, index + 1).map((one) => one.part)
  const gapSeen = gap !== undefined && inPlace.includes(round)
  const used = fastenersOf(stove).filter(({ goesWith }) => goesWith === part)
  const hostAt = placed.find(({ name }) => name === host)
  const offHost = raised > PLACED && (place === 'slips over' || place === 'slips into')
  const overGround = raised > PLACED && place === 'on ground'
  const fixing = [
    ...used.map(({ count, what, where }) => `${count} × ${what}: ${where}.`),
    ...(used.length > 0 && place === 'slips into' ? reachingScrews(stove, placement) : []),
  ]
  return {
    key: `place ${part}`,
    title,
    // A grate lies on its screws: they are there first. A band is closed with its own.
    sentences: place === 'slips into' ? [...fixing, ...howTo(placement)] : [...howTo(placement), ...fixing],
    parts: host === null ? [part] : [part, host],
    makes: [],
    places: part,
    tools:
      used.length > 0
        ? ['screwdriver', 'small spanner', 'rule']
        : ['rule', 'spirit level or a glass of water'],
    checks: [
      handOf(placement),
      ...(offHost ? [heightCheck(part, `from the bottom edge of ${host} up to its lower edge`, raised)] : []),
      ...(overGround ? [heightCheck(part, 'from the ground up to its lower edge', raised)] : []),
      ...(gapSeen && gap?.planned != null ? [gapCheck(part, round, gap.planned)] : []),
    ],
    cautions: CUTTING_CAUTIONS,
    picture: sectionPicture({
      title,
      stove,
      parts: inPlace,
      fresh: [part],
      labels: [{ part, lines: [part] }, ...(host === null ? [] : [{ part: host, lines: [host] }])],
      heights:
        offHost && hostAt !== undefined
          ? [{ from: hostAt.base, to: at.base, lines: [`${long(raised)} up`] }]
          : overGround
            ? [{ from: 0, to: raised, lines: [`${long(raised)} up`] }]
            : [],
      fuel: false,
      pot: false,
      captions: [],
    }),
  }
}

const highest = (placed: readonly PlacedPart[]): number => Math.max(...placed.map(({ top }) => top))

/** What is to be seen behind a band that is turned open; of one that cannot free its holes, what stands against it. */
const openOf = (stove: Stove, band: string): string => {
  const shut = checkStove(stove, null).find(
    ({ code, part }) => code === 'damper.cannot-open' && part === band,
  )
  return shut === undefined ? ': open, every hole behind it shows whole.' : `. ${shut.sentence}`
}

const dryFit = (stove: Stove, placed: readonly PlacedPart[]): BuildStep => {
  const title = 'Try the whole stove, cold'
  const tall = highest(placed)
  const band = placed.find(({ part }) => part.form === 'band')
  return {
    key: 'dry fit',
    title,
    sentences: [
      'Nothing is forced, nothing jams, nothing hangs on a burr: take it apart and together three times.',
      'Push it gently at the top: it rights itself and does not walk.',
      ...fastenersOf(stove)
        .filter(({ goesWith }) => goesWith === null)
        .map(({ count, what, where }) => `${count} × ${what}: ${where}.`),
      ...(stove.potDiameter === null
        ? []
        : [
            `Set a pot of ${long(stove.potDiameter)} with a litre of water on it: it stands level, and the way of the flue gas out under it stays open.`,
          ]),
      ...(band === undefined
        ? []
        : [`Turn ${band.name} from open to shut and back${openOf(stove, band.name)}`]),
    ],
    parts: placed.map(({ name }) => name),
    makes: [],
    places: null,
    tools: ['rule', 'pot with water'],
    checks: [heightCheck('whole stove', 'high from the ground to the top', tall)],
    cautions: CUTTING_CAUTIONS,
    picture: sectionPicture({
      title,
      stove,
      parts: placed.map(({ name }) => name),
      fresh: [],
      labels: [],
      heights: [{ from: 0, to: tall, lines: ['whole stove', `${long(tall)} high`] }],
      fuel: false,
      pot: stove.potDiameter !== null,
      captions: stove.potDiameter === null ? [] : [`Dashed: the pot, ${long(stove.potDiameter)} across.`],
    }),
  }
}

const firstBurn = (stove: Stove, placed: readonly PlacedPart[]): BuildStep => {
  const title = 'Burn it once without a pot, outdoors'
  return {
    key: 'first burn',
    title,
    sentences: [
      'Outdoors, upwind of it, on bare level mineral ground, water or sand at hand: what is left of coatings, oil and glue burns off now, and nobody cooks on this fire.',
      `Fill dry, untreated fuel up to ${long(stove.fuel.level)} above the floor it lies on, and no higher: the holes above it have to stay free. Light it on top.`,
      'Stand back and look: where it smokes, where it whirls, what glows. Write down when it was lit, when the gas burnt, when the flame went out.',
      'When the flame is out the char goes on glowing and giving off carbon monoxide: leave it in the open until it is cold, or drown it. Handle nothing before.',
      'Cold again: look for open seams, warped discs, loose screws; tighten, and brush the scale off.',
    ],
    parts: placed.map(({ name }) => name),
    makes: [],
    places: null,
    tools: ['dry fuel', 'water or sand', 'long tongs, gloves', 'watch', 'trial sheet'],
    checks: [lengthCheck('fuel', null, 'deep, from the floor it lies on', stove.fuel.level, 0.005)],
    cautions: BURNING_CAUTIONS,
    picture: sectionPicture({
      title,
      stove,
      parts: placed.map(({ name }) => name),
      fresh: [],
      labels: [],
      heights: [],
      fuel: true,
      pot: false,
      captions: ['No pot on this one.'],
    }),
  }
}

const asBuilt = (stove: Stove, placed: readonly PlacedPart[]): BuildStep => {
  const title = 'Measure the stove as it was built'
  const sheet = builtSheet(stove)
  const places = sheet.flatMap(({ part, opening }) =>
    part !== null && opening !== null ? [{ part, opening }] : [],
  )
  const openings = new Set(places.map((one) => `${one.part}/${one.opening}`)).size
  return {
    key: 'as built',
    title,
    sentences: [
      `Cold and clean, measure what came out: ${sheet.length} blanks for ${placed.length} parts and ${openings} openings. “tinwright built <stove> --blank --out sheet.json” writes the empty sheet.`,
      'Every hole across two directions, every row up to its centre, counts as they are, gaps at four places, every part on the scale.',
      'Filled in and read back, the prediction is for the stove that stands there and not for the one that was drawn.',
    ],
    parts: placed.map(({ name }) => name),
    makes: [],
    places: null,
    tools: ['calliper', 'rule', 'kitchen scale', 'as-built sheet'],
    checks: [],
    cautions: [...CUTTING_CAUTIONS, ...BURNING_CAUTIONS],
    picture: sectionPicture({
      title,
      stove,
      parts: placed.map(({ name }) => name),
      fresh: [],
      labels: placed.map(({ name, part }) => ({
        part: name,
        lines: [
          `${name}: ${part.openings.size > 0 ? `${part.openings.size} to measure in it` : 'its sizes'}`,
        ],
      })),
      heights: [],
      fuel: false,
      pot: false,
      captions: [],
    }),
  }
}

/** Putting it together, hosts before guests, trying it, burning it once, measuring it. */
export const assemblingSteps = (stove: Stove): readonly BuildStep[] => {
  const placed = orThrow(placeParts(stove))
  return [
    ...stove.assembly.map((_, index) => placeStep(stove, placed, index)),
    dryFit(stove, placed),
    firstBurn(stove, placed),
    asBuilt(stove, placed),
  ]
}
