import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { SetUpFailed } from './failure.mjs'

const PATIENCE_SECONDS = 600

/** @param {number} pid */
const isRunning = (pid) => {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    // EPERM: it runs, and belongs to someone else.
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM'
  }
}

/** @param {string} file */
const claim = (file) => {
  try {
    writeFileSync(file, String(process.pid), { flag: 'wx' })
    return true
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'EEXIST') return false
    throw error
  }
}

/** @param {string} file */
const holder = (file) => {
  try {
    return Number(readFileSync(file, 'utf8'))
  } catch {
    return Number.NaN
  }
}

/**
 * Does the work while no other process does it in the same checkout: two terminals may both start
 * with a bare clone. A lock whose process is gone is taken over.
 *
 * @param {string} root
 * @param {() => Promise<void>} work
 * @param {(sentence: string) => void} say
 */
export const oneAtATime = async (root, work, say) => {
  const folder = join(root, '.setup')
  const file = join(folder, 'lock')
  mkdirSync(folder, { recursive: true })
  const deadline = Date.now() + PATIENCE_SECONDS * 1000
  let told = false
  while (!claim(file)) {
    const pid = holder(file)
    if (Number.isInteger(pid) && pid > 0 && !isRunning(pid)) {
      rmSync(file, { force: true })
      continue
    }
    if (Date.now() > deadline) {
      throw new SetUpFailed(
        `Another set-up of this folder (process ${pid}) has not ended after ${PATIENCE_SECONDS} s. ` +
          `End it, or delete ${file} if it is gone, and run the command again.`,
      )
    }
    if (!told) say(`Another set-up of this folder is running (process ${pid}); waiting for it.`)
    told = true
    await pause(200)
  }
  try {
    await work()
  } finally {
    rmSync(file, { force: true })
  }
}
