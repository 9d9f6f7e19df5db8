import { labelled, wrap } from '#compose/page/text.ts'
import { differenceText } from '#stove/built/differenceText.ts'
import type { Measure } from '#stove/built/measure.ts'
import { measureText } from '#stove/built/plausible.ts'
import type { Built, Difference } from '#stove/built/read.ts'

const placeOf = ({ part, opening }: Measure): string =>
  part === null ? 'fuel and whole stove' : opening === null ? part : `${part}, ${opening}`

const grouped = <T>(items: readonly T[], key: (item: T) => string): ReadonlyMap<string, readonly T[]> => {
  const groups = new Map<string, T[]>()
  for (const item of items) groups.set(key(item), [...(groups.get(key(item)) ?? []), item])
  return groups
}

/** Smaller than a rule shows. */
const isAsPlanned = ({ off }: Difference): boolean => off !== null && Math.abs(off) < 5e-5

const told = ({ measure, planned, built, off }: Difference): string => {
  if (planned === null || off === null) return `built ${measureText(measure, built, true)}`
  const text = differenceText(measure, planned, built)
  return `plan ${text.planned}, built ${text.built}: ${text.off} ${off > 0 ? 'more' : 'less'}`
}

/** Plan beside what was built, part by part. */
export const differenceBlocks = ({ differences }: Built, width: number): readonly string[] =>
  [...grouped(differences, ({ measure }) => placeOf(measure))].map(([place, some]) => {
    const off = some.filter((one) => !isAsPlanned(one))
    const same = some.filter(isAsPlanned).map(({ measure }) => measure.label)
    return [
      wrap(place, width),
      ...(off.length === 0
        ? []
        : [
            labelled(
              off.map((one) => [one.measure.label, told(one)] as const),
              width,
            ),
          ]),
      ...(same.length === 0 ? [] : [wrap(`as planned: ${same.join(', ')}`, width, '  ', '    ')]),
    ].join('\n')
  })

/** What was left blank, part by part: it is taken as planned. */
export const unmeasuredBlock = ({ unmeasured }: Built, width: number): string | null => {
  if (unmeasured.length === 0) return null
  const rows = [...grouped(unmeasured, placeOf)].map(
    ([place, some]) => [place, some.map(({ label }) => label).join(', ')] as const,
  )
  return [wrap('Not measured, so taken as planned', width), labelled(rows, width)].join('\n')
}
