import { describe, expect, it } from 'vitest'
import { trialLines } from '#web/family/trialLines.ts'
import type { KnownTrial } from '#web/trials/allTrials.ts'
import { seriesTrials } from '../../proof/compare/seriesTrials.ts'

const known = (variant: string): readonly KnownTrial[] =>
  seriesTrials
    .filter(({ stove }) => stove.variant === variant)
    .map((trial) => ({ soFar: { trial, missing: [], wrong: [] } }) as unknown as KnownTrial)

describe('what trials said of a step of the family', () => {
  it('tells how long water took from the start of the phase, in minutes, and how much of the heat it got', () => {
    const trials = known('B, wider bore')
    const boils = trials.map(({ soFar: { trial } }) => {
      const [phase] = trial?.phases ?? []
      return ((phase?.boil ?? Number.NaN) - (phase?.from.at ?? Number.NaN)) / 60
    })
    const average = boils.reduce((sum, one) => sum + one, 0) / boils.length
    const [line = ''] = trialLines(trials)
    const said = /^4 trials: boiled in ([\d.]+) min on average, (\d+) % of the heat in the water$/.exec(line)
    expect(Number(said?.[1])).toBeCloseTo(average, 1)
    // Of burns in a tin under an open pot: a fifth to a third.
    expect(Number(said?.[2])).toBeGreaterThan(15)
    expect(Number(said?.[2])).toBeLessThan(35)
  })

  it('says nothing of none, and that nothing is told yet of those that are not filled in', () => {
    expect(trialLines([])).toEqual([])
    const empty = [{ soFar: { trial: null, missing: [], wrong: [] } } as unknown as KnownTrial]
    expect(trialLines(empty)).toEqual(['1 trial, not evaluated yet'])
  })
})
