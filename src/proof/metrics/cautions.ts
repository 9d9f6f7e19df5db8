import type { Trial } from '#proof/trial/model.ts'
import type { TrialMetrics } from './worked.ts'

/** Above this a small stove leans on the wind as much as on its own draught; a judgement [m/s]. */
const WINDY = 1.5
/** A standard uncertainty of more than this share of the result says more of the instruments than of the stove; a judgement. */
const BLUNT = 0.1

const percent = (share: number): string => `${Math.round(100 * share)} %`

/** What a reader of the metrics should know of this burn; sentences. */
export const trialCautions = (trial: Trial, metrics: TrialMetrics): readonly string[] => {
  const { weather, pot, wentWrong = [], fuel, kindling } = trial
  const cautions: string[] = wentWrong.map((text) => `It went wrong: ${text}`)
  if (weather.wind !== undefined && weather.wind > WINDY)
    cautions.push(
      'It was windy: the draught of so small a stove is a pascal or two, and wind brings as much.',
    )
  if (pot.lid)
    cautions.push('A lid was on: steam that drips back does not show on the scale, so efficiency reads low.')
  if (fuel.heatingValue === undefined)
    cautions.push(
      'The heating value is that of the fuel table, not of this fuel: efficiency and firepower lean on it.',
    )
  const start = trial.phases[0]?.from.at ?? 0
  if (fuel.weighed === 'before lighting' && start > 0)
    cautions.push(
      'The fuel was weighed before lighting: what burnt until the first phase began counts as burnt in it, so its burning rate and firepower read high.',
    )
  if (kindling?.weighed === 'with the fuel')
    cautions.push('The kindling is in the weight of the fuel, and counts as fuel burnt.')
  if (trial.phases.some(({ char }) => char === null))
    cautions.push(
      'Char was not weighed: nothing that credits it can be said, and a wood-gas stove leaves a fifth of the fuel as char.',
    )
  const blunt = metrics.phases
    .flatMap(({ rows }) => rows)
    .filter(({ metric, value, u }) => metric && value !== 0 && u > BLUNT * Math.abs(value))
  for (const { name, value, u, contributions } of blunt)
    cautions.push(
      `${name[0]?.toUpperCase()}${name.slice(1)} is known to ${percent(u / Math.abs(value))} only, most of it from this: ${contributions[0]?.name ?? 'the instruments'}.`,
    )
  return cautions
}
