import type { BrowserContext, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { PATIENCE } from '#scripts/openBench/browser.ts'
import { ask, benchRig, stoveNamed } from '../harness/benchTest.ts'

const rig = benchRig()
const WAIT = { timeout: PATIENCE }

/** Streams of changes that a browser holds open. */
const streamsOf = (context: BrowserContext): ReadonlySet<Page> => {
  const open = new Set<Page>()
  context.on('request', (request) => {
    if (new URL(request.url()).pathname === '/api/watch') open.add(request.frame().page())
  })
  const over = (request: {
    readonly url: () => string
    readonly frame: () => { readonly page: () => Page }
  }) => {
    if (new URL(request.url()).pathname === '/api/watch') open.delete(request.frame().page())
  }
  context.on('requestfinished', over)
  context.on('requestfailed', over)
  context.on('page', (page) => page.on('close', () => open.delete(page)))
  return open
}

const rename = async (from: string, to: string): Promise<void> => {
  const document = await stoveNamed(rig.server(), from)
  const { document: head } = await ask<{ readonly document: { readonly version: number } }>(
    rig.server(),
    'open',
    {
      document,
    },
  )
  await ask(rig.server(), 'rename', {
    act: { id: `rename-${to.replace(' ', '-')}`, client: 'test', at: new Date().toISOString() },
    document,
    version: head.version,
    name: to,
  })
}

const shows = (page: Page, name: string): Promise<void> =>
  page.getByRole('link', { name, exact: true }).waitFor()

/** Tells a page what a browser tells it when its window is covered or uncovered: here all windows are in sight. */
const turn = (page: Page, state: 'hidden' | 'visible'): Promise<void> =>
  page.evaluate(`Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => '${state}' })
    document.dispatchEvent(new Event('visibilitychange'))`)

describe('many windows of one browser', () => {
  it('hear of every change over one stream, whichever of them is closed and whenever the server goes', async () => {
    const { page: first, context, another } = await rig.open('/')
    const streams = streamsOf(context)
    await shows(first, 'Heron')
    const pages = [first]
    // Two more than a browser opens lines to one host.
    while (pages.length < 8) pages.push(await another('/'))
    await first.reload()
    for (const page of pages) await shows(page, 'Heron')
    await expect.poll(() => streams.size, WAIT).toBe(1)
    await rename('Heron', 'Night heron')
    for (const page of pages) await shows(page, 'Night heron')

    for (let n = 0; n < 2; n++) {
      const [holder] = streams
      await holder?.close()
      pages.splice(pages.indexOf(holder as Page), 1)
      await expect.poll(() => streams.size, WAIT).toBe(1)
    }
    await rename('Night heron', 'Grey heron')
    for (const page of pages) await shows(page, 'Grey heron')

    await rig.server().kill()
    for (const page of pages) await page.getByText('The workshop does not answer.').waitFor()
    await rig.server().start()
    await rename('Grey heron', 'White heron')
    for (const page of pages) {
      await page.getByText('The workshop does not answer.').waitFor({ state: 'detached' })
      await shows(page, 'White heron')
    }
    await expect.poll(() => streams.size, WAIT).toBe(1)
  })

  it('hold no stream while they are not seen, and ask for what went by when they are', async () => {
    const { page: one, context, another } = await rig.open('/')
    const streams = streamsOf(context)
    await one.reload()
    // The first window that asks holds the stream: the other is opened when it does.
    await expect.poll(() => streams.size === 1 && streams.has(one), WAIT).toBe(true)
    const two = await another('/')
    for (const page of [one, two]) await shows(page, 'Redshank')
    await expect.poll(() => streams.size === 1 && streams.has(one), WAIT).toBe(true)
    await turn(one, 'hidden')
    await expect.poll(() => streams.size === 1 && streams.has(two), WAIT).toBe(true)
    await turn(two, 'hidden')
    await expect.poll(() => streams.size, WAIT).toBe(0)
    await rename('Redshank', 'Spotted redshank')
    await turn(one, 'visible')
    await turn(two, 'visible')
    for (const page of [one, two]) await shows(page, 'Spotted redshank')
    await expect.poll(() => streams.size, WAIT).toBe(1)
  })
})
