import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { buildBench } from '../build/bench.ts'

const root = join(import.meta.dirname, '..', '..')
const lock = join(root, 'dist', '.building')

/** Takes the lock, or tells whose it is; null when it went away meanwhile. */
const takeLock = (): 'taken' | number | null => {
  try {
    writeFileSync(lock, String(process.pid), { flag: 'wx' })
    return 'taken'
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code !== 'EEXIST') throw fault
    try {
      return Number(readFileSync(lock, 'utf8'))
    } catch {
      return null
    }
  }
}

const isAlive = (pid: number): boolean => {
  try {
    process.kill(pid, 0)
    return true
  } catch (fault) {
    return (fault as NodeJS.ErrnoException).code === 'EPERM'
  }
}

/** Longer than any build takes [ms]. */
const PATIENCE = 300_000

/** Builds the pages where they have changed; whoever comes meanwhile waits. */
export const buildOnce = async (): Promise<void> => {
  mkdirSync(join(root, 'dist'), { recursive: true })
  const begun = performance.now()
  for (;;) {
    const holder = takeLock()
    if (holder === 'taken') break
    if (performance.now() - begun > PATIENCE)
      throw new Error(`Still building, says ${lock}: delete it if nothing is`)
    // A builder that was killed leaves its lock behind. One that has not written its number yet is at it.
    if (holder !== null && holder > 0 && !isAlive(holder)) rmSync(lock, { force: true })
    else await pause(100)
  }
  try {
    if (!buildBench()) throw new Error('The pages of the bench could not be built')
  } finally {
    rmSync(lock, { force: true })
  }
}
