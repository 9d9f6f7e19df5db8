import { long, slack } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import { isSeamed } from '#stove/can/ends.ts'
import { bodyAt } from '#stove/can/taper.ts'
import type { Can, Part } from '#stove/model.ts'
import { bandStrip } from '../../flat/band.ts'
import { lengthRound } from '../../flat/development.ts'
import { bearingText } from '../../flat/wording.ts'
import { canWrap, PAPER_THICKNESS } from '../../flat/wrap.ts'
import { handCheck, lengthCheck, markChecks } from '../checks.ts'
import type { BuildStep } from '../step.ts'
import { type Bench, isRow, openingsAt, step } from './bench.ts'
import { bandPicture, facePicture, wallPicture } from './pictures.ts'

/** Where the wrap's lower edge lies. */
const lowerEdgeText = (can: Can): string => {
  if (can.bottom.kind === 'cut') return 'its lower edge on the line struck for the new bottom edge'
  return isSeamed(can.bottom)
    ? `its lower edge rests on the bottom seam, ${long(can.seamHeight)} above the can’s bottom edge`
    : 'its lower edge is level with the can’s bottom edge'
}

/** Marking out and punching: once a part, template by template. */
export const markSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] => {
  if (part.openings.size === 0) return []
  const title = `Mark out ${name} and punch the centres`
  const tools = ['template, bars checked', 'scissors, tape, glue stick', 'felt pen', 'hammer, centre punch']
  const punch =
    'Punch every cross that is drilled: lightly first, look, then harder. Score the lines of what is cut.'
  if (part.form !== 'can')
    return [
      step(`mark out ${name}`, title, name, {
        sentences: [
          `Glue the template on the tin, printed side up; leave tin round it to clamp by.`,
          part.form === 'disc' ? 'Punch the middle too: a compass wants it.' : 'Cut nothing out yet.',
          punch,
        ],
        makes: [],
        tools,
        checks: [
          ...openingsAt(part, 'wall')
            .filter(isRow)
            .flatMap(([row, opening]) =>
              part.form === 'band'
                ? markChecks(name, part, row, opening, bandStrip(bench.stove, name, part).length / 1000)
                : [],
            ),
          ...(part.form === 'disc'
            ? [lengthCheck(name, null, 'across the circle of the template', part.diameter.value, 0.0005)]
            : []),
        ],
        picture:
          part.form === 'disc'
            ? facePicture(title, part, 'face', 'marking', [])
            : bandPicture(bench, title, name, part, 'marking', []),
      }),
    ]
  const strip = canWrap(name, part)
  const ends = (['bottom', 'top'] as const).filter((end) => openingsAt(part, end).length > 0)
  const round = (height: Metres): number => lengthRound(bodyAt(part.can, height).value, PAPER_THICKNESS)
  const steps: BuildStep[] = []
  if (strip !== null) {
    const seam = part.can.sideSeam
    steps.push(
      step(`mark out ${name}`, title, name, {
        sentences: [
          ...(part.can.bottom.kind === 'cut'
            ? [
                `Strike a line all round, ${long(part.can.height.value)} below the top edge: the new bottom edge; all heights count from it.`,
              ]
            : []),
          `Tape the wrap round the can, printed side out: ${lowerEdgeText(part.can)}; its ends meet at ${bearingText(strip.join)}${seam === null ? '' : ', and the can’s side seam runs under the line marked for it'}.`,
          'Make a felt-pen mark at the bottom edge under 0°: the front mark, which stays when the paper is gone.',
          punch,
        ],
        makes: [],
        tools,
        checks: [
          handCheck(
            name,
            null,
            `the ends of the wrap meet within ${slack(0.001)}: else measure the can again and print for its true size.`,
          ),
          ...openingsAt(part, 'wall')
            .filter(isRow)
            .flatMap(([row, opening]) => markChecks(name, part, row, opening, round(opening.height))),
        ],
        picture: wallPicture(bench, title, name, part, 'marking', []),
      }),
    )
  }
  for (const end of ends) {
    const endTitle = `Mark out the ${end} of ${name} and punch the centres`
    steps.push(
      step(`mark out ${end} of ${name}`, endTitle, name, {
        sentences: [
          `Lay the disc template on the ${end} from outside, printed side out, FRONT to the can’s front mark, and tape it.`,
          punch,
        ],
        makes: [],
        tools,
        checks: [handCheck(name, null, 'the same margin all round the paper, by eye.')],
        picture: facePicture(endTitle, part, end, 'marking', []),
      }),
    )
  }
  return steps
}
