import { mkdirSync, rmdirSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { buildBench } from '../build/bench.ts'

const root = join(import.meta.dirname, '..', '..')
const lock = join(root, 'dist', '.building')

/** Builds the pages where they have changed; files of tests that run side by side wait for each other. */
export const buildOnce = async (): Promise<void> => {
  mkdirSync(join(root, 'dist'), { recursive: true })
  for (let tries = 0; ; tries++) {
    try {
      mkdirSync(lock)
      break
    } catch (fault) {
      // A builder that was killed leaves its lock behind: after two minutes it counts as gone.
      if ((fault as NodeJS.ErrnoException).code !== 'EEXIST' || tries > 1200) throw fault
      await pause(100)
    }
  }
  try {
    if (!buildBench()) throw new Error('The pages of the bench could not be built')
  } finally {
    rmdirSync(lock)
  }
}
