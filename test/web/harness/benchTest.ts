import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeEach } from 'vitest'
import { type Complaints, type ContextWish, launch, newContext } from '#scripts/openBench/browser.ts'
import { type BenchServer, startServer } from '#scripts/openBench/server.ts'
import { needs } from '../../outsideProgram.ts'

export { ask, stoveNamed } from '#scripts/openBench/ask.ts'

export interface BenchRig {
  /** The bench of this file of tests, with the demo in it. */
  readonly server: () => BenchServer
  readonly browser: () => Browser
  /** A window in a browser of its own, at a path of the bench. */
  readonly open: (path: string, wish?: ContextWish) => Promise<Opened>
}

export interface RigWish {
  /** The maker has not been shown round yet. */
  readonly guide?: boolean
  readonly prepare?: (server: BenchServer) => Promise<void>
}

export interface Opened {
  readonly page: Page
  readonly context: BrowserContext
  /** What the pages of this browser said that they should not. */
  readonly complaints: Complaints
  /** One more window of the same browser. */
  readonly another: (path: string) => Promise<Page>
}

/** A server and a browser start within this on any machine [ms]. */
const START = 180_000

/** Tells the bench that its maker has been shown round. */
export const SHOWN_ROUND =
  "if (location.protocol === 'http:') localStorage.setItem('tinwright.guide', 'done')"

/**
 * A bench and a browser for a file of tests, ended with it. After a test that failed, be it for its own second try or for
 * the test that follows, there is a new bench with a new workshop: no test counts on what another one did.
 * `prepare` is done to every new bench.
 */
export const benchRig = ({ guide = false, prepare = async () => {} }: RigWish = {}): BenchRig => {
  let server: BenchServer | null = null
  let browser: Browser | null = null
  let isSpoilt = false
  const closeServer = async (): Promise<void> => {
    await server?.close()
    server = null
  }
  const there = (): BenchServer => {
    if (server === null) throw new Error('The bench has not been started')
    return server
  }
  const running = (): Browser => {
    if (browser === null) throw new Error('The browser has not been started')
    return browser
  }
  beforeEach(async (context) => {
    needs(context, 'chromium')
    if (!browser?.isConnected()) browser = await launch()
    for (const old of browser.contexts()) await old.close()
    if (isSpoilt) await closeServer()
    isSpoilt = false
    if (server !== null) return
    server = await startServer()
    await prepare(server)
  }, START)
  afterEach(({ task }) => {
    isSpoilt = task.result?.state === 'fail'
  })
  afterAll(async () => {
    await browser?.close()
    await closeServer()
  }, START)
  return {
    server: there,
    browser: running,
    open: async (path, wish) => {
      const { context, complaints } = await newContext(running(), wish)
      if (!guide) await context.addInitScript(SHOWN_ROUND)
      const another = async (to: string): Promise<Page> => {
        const page = await context.newPage()
        await page.goto(new URL(to, there().address).href)
        return page
      }
      return { page: await another(path), context, complaints, another }
    },
  }
}
