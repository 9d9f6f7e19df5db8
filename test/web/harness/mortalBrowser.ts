import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium } from 'playwright-core'
import {
  CHROMIUM,
  type Complaints,
  type ContextWish,
  complaintsOf,
  contextOptions,
  FLAGS,
  START,
} from '#scripts/openBench/browser.ts'

/** A browser that keeps a folder of its own, and can be killed as a phone kills one that it wants to be rid of. */
export interface MortalBrowser {
  /** Begins it; `offline`: from its first moment. What it kept in an earlier life is there. */
  readonly begin: (offline?: boolean) => Promise<BrowserContext>
  /** SIGKILL to all of it at once: no page, no worker and no keeper of its stores is told. */
  readonly kill: () => Promise<void>
  readonly complaints: () => Complaints
  /** Ends it and clears up. */
  readonly end: () => Promise<void>
}

/** The program that was begun on a folder: the one that leads all of its processes (proc(5)). */
const leaderOf = (folder: string): number => {
  const found = readdirSync('/proc').filter((name) => {
    try {
      const words = readFileSync(`/proc/${name}/cmdline`, 'utf8').split('\0')
      return words.includes(`--user-data-dir=${folder}`) && !words.some((word) => word.startsWith('--type='))
    } catch {
      return false
    }
  })
  if (found.length !== 1) throw new Error(`${found.length} browsers are at ${folder}`)
  return Number(found[0])
}

/** Processes of a group that are not dead yet: proc(5), the third and the fifth word after the name. */
const livingIn = (group: number): number =>
  readdirSync('/proc').filter((name) => {
    try {
      const stat = readFileSync(`/proc/${name}/stat`, 'utf8')
      const [state, , its] = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
      return Number(its) === group && state !== 'Z'
    } catch {
      return false
    }
  }).length

export const mortalBrowser = (wish: ContextWish): MortalBrowser => {
  const folder = mkdtempSync(join(tmpdir(), 'tinwright-browser-'))
  let living: BrowserContext | null = null
  const complaints: Complaints[] = []
  return {
    begin: async (offline = false) => {
      living = await chromium.launchPersistentContext(folder, {
        executablePath: CHROMIUM,
        args: [...FLAGS],
        ...contextOptions(wish),
        offline,
        timeout: START,
      })
      complaints.push(await complaintsOf(living))
      return living
    },
    kill: async () => {
      const leader = leaderOf(folder)
      const gone = living === null ? null : new Promise((resolve) => living?.once('close', resolve))
      process.kill(-leader, 'SIGKILL')
      await gone
      living = null
      while (livingIn(leader) > 0) await new Promise((resolve) => setTimeout(resolve, 20))
    },
    complaints: () => complaints.flat(),
    end: async () => {
      await living?.close()
      // A browser that goes may still write.
      rmSync(folder, { recursive: true, force: true, maxRetries: 10 })
    },
  }
}
