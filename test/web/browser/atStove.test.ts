import type { BrowserContext, Page } from 'playwright-core'
import { describe, expect, it, onTestFinished } from 'vitest'
import { TRIAL_FORMAT } from '#proof/trial/schema.ts'
import { standingEvents } from '#wire/trials.ts'
import { axeViolations, newContext, rested, sidewaysScroll } from '../harness/browser.ts'
import { mortalBrowser } from '../harness/mortalBrowser.ts'
import type { BenchServer } from '../harness/server.ts'
import { ask, makeTrial } from './ask.ts'
import { benchForTests } from './bench.ts'

const PHONE = { width: 360, height: 740, touch: true } as const
const areAlike = ([one, other]: readonly (readonly string[])[]): boolean => String(one) === String(other)

const EMPTY = JSON.stringify({ format: TRIAL_FORMAT, name: 'Test burn' })

describe('the phone at the stove', () => {
  const ready = benchForTests()
  let server: BenchServer
  const begin = async (test: Parameters<typeof ready>[0]) => {
    const bench = await ready(test)
    server = bench.server
    return bench
  }

  const open = async (context: BrowserContext, trial: string): Promise<Page> => {
    const page = await context.newPage()
    await page.goto(`${server.address}burn/${trial}`)
    await page.locator('.burn-buttons').waitFor()
    return page
  }
  const press = (page: Page, name: string) =>
    page.getByRole('main').getByRole('button', { name, exact: true }).tap()
  const startsWith = (page: Page, name: string) =>
    page
      .locator('.burn-buttons')
      .getByRole('button', { name: new RegExp(`^${name}`) })
      .tap()
  const standing = (page: Page, text: string) => page.locator('.burn-standing').getByText(text).waitFor()
  const understood = (page: Page) => page.getByRole('button', { name: /I am outdoors/ }).tap()
  const weigh = async (page: Page, button: string, figures: string): Promise<void> => {
    await startsWith(page, button)
    for (const figure of figures)
      await page
        .locator('.keypad-keys')
        .getByRole('button', { name: figure === '.' ? 'point' : figure, exact: true })
        .tap()
    await press(page, 'Weighed')
  }
  /** What is on the page of the log, the earliest first, without times. */
  const logged = async (page: Page): Promise<readonly string[]> =>
    (await page.locator('.burn-list li button span:nth-child(2)').allTextContents())
      .map((text) => text.replaceAll('\u00a0', ' '))
      .toReversed()
  const kept = async (trial: string) => standingEvents(await ask(server.address, 'events', { trial }))
  const said = async (trial: string): Promise<readonly string[]> =>
    (await kept(trial)).map(({ body }) => {
      const { event, of, mass } = JSON.parse(body)
      return event ?? `${of} ${mass}`
    })

  it('logs a whole burn with the network cut twice and the tab killed once: every event once', async (test) => {
    await begin(test)
    const trial = await makeTrial(server.address, 'Whole burn', EMPTY)
    const phone = mortalBrowser(PHONE)
    onTestFinished(phone.end)
    let context = await phone.begin()
    let page = await open(context, trial)
    await page.evaluate('navigator.serviceWorker.ready.then(() => true)')
    await understood(page)
    await weigh(page, 'Weigh fuel', '310')
    await startsWith(page, 'Lit')
    await startsWith(page, 'Flame on')
    await standing(page, '3 events, all with the workshop')

    const boil = page.locator('.burn-buttons').getByRole('button', { name: /^Boil/ })
    await rested(page)
    const place = await boil.boundingBox()
    await context.setOffline(true)
    await startsWith(page, 'Pot on')
    await press(page, 'Smoke')
    await standing(page, '5 events, 2 not yet with the workshop')
    await page.getByText('Everything is kept on this phone').waitFor()
    // What is said of the network moves no button from under the thumb.
    expect(await boil.boundingBox()).toEqual(place)
    await expect.poll(() => said(trial)).toHaveLength(3)
    await context.setOffline(false)
    await standing(page, '5 events, all with the workshop')

    await context.setOffline(true)
    await press(page, 'Smoke gone')
    await startsWith(page, 'Boil')
    await weigh(page, 'Weigh pot', '1395')
    await standing(page, '8 events, 3 not yet with the workshop')
    // As a phone does that wants the room, or goes flat: no page and no keeper of its stores is told. Only what was on
    // the drive is there afterwards.
    await phone.kill()
    // Still without a network: the page comes from the browser's keep, the log from the phone.
    context = await phone.begin(true)
    page = await open(context, trial)
    await standing(page, '8 events, 3 not yet with the workshop')
    const clock = page.getByRole('timer')
    await expect.poll(() => clock.textContent()).toMatch(/^\d+:\d{2}$/)
    const before = await clock.textContent()
    await expect.poll(() => clock.textContent()).not.toBe(before)
    await startsWith(page, 'Flame out')
    await weigh(page, 'Char weighed', '31.5')
    await standing(page, '10 events, 5 not yet with the workshop')
    await context.setOffline(false)
    await standing(page, '10 events, all with the workshop')

    const all = ['fuel 310 g', 'lit', 'flame on', 'pot on', 'smoke', 'smoke gone', 'boil', 'pot 1395 g']
    await expect.poll(() => said(trial)).toEqual([...all, 'flame out', 'char 31.5 g'])
    const ids = (await ask(server.address, 'events', { trial })).map(({ id }) => id)
    expect(ids).toHaveLength(10)
    expect(new Set(ids).size).toBe(10)
    expect(phone.complaints().filter((one) => !one.includes('404'))).toEqual([])
  })

  it('brings two phones at one burn together, corrections and all', async (test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'Two phones', EMPTY)
    const phones = await Promise.all([newContext(browser, PHONE), newContext(browser, PHONE)])
    const [one, two] = (await Promise.all(phones.map(({ context }) => open(context, trial)))) as [Page, Page]
    await understood(one)
    await understood(two)
    await startsWith(one, 'Lit')
    await two.locator('.burn-list').getByText('Lit').waitFor()
    await phones[1]?.context.setOffline(true)
    await startsWith(two, 'Flame on')
    await startsWith(one, 'Pot on')
    await weigh(two, 'Char weighed', '310')
    await phones[1]?.context.setOffline(false)
    await one.locator('.burn-list').getByText('Char: 310 g').waitFor()
    // The first phone puts right what the second one noted.
    await one.locator('.burn-list button', { hasText: 'Char: 310 g' }).tap()
    await one.getByLabel('Weight').fill('31 g')
    await press(one, 'Put it right')
    // And takes back its own last press.
    await startsWith(one, 'Boil')
    await press(one, 'Undo')
    await two.locator('.burn-list').getByText('Char: 31 g', { exact: true }).waitFor()
    for (const page of [one, two])
      await expect
        .poll(async () => [...(await logged(page))].sort())
        .toEqual(['Char: 31 g', 'Flame on', 'Lit', 'Pot on'])
    await expect.poll(async () => [await logged(one), await logged(two)]).toSatisfy(areAlike)
    for (const page of [one, two]) await standing(page, '4 events, all with the workshop')
    await expect.poll(() => said(trial)).toHaveLength(4)
    for (const { context } of phones) await context.close()
  })

  it('keeps a photo while the workshop is away, and lays it on the desk later', async (test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'Photo', EMPTY)
    const { context } = await newContext(browser, PHONE)
    const page = await open(context, trial)
    await understood(page)
    await context.setOffline(true)
    const picture = await page.screenshot({ type: 'jpeg' })
    await page
      .locator('.burn input[type=file]')
      .setInputFiles({ name: 'stove.jpg', mimeType: 'image/jpeg', buffer: picture })
    await standing(page, '0 events, 1 not yet with the workshop')
    await context.setOffline(false)
    await standing(page, '0 events, all with the workshop')
    await page.getByRole('link', { name: 'Trial desk' }).tap()
    const photo = page.locator('.trial-photos img')
    await photo.scrollIntoViewIfNeeded()
    await expect
      .poll(() => page.evaluate("document.querySelector('.trial-photos img')?.naturalWidth ?? 0"))
      .toBeGreaterThan(100)
    await context.close()
  })

  it('takes one press for one, and a glove that bounces for one too', async (test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'Gloves', EMPTY)
    const { context } = await newContext(browser, PHONE)
    const page = await open(context, trial)
    await understood(page)
    const boil = page.locator('.burn-buttons').getByRole('button', { name: /^Boil/ })
    await boil.tap()
    await boil.tap()
    await standing(page, '1 event, all with the workshop')
    await rested(page)
    const buttons = await page.locator('.burn-buttons button').all()
    for (const button of buttons) {
      const box = await button.boundingBox()
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(56)
    }
    await context.close()
  })

  it.for(['light', 'dark'] as const)('passes axe in every state, %s', async (look, test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'Accessible', EMPTY)
    const { context } = await newContext(browser, { ...PHONE, look })
    const page = await open(context, trial)
    // Cautions come first.
    expect(await axeViolations(page)).toEqual([])
    await understood(page)
    await startsWith(page, 'Lit')
    await standing(page, '1 event')
    expect(await axeViolations(page)).toEqual([])
    expect(await sidewaysScroll(page)).toBe(0)
    for (const pad of ['Weigh fuel', 'Damper to', 'Note']) {
      await startsWith(page, pad)
      expect(await axeViolations(page)).toEqual([])
      await press(page, 'Back')
    }
    await page.locator('.burn-list button').first().tap()
    expect(await axeViolations(page)).toEqual([])
    await context.close()
  })

  it('can be worked by keyboard alone', async (test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'Keys', EMPTY)
    const { context } = await newContext(browser)
    const page = await open(context, trial)
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: /^Lit/ }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: /^Weigh fuel/ }).focus()
    await page.keyboard.press('Enter')
    await page.locator('.keypad button').first().focus()
    await page.keyboard.type('31,5')
    await page.getByRole('button', { name: 'Weighed', exact: true }).focus()
    await page.keyboard.press('Enter')
    await page.locator('.burn-list').getByText('Fuel: 31.5 g').waitFor()
    await page.getByRole('button', { name: /^Note/ }).focus()
    await page.keyboard.press('Enter')
    await page.keyboard.press('Escape')
    await expect.poll(() => page.locator('dialog[open]').count()).toBe(0)
    await context.close()
  })
})
