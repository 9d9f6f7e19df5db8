import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { timing } from './measure.ts'
import type { Rows } from './row.ts'

const script = join(import.meta.dirname, '..', 'scripts', 'setup.mjs')

const setUp = (): number => {
  const { status } = spawnSync(process.execPath, [script], { stdio: 'ignore' })
  if (status !== 0) throw new Error(`the set-up ended with ${status}`)
  return status
}

/** What every npm script pays before it starts. */
export const rows: Rows = async () => {
  const { median } = await timing(setUp)
  return [{ name: 'set-up with nothing to do', value: median * 1000, unit: 'ms', bar: { atMost: 1000 } }]
}
