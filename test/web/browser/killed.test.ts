import type { BrowserContext, Page } from 'playwright-core'
import { describe, expect, it, onTestFinished } from 'vitest'
import { TRIAL_FORMAT } from '#proof/trial/schema.ts'
import { ask, SHOWN_ROUND, stoveNamed } from '../harness/benchTest.ts'
import { mortalBrowser } from '../harness/mortalBrowser.ts'
import { until } from '../harness/page.ts'
import { ask as askTrial, makeTrial } from './ask.ts'
import { benchForTests } from './bench.ts'

const ring = (page: Page) => page.locator('.grip[data-key="row fuel can ring"]')
const heightOf = (page: Page): Promise<string | null> => ring(page).getAttribute('aria-valuetext')

interface Draft {
  readonly text: string
  readonly unsaved: boolean
}

describe('a browser that is killed', () => {
  const begin = benchForTests()

  it('has every edit that it called kept, without the workshop, and sends them once', async (test) => {
    const { server } = await begin(test)
    const heron = await stoveNamed(server, 'Heron')
    const mortal = mortalBrowser({})
    onTestFinished(mortal.end)
    const open = async (): Promise<Page> => {
      const context = await mortal.begin()
      await context.addInitScript(SHOWN_ROUND)
      const page = await context.newPage()
      await page.goto(`${server.address}stove/${heron}`)
      await ring(page).waitFor()
      return page
    }
    let page = await open()
    await until(page, 'navigator.serviceWorker.ready.then(({ active }) => active.state === "activated")')
    await server.kill()
    const before = await heightOf(page)
    await ring(page).focus()
    await page.keyboard.press('ArrowDown')
    await expect.poll(() => heightOf(page)).not.toBe(before)
    const moved = await heightOf(page)
    await page.locator('.keeping[data-kind="kept here only"]').waitFor()
    await mortal.kill()
    page = await open()
    await expect.poll(() => heightOf(page)).toBe(moved)
    await page.getByRole('button', { name: /^Undo/ }).first().click()
    await expect.poll(() => heightOf(page)).toBe(before)
    await page.getByRole('button', { name: /^Redo/ }).first().click()
    await expect.poll(() => heightOf(page)).toBe(moved)
    await mortal.kill()
    await server.start()
    page = await open()
    await page.locator('.keeping[data-kind="kept"]').waitFor()
    await expect.poll(() => heightOf(page)).toBe(moved)
    const drafts = async () =>
      (await ask<readonly Draft[]>(server, 'drafts', { document: heron })).filter(({ unsaved }) => unsaved)
    await expect.poll(drafts).toHaveLength(1)
    expect(mortal.complaints()).toEqual([])
  })
})

describe('the phone of a burn that is killed at any moment', () => {
  const begin = benchForTests()
  const EMPTY = JSON.stringify({ format: TRIAL_FORMAT, name: 'Killed often' })

  it('has every press that it counted, and the workshop each of them once', async (test) => {
    const { server } = await begin(test)
    const trial = await makeTrial(server.address, 'Killed often', EMPTY)
    const mortal = mortalBrowser({ width: 360, height: 740, touch: true })
    onTestFinished(mortal.end)
    const open = async (context: BrowserContext): Promise<Page> => {
      const page = await context.newPage()
      await page.goto(`${server.address}burn/${trial}`)
      await page.locator('.burn-buttons').waitFor()
      return page
    }
    /** What the page says it has noted. */
    const counted = async (page: Page): Promise<number> =>
      Number.parseInt((await page.locator('.burn-standing [role=status]').textContent()) ?? '', 10)
    const press = (page: Page, name: 'Smoke' | 'Smoke gone'): Promise<void> =>
      page.getByRole('main').getByRole('button', { name, exact: true }).tap()
    let context = await mortal.begin()
    let page = await open(context)
    await until(page, 'navigator.serviceWorker.ready.then(({ active }) => active.state === "activated")')
    await page.getByRole('button', { name: /I am outdoors/ }).tap()
    let least = 0
    for (let round = 0; round < 4; round++) {
      await press(page, 'Smoke')
      await expect.poll(() => counted(page)).toBeGreaterThan(least)
      least = await counted(page)
      // This one may be lost: nobody was told of it yet. In every second round it is on its way to the workshop too.
      await press(page, 'Smoke gone')
      await mortal.kill()
      context = await mortal.begin(round % 2 === 0)
      page = await open(context)
      const there = await counted(page)
      expect([least, least + 1]).toContain(there)
      least = there
    }
    await context.setOffline(false)
    await page.locator('.burn-standing').getByText(`${least} events, all with the workshop`).waitFor()
    const kept = await askTrial(server.address, 'events', { trial })
    expect(kept).toHaveLength(least)
    expect(new Set(kept.map(({ id }) => id)).size).toBe(least)
  })
})
