import { writeFileSync } from 'node:fs'
import type { Reporter } from 'vitest/node'
import { toldLines } from './table.ts'
import { countsLine, tally } from './tally.ts'

/** Where the gate wants the tally; without it the reporter prints its own last lines. */
export const TALLY_FILE = 'TINWRIGHT_TALLY_FILE'

/** Ends a Vitest run with what was left out and why, and the line of counts. */
export const countsReporter = (): Reporter => ({
  onTestRunEnd: (modules, strays) => {
    const counts = tally(modules, strays)
    const file = process.env[TALLY_FILE]
    if (file !== undefined) writeFileSync(file, JSON.stringify(counts))
    // The default reporter prints its summary at the same event: ours comes after it.
    else process.once('beforeExit', () => console.log([...toldLines(counts), countsLine(counts)].join('\n')))
  },
})
