import type { Warning } from './model.ts'
import type { BurnPlace } from './place.ts'

/** Share of the burns of a day by which the mean places of two variants may differ before it is said; a judgement [1]. */
const APART = 1 / 3

interface Placed {
  readonly variant: string
  readonly block: string
  readonly place: BurnPlace
}

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length

const known = (values: readonly (number | null)[]): readonly number[] | null =>
  values.length > 0 && values.every((one) => one !== null) ? values : null

const quoted = (name: string): string => `“${name}”`
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`

const LOT = 'Draw the order by lot, every variant once a round: tinwright burns.'

/** What the order of the burns may do to the comparison, whatever is measured. */
export const orderWarnings = (
  burns: readonly Placed[],
  reference: string,
  variants: readonly string[],
): readonly Warning[] => {
  const of = (variant: string) => burns.filter((one) => one.variant === variant)
  const others = variants.filter((one) => one !== reference)
  const warnings: Warning[] = []
  const series = (variant: string) => known(of(variant).map(({ place }) => place.inSeries))
  const first = series(reference)
  const separate = others.filter((variant) => {
    const second = series(variant)
    return (
      first !== null &&
      second !== null &&
      first.length + second.length > 2 &&
      (Math.max(...first) < Math.min(...second) || Math.max(...second) < Math.min(...first))
    )
  })
  if (separate.length > 0)
    warnings.push({
      code: 'order.separate',
      sentence: `All burns of ${listed(separate.map(quoted))} lie on one side of those of ${quoted(reference)}, before or after: what changed in the meantime (weather, fuel, practice) cannot be told from the stove.`,
      fix: LOT,
    })
  const blocks = [...new Set(burns.map(({ block }) => block))]
  const blocksOf = (variant: string) => new Set(of(variant).map(({ block }) => block))
  const shared = blocksOf(reference)
  const apart = others.filter((variant) => ![...blocksOf(variant)].some((block) => shared.has(block)))
  if (blocks.length > 1 && apart.length > 0)
    warnings.push({
      code: 'order.no-shared-block',
      sentence: `${listed(apart.map(quoted))} never shared a day (or block) with ${quoted(reference)}: a difference may be one between days.`,
      fix: 'Burn every variant on every day, or as many as the day holds.',
    })
  const places = (variant: string) => known(of(variant).map(({ place }) => place.inDay))
  const most = Math.max(1, ...burns.map(({ place }) => place.inDay ?? 1))
  const start = places(reference)
  const late = others.flatMap((variant) => {
    const here = places(variant)
    if (start === null || here === null || separate.includes(variant) || apart.includes(variant)) return []
    const by = mean(here) - mean(start)
    return Math.abs(by) > APART * most ? [{ variant, by }] : []
  })
  for (const [way, some] of [
    ['later', late.filter(({ by }) => by > 0)],
    ['earlier', late.filter(({ by }) => by < 0)],
  ] as const)
    if (some.length > 0)
      warnings.push({
        code: `order.${way}`,
        sentence: `${listed(some.map(({ variant }) => quoted(variant)))} ${some.length === 1 ? 'was' : 'were'} mostly burnt ${way} in the day than ${quoted(reference)}: where something drifts over the day, part of the difference is that.`,
        fix: LOT,
      })
  if (first === null)
    warnings.push({
      code: 'order.unknown',
      sentence: 'The order of some burns is not known, so drift cannot be looked for.',
      fix: 'Note the time of lighting, or the place in the series.',
    })
  return warnings
}
