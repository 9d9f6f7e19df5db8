import { describe, expect, it } from 'vitest'
import { benchRig, stoveNamed } from '../harness/benchTest.ts'
import { axeViolations, rested, sidewaysScroll, until } from '../harness/page.ts'

const rig = benchRig()

/** Every page of the frame's own rooms; each other room adds its own in its own test. */
const PATHS = ['/', '/help', '/workshop', '/no/such/page']

const settled =
  '!document.querySelector(".laying-out") && !document.body.textContent.includes("Working it out")'

describe('every page', () => {
  for (const look of ['light', 'dark'] as const)
    it(`has nothing for axe to find, ${look}`, async () => {
      const found: string[] = []
      for (const [width, height] of [
        [1280, 800],
        [360, 740],
      ] as const) {
        const { page, complaints } = await rig.open('/', { width, height, look })
        for (const path of PATHS) {
          await page.goto(new URL(path, rig.server().address).href)
          await page.locator('main h1').waitFor()
          await until(page, settled)
          found.push(...(await axeViolations(page)).map((fault) => `${path} ${width}: ${fault}`))
          expect(await sidewaysScroll(page), `${path} at ${width}`).toBeLessThanOrEqual(0)
        }
        expect(complaints).toEqual([])
      }
      expect(found).toEqual([])
    })
})

describe('the frame', () => {
  it('leads by keyboard alone to every place, and tells where one is', async () => {
    const { page } = await rig.open('/')
    await page.getByRole('link', { name: 'Heron', exact: true }).waitFor()
    await page.keyboard.press('Tab')
    await expect.poll(() => page.evaluate('document.activeElement.textContent')).toBe('Skip to the work')
    await page.keyboard.press('Enter')
    await expect.poll(() => page.evaluate('document.activeElement.id')).toBe('work')
    for (const place of ['Shelf', 'Workshop', 'Help', 'Stoves']) {
      await page
        .getByRole('navigation', { name: 'Places', exact: true })
        .getByRole('link', { name: place })
        .focus()
      await page.keyboard.press('Enter')
      await until(page, `document.title.startsWith('${place}')`)
      await expect.poll(() => page.evaluate('document.activeElement.id')).toBe('work')
    }
  })

  it('shows its keys at ?, unless single keys are turned off', async () => {
    const { page } = await rig.open('/')
    await page.getByRole('link', { name: 'Heron', exact: true }).waitFor()
    await page.keyboard.press('?')
    await page.getByRole('dialog', { name: 'Keys' }).waitFor()
    await page.keyboard.press('Escape')
    await page.getByRole('dialog', { name: 'Keys' }).waitFor({ state: 'hidden' })
    await page.getByRole('button', { name: 'Look', exact: true }).click()
    await page.getByRole('radio', { name: 'off' }).check({ force: true })
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    await page.keyboard.press('?')
    await rested(page)
    expect(await page.getByRole('dialog').count()).toBe(0)
  })

  it('keeps the look and the units that were chosen', async () => {
    const { page } = await rig.open('/')
    await page.getByRole('button', { name: 'Look', exact: true }).click()
    const sheet = page.getByRole('dialog')
    await sheet.getByRole('radio', { name: 'dark' }).check({ force: true })
    // Where the header has room for the units, the sheet does not ask for them again.
    await expect.poll(() => page.getByRole('radio', { name: 'inch' }).count()).toBe(1)
    await page.keyboard.press('Escape')
    await page.locator('.bench-units').getByRole('radio', { name: 'inch' }).check({ force: true })
    await page.setViewportSize({ width: 360, height: 740 })
    await page.getByRole('button', { name: 'Units and look' }).click()
    await expect.poll(() => page.getByRole('radio', { name: 'inch' }).isChecked()).toBe(true)
    await page.keyboard.press('Escape')
    await page.setViewportSize({ width: 1280, height: 800 })
    await page.reload()
    await page.locator('main h1').waitFor()
    await expect.poll(() => page.evaluate('document.documentElement.dataset.theme')).toBe('dark')
    await expect
      .poll(() => page.locator('.bench-units').getByRole('radio', { name: 'inch' }).isChecked())
      .toBe(true)
  })
})

describe('being shown round', () => {
  it('comes once, leads through the demo, and is ended for good', async () => {
    const { page } = await rig.open('/')
    await page.locator('main h1').waitFor()
    await page.evaluate("localStorage.removeItem('tinwright.guide')")
    // The rig marks every window as shown round; the help begins it anew.
    await page.goto(new URL('/help', rig.server().address).href)
    await page.getByRole('button', { name: 'Show me round' }).click()
    await page.getByText('They and their stoves are invented').waitFor()
    await page.getByRole('button', { name: 'Lay Redshank on the bench' }).click()
    const redshank = await stoveNamed(rig.server(), 'Redshank')
    await until(page, `location.pathname === '/stove/${redshank}'`)
    await page.getByRole('button', { name: 'Enough, I find my way' }).click()
    await expect.poll(() => page.getByRole('complementary', { name: 'Shown round' }).count()).toBe(0)
    await page.goto(rig.server().address)
    await page.locator('main h1').waitFor()
    await expect.poll(() => page.getByRole('complementary', { name: 'Shown round' }).count()).toBe(0)
  })
})
