import { type Browser, type BrowserContext, chromium } from 'playwright-core'

/** Where Debian puts it. */
export const CHROMIUM = '/usr/bin/chromium'

export const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
]

/** Until a browser is there [ms]. */
export const START = 120_000

export const launch = (more: readonly string[] = []): Promise<Browser> =>
  chromium.launch({ executablePath: CHROMIUM, args: [...FLAGS, ...more], timeout: START })

export interface ContextWish {
  readonly width?: number
  readonly height?: number
  readonly look?: 'light' | 'dark'
  readonly touch?: boolean
  /** Without the worker that keeps the pages: only then can a test stand between page and server. */
  readonly noWorker?: boolean
}

/** What a page said that it should not: faults, errors in the console, breaches of its policy. */
export type Complaints = readonly string[]

const WATCH_POLICY = `addEventListener('securitypolicyviolation', (event) =>
  console.error('policy: ' + event.violatedDirective + ' ' + event.blockedURI))`

/**
 * What the browser says of a server that was ended on purpose, of a call that was refused, which the page tells in a
 * sentence, and of its own software renderer.
 */
const EXPECTED =
  /Failed to load resource: net::ERR_|with a status of 4(?!04)|ERR_CONNECTION_REFUSED|GL Driver Message|ERR_INTERNET/

/** A machine under load is slow; what is not there after this does not come. [ms] */
export const PATIENCE = 60_000

/** What Playwright is to make of a wish. */
export const contextOptions = ({
  width = 1280,
  height = 800,
  look = 'light',
  touch = false,
  noWorker = false,
}: ContextWish) =>
  ({
    viewport: { width, height },
    colorScheme: look,
    reducedMotion: 'reduce',
    hasTouch: touch,
    acceptDownloads: true,
    serviceWorkers: noWorker ? 'block' : 'allow',
  }) as const

/** Listens to what the pages of a browser say that they should not. */
export const complaintsOf = async (context: BrowserContext): Promise<Complaints> => {
  context.setDefaultTimeout(PATIENCE)
  const complaints: string[] = []
  await context.addInitScript(WATCH_POLICY)
  context.on('page', (page) => {
    page.on('pageerror', (error) => complaints.push(`${page.url()}: ${error.message}`))
    page.on('console', (message) => {
      if (message.type() === 'error' && !EXPECTED.test(message.text()))
        complaints.push(`${page.url()}: ${message.text()}`)
    })
  })
  return complaints
}

/** A browser of its own: nothing shared with another but the machine. */
export const newContext = async (
  browser: Browser,
  wish: ContextWish = {},
): Promise<{ readonly context: BrowserContext; readonly complaints: Complaints }> => {
  const context = await browser.newContext(contextOptions(wish))
  return { context, complaints: await complaintsOf(context) }
}
