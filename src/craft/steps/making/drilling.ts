import { plural } from '#stove/check/phrase.ts'
import type { Part } from '#stove/model.ts'
import { bitText, makingOf, toolText } from '../../shop/making.ts'
import { CUTTING_CAUTIONS } from '../cautions.ts'
import { madeChecks } from '../checks.ts'
import { overviewPicture } from '../picture/overview.ts'
import { itemOf } from '../prepare.ts'
import type { BuildStep } from '../step.ts'
import { type Bench, namesOf, openingsAt, step, whereWord } from './bench.ts'
import { picture } from './pictures.ts'

export const pilotStep = (bench: Bench): readonly BuildStep[] => {
  const pilot = bench.jobs.find(({ purpose }) => purpose === 'pilot')
  if (pilot === undefined) return []
  const names = [...new Set(pilot.holes.map(({ part }) => part))]
  const title = `Drill all pilot holes, ${bitText({ name: pilot.bit, diameter: pilot.diameter })}`
  return [
    {
      key: 'pilot holes',
      title,
      sentences: [
        `${plural(pilot.count, 'pilot hole')} with one bit, before any bit is changed. Drill in the punch marks, fast and lightly.`,
        ...names.map((name) => {
          const rows = pilot.holes.filter(({ part }) => part === name)
          const told = rows.map(({ opening, count }) => `${count} of ${opening}`).join(', ')
          return `${name}: ${told}. ${rows[0]?.held ?? ''}`
        }),
      ],
      parts: names,
      makes: [],
      places: null,
      tools: ['drill', bitText({ name: pilot.bit, diameter: pilot.diameter }), 'clamps, wooden block'],
      checks: [],
      cautions: CUTTING_CAUTIONS,
      picture: overviewPicture(
        title,
        names.flatMap((name) => {
          const part = bench.stove.parts.get(name)
          const count = pilot.holes.reduce((sum, hole) => sum + (hole.part === name ? hole.count : 0), 0)
          return part === undefined
            ? []
            : [
                itemOf(
                  bench.stove,
                  name,
                  part,
                  'marks',
                  `${name}: ${plural(count, 'pilot hole')}`,
                  bench.cans,
                ),
              ]
        }),
      ),
    },
  ]
}

export const drillSentences = ({ jobs }: Bench, name: string, opening: string): readonly string[] =>
  jobs
    .filter(({ purpose }) => purpose === 'hole')
    .flatMap((job) =>
      job.holes
        .filter((holes) => holes.part === name && holes.opening === opening)
        .map(
          ({ count, from, held }) =>
            `${opening}: ${plural(count, 'hole')}, ${toolText({ name: job.bit, diameter: job.diameter }, job.tool)}, from ${from}. ${held} ${job.manner}`,
        ),
    )

/** Round holes of one place. */
export const drillSteps = (bench: Bench, name: string, part: Part): readonly BuildStep[] =>
  (['wall', 'bottom', 'top', 'face'] as const).flatMap((where): readonly BuildStep[] => {
    const drilled = openingsAt(part, where).filter(([, opening]) => makingOf(opening) === 'drill')
    if (drilled.length === 0) return []
    const title = `Drill the ${whereWord(part, where)}${part.form === 'can' ? name : `holes of ${name}`}`
    return [
      step(`drill ${whereWord(part, where)}${name}`, title, name, {
        sentences: drilled.flatMap(([opening]) => drillSentences(bench, name, opening)),
        makes: namesOf(name, drilled),
        tools: [
          'drill',
          'clamps',
          part.form === 'can' ? 'wooden block or cradle' : 'board of scrap wood',
          'deburring tool',
        ],
        checks: drilled.flatMap(([opening, what]) => madeChecks(name, opening, what)),
        picture: picture(bench, title, name, where, ['drill'], []),
      }),
    ]
  })
