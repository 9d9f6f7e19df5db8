import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { bytesAllocated } from './allocation.ts'
import { timing } from './measure.ts'
import type { Row, Rows } from './row.ts'
import {
  EXAMPLES,
  exampleInput,
  inputOf,
  PLACES,
  REFERENCE,
  settleAll,
  settleNext,
  withSecondaryRows,
} from './steadyStoves.ts'

const MICRO = 1e6

/** Seconds a solve of the same equations takes SciPy here and now; null where there is no SciPy. */
const scipySeconds = (example: string): number | null => {
  const script = join(REFERENCE, 'generators', 'steady_scipy.py')
  const wanted = [script, '--time', String(PLACES.length), example]
  const { status, stdout } = spawnSync('/usr/bin/python3', wanted, { encoding: 'utf8' })
  if (status !== 0) return null
  return (JSON.parse(stdout) as { readonly seconds: Readonly<Record<string, number>> }).seconds[example]!
}

const MOST_ROWS = 6

/** One steady prediction from nothing, temperatures, walls and all, on one core. */
export const rows: Rows = async () => {
  const measured: Row[] = []
  for (const example of EXAMPLES) {
    const input = exampleInput(example)
    const name = `steady state of ${example.split(',')[0]}`
    const { median } = await timing(settleAll(input), { calls: PLACES.length })
    measured.push({ name, value: median * MICRO, unit: 'µs', bar: { atMost: 50 } })
    const theirs = scipySeconds(example)
    if (theirs === null) console.error(`/usr/bin/python3 has no SciPy: ${name} is not compared with it`)
    else
      measured.push(
        { name: `${name} in SciPy`, value: theirs * MICRO, unit: 'µs', bar: null },
        { name: `${name} over SciPy`, value: theirs / median, unit: 'times', bar: { atLeast: 100 } },
      )
    measured.push({
      name: `${name}, memory asked for`,
      value: bytesAllocated(settleNext(input), 4) / 1000,
      unit: 'kB',
      bar: null,
    })
  }
  for (let count = 1; count <= MOST_ROWS; count++) {
    const input = inputOf(withSecondaryRows(count))
    const { median } = await timing(settleAll(input), { calls: PLACES.length, seconds: 0.5 })
    const { nodes, links, walls } = input.plan
    measured.push({
      name: `steady state with ${count} secondary row${count === 1 ? '' : 's'} (${nodes.length} spaces, ${links.length} passages, ${walls.length} walls)`,
      value: median * MICRO,
      unit: 'µs',
      bar: null,
    })
  }
  return measured
}
