import { formatQuantity } from '#basis/text/format.ts'
import { figureTwice } from '#craft/told/band.ts'
import { NO_PREDICTION, type TrialPrediction } from '#craft/trial/sheet.ts'
import type { ReportOutcome } from '#science/answers/burn/report.ts'

/** What stands beside the blanks of the trial sheet: the burn as the model has it. */
export const predictedFor = (outcome: ReportOutcome): TrialPrediction => {
  if (outcome.kind === 'no burn') return { ...NO_PREDICTION, regime: 'does not burn' }
  const { fuel, figures, boils, events, course } = outcome.report
  // The most water that boils: what is worth putting on.
  const boil = [...boils].reverse().find(({ boilsAt }) => boilsAt !== null)
  const after = (time: number | undefined): string | null =>
    time === undefined ? null : `${formatQuantity(time, 'burnTime')} after lighting`
  const at = (...kinds: readonly string[]): string | null =>
    after(events.find(({ kind }) => kinds.includes(kind))?.time)
  return {
    fuel: figureTwice(fuel.charge, 'mass', 'oz'),
    boil: boil?.boilsAt == null ? 'never' : `${boil.litres} L, ${after(boil.boilsAt)}`,
    flameOut: at('flame out', 'front at the floor', 'front out'),
    charTime: at('char out'),
    char: figureTwice(figures.charLeft, 'mass', 'oz'),
    firepower: figureTwice(figures.firepower, 'firepower', 'Btu/h'),
    regime: course,
  }
}
