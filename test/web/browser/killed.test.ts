import type { Page } from 'playwright-core'
import { describe, expect, it, onTestFinished } from 'vitest'
import { ask, SHOWN_ROUND, stoveNamed } from '../harness/benchTest.ts'
import { mortalBrowser } from '../harness/mortalBrowser.ts'
import { until } from '../harness/page.ts'
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
