import { defaultBurnOptions, march } from '#science/burn/march.ts'
import type { SteadyInput } from '#science/steady/input.ts'
import { bytesAllocated } from './allocation.ts'
import { timing } from './measure.ts'
import type { Row, Rows } from './row.ts'
import { EXAMPLES, exampleInput } from './steadyStoves.ts'

const burnt = (input: SteadyInput, longestStep: number) => {
  const outcome = march(input, { ...defaultBurnOptions, longestStep })
  if (!outcome.ok) throw new Error(outcome.failure.sentence)
  return outcome.burn
}

/** Longest time steps tried [s]: as it comes, and ever finer. */
const LONGEST = [defaultBurnOptions.longestStep, 20, 10, 5]

/** Whole burns, from lighting to the last char, on one core. */
export const rows: Rows = async () => {
  const measured: Row[] = []
  for (const example of EXAMPLES) {
    const input = exampleInput(example)
    const { longestStep } = defaultBurnOptions
    const name = `whole burn of ${example.split(',')[0]} (${burnt(input, longestStep).steps.length} steps)`
    const { median } = await timing(() => burnt(input, longestStep))
    measured.push(
      { name, value: median * 1000, unit: 'ms', bar: { atMost: 5 } },
      {
        name: `${name}, memory asked for`,
        value: bytesAllocated(() => burnt(input, longestStep), 1) / 1e6,
        unit: 'MB',
        bar: null,
      },
    )
  }
  const input = exampleInput(EXAMPLES[0])
  for (const longest of LONGEST) {
    const steps = burnt(input, longest).steps.length
    const { median } = await timing(() => burnt(input, longest))
    measured.push({
      name: `a step of the burn of redshank, steps up to ${longest} s (${steps} in all)`,
      value: (median / steps) * 1e6,
      unit: 'µs',
      bar: null,
    })
  }
  return measured
}
