import type { Problem } from '#basis/problem.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { tableFuel } from '#science/fuel/charge.ts'
import { type Place, problemAt, within } from '#stove/document/place.ts'
import type { PhaseRead, TrialRead } from './schema.ts'

const mass = (value: number): string => formatQuantity(value, 'mass')

const phaseProblems = (phase: PhaseRead, potWeight: number, at: Place): readonly Problem[] => {
  const { from, to, char, boil } = phase
  const problems: Problem[] = []
  const say = (path: readonly PropertyKey[], code: string, allowed: string, fix: string): void => {
    problems.push(problemAt(within(at, ...path), `trial.${code}`, allowed, fix))
  }
  const rising = `later than the start, ${formatQuantity(from.at, 'timeAfterLighting')}`
  if (to.at <= from.at)
    say(['to', 'at'], 'time-back', rising, 'A phase ends after it began: swap the two, or look again.')
  if (to.fuel > from.fuel)
    say(
      ['to', 'fuel'],
      'fuel-grows',
      `at most what there was at the start, ${mass(from.fuel)}`,
      'Fuel only gets less; what was added belongs to the start, and as "refuel" into the events.',
    )
  for (const [key, reading] of Object.entries({ from, to }))
    if (reading.pot < potWeight)
      say(
        [key, 'pot'],
        'pot-light',
        `at least the empty pot, ${mass(potWeight)}`,
        'Weigh pot and water together; was the pot taken off?',
      )
  if (to.pot > from.pot)
    say(
      ['to', 'pot'],
      'water-grows',
      `at most what there was at the start, ${mass(from.pot)}`,
      'Water only boils away: start a new phase where some was added.',
    )
  if (char !== undefined && char > from.fuel - to.fuel)
    say(
      ['char'],
      'char-heavy',
      `at most the fuel burnt, ${mass(Math.max(from.fuel - to.fuel, 0))}`,
      'Take vessel, ash and unburnt fuel off the weight of the char.',
    )
  if (boil !== undefined && (boil <= from.at || boil > to.at))
    say(
      ['boil'],
      'boil-outside',
      `between the start and the end of the phase, ${formatQuantity(from.at, 'timeAfterLighting')} to ${formatQuantity(to.at, 'timeAfterLighting')}`,
      'Times run from lighting: add the time before the pot went on.',
    )
  return problems
}

/** Everything in a trial that cannot go together, whatever the single fields say. */
export const togetherProblems = (read: TrialRead, root: Place): readonly Problem[] => {
  const problems = read.phases.flatMap((phase, i) =>
    phaseProblems(phase, read.pot.weight, within(root, 'phases', i)),
  )
  for (const [i, phase] of read.phases.entries()) {
    const before = read.phases[i - 1]
    if (before !== undefined && phase.from.at < before.to.at)
      problems.push(
        problemAt(
          within(root, 'phases', i, 'from', 'at'),
          'trial.phases-overlap',
          `not before the phase above ended, ${formatQuantity(before.to.at, 'timeAfterLighting')}`,
          'Put the phases in the order they were burnt in.',
        ),
      )
  }
  const { weather, fuel, instruments } = read
  const told = (['pressure', 'altitude', 'boilingPoint'] as const).filter((key) => weather[key] !== undefined)
  if (told.length === 0)
    problems.push(
      problemAt(
        within(root, 'weather', 'pressure'),
        'key.missing',
        'a pressure such as "1005 hPa", or "altitude", or "boilingPoint"',
        'Say how high the place lies, if you have no barometer.',
        '',
      ),
    )
  if (told.length > 1)
    problems.push(
      problemAt(
        within(root, 'weather', told[1] as string),
        'trial.site-twice',
        'one of "pressure", "altitude" and "boilingPoint"',
        'Keep the boiling point if it was measured there, else the pressure of a barometer, else the altitude.',
      ),
    )
  const known = tableFuel(fuel.kind, 'fuel.kind')
  if (!known.ok) problems.push(...known.problems)
  if ('meter' in fuel.moisture && instruments.moistureMeter === undefined)
    problems.push(
      problemAt(
        within(root, 'instruments', 'moistureMeter'),
        'key.missing',
        'an accuracy such as { "accuracy": "2 %" }',
        'Say how far the moisture meter may be off: its leaflet does, or take 2 %.',
        '',
      ),
    )
  if ('after' in fuel.moisture && fuel.moisture.after > fuel.moisture.before)
    problems.push(
      problemAt(
        within(root, 'fuel', 'moisture', 'after'),
        'fuel.heavier-dry',
        `at most the weight before drying, ${mass(fuel.moisture.before)}`,
        'Swap the two weights, or weigh again: drying only takes water away.',
      ),
    )
  return problems
}
