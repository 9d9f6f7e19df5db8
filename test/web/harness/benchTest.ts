import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach } from 'vitest'
import { type Complaints, type ContextWish, launch, newContext } from '#scripts/openBench/browser.ts'
import { type BenchServer, startServer } from '#scripts/openBench/server.ts'
import { needs } from '../../outsideProgram.ts'

export { ask, stoveNamed } from '#scripts/openBench/ask.ts'

export interface BenchRig {
  /** The bench of this file of tests, with the demo in it. */
  readonly server: () => BenchServer
  /** A window in a browser of its own, at a path of the bench. */
  readonly open: (path: string, wish?: ContextWish) => Promise<Opened>
}

export interface Opened {
  readonly page: Page
  readonly context: BrowserContext
  /** What the pages of this browser said that they should not. */
  readonly complaints: Complaints
  /** One more window of the same browser. */
  readonly another: (path: string) => Promise<Page>
}

/** Tells the bench that its maker has been shown round. */
export const SHOWN_ROUND =
  "if (location.protocol === 'http:') localStorage.setItem('tinwright.guide', 'done')"

/** Starts a bench and a browser for a file of tests, and ends them with it. */
export const benchRig = ({ guide = false } = {}): BenchRig => {
  let server: BenchServer | null = null
  let browser: Browser | null = null
  const contexts: BrowserContext[] = []
  beforeAll(async () => {
    server = await startServer()
  }, 180_000)
  beforeEach(async (context) => {
    needs(context, 'chromium')
    for (const old of contexts.splice(0)) await old.close()
    browser ??= await launch()
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })
  const there = (): BenchServer => {
    if (server === null) throw new Error('The bench has not been started')
    return server
  }
  return {
    server: there,
    open: async (path, wish) => {
      if (browser === null) throw new Error('The browser has not been started')
      const { context, complaints } = await newContext(browser, wish)
      contexts.push(context)
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
