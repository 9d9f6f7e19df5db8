import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { TRIAL_FORMAT } from '#proof/trial/schema.ts'
import { axeViolations, newContext } from '../harness/browser.ts'
import { until } from '../harness/page.ts'
import type { BenchServer } from '../harness/server.ts'
import { ask, makeTrial } from './ask.ts'
import { benchForTests } from './bench.ts'

const example = join(import.meta.dirname, '..', '..', '..', 'examples', 'heron.logger.csv')
/** The pages are kept once the worker that keeps them is at work. */
const KEPT = 'navigator.serviceWorker.ready.then(({ active }) => active.state === "activated")'

/** A burn of our own invention at the time of examples/heron.logger.csv. */
const burnt = (name: string): string =>
  JSON.stringify({
    format: TRIAL_FORMAT,
    name,
    day: '2031-05-17',
    stove: { name: 'Heron' },
    fuel: { moisture: {} },
    weather: { altitude: '240 m' },
    pot: {},
    instruments: { scale: {}, thermometer: {}, clock: {} },
    phases: [{ phase: 'high power', from: { at: '1 min', fuel: '300 g' }, to: { at: '4 min' } }],
    events: [
      { id: `${name}-lit`, at: '2031-05-17T09:10:40Z', event: 'lit' },
      { id: `${name}-boil`, at: '2031-05-17T09:19:00Z', event: 'boil' },
    ],
  })

describe('the desk of a burn', () => {
  const ready = benchForTests()
  let server: BenchServer
  const begin = async (test: Parameters<typeof ready>[0]) => {
    const bench = await ready(test)
    server = bench.server
    return bench
  }
  const phases = async (trial: string) =>
    JSON.parse((await ask(server.address, 'open', { document: trial })).revision.text).phases
  const trialsOf = async (page: Page, name: string): Promise<void> => {
    const heads = await ask(server.address, 'list', { kinds: ['stove'] })
    await page.goto(`${server.address}stove/${heads.find((head) => head.name === name)?.id}/trials`)
    await page.getByRole('button', { name: 'Take in trial files' }).waitFor()
  }

  it('gets a logger’s file that came in among trials, is lined up by keys, and takes readings by a press', async (test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'Logged burn', burnt('logged'))
    const { context, complaints } = await newContext(browser)
    const page = await context.newPage()
    await trialsOf(page, 'Heron')
    const list = { name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from('item,cost\nbeans,3\n') }
    const logger = { name: 'heron.logger.csv', mimeType: 'text/csv', buffer: readFileSync(example) }
    await page.getByLabel('Trial files to take in').setInputFiles([logger, list])
    await page.getByText('list.csv will not do, and nothing was changed. What comes in here').waitFor()
    await page.getByText('heron.logger.csv is a logger’s file').waitFor()
    expect(await axeViolations(page)).toEqual([])
    await page.getByLabel('Which burn was it?').selectOption({ value: trial })
    await page.getByRole('button', { name: 'Lay it beside this burn' }).click()
    await page.locator('.logger-chart canvas').first().waitFor()
    expect(page.url()).toContain(`/trial/${trial}`)

    // Which channel is what is not taken for granted, nor where the clocks meet.
    await page.getByText('Nobody has brought the clocks together yet').waitFor()
    expect(await page.locator('.offers').count()).toBe(0)
    const mark = page.locator('.align-steps output')
    await expect.poll(() => mark.textContent()).toBe('no mark yet')
    await page.getByRole('application', { name: /^Readings over time/ }).focus()
    await page.keyboard.press('Shift+ArrowRight')
    await expect.poll(() => mark.textContent()).toMatch(/^09:/)
    const before = await mark.textContent()
    await page.keyboard.press('Shift+ArrowLeft')
    await expect.poll(() => mark.textContent()).not.toBe(before)
    await page.getByLabel('In the log').selectOption({ label: '8:20 Boil' })
    await page.getByRole('button', { name: 'Line up here' }).click()
    await page.getByText('Lined up at one moment').waitFor()
    await page.getByRole('button', { name: 'Let go, and slide from here' }).click()
    await page.getByLabel('First reading after lighting, in seconds').fill('-40')
    await page.getByText('0:40 before lighting').waitFor()

    await page.getByRole('combobox', { name: /^Water/ }).selectOption('Pot (°C)')
    await page.getByRole('combobox', { name: /^On it stood/ }).selectOption('stove')
    const offers = page.locator('.offers tbody tr')
    await expect.poll(() => offers.count()).toBe(3)
    await expect.poll(() => offers.nth(0).textContent()).toContain('09:11:40 by the logger')
    expect((await phases(trial))[0].from.water).toBeUndefined()
    expect(await axeViolations(page)).toEqual([])
    await page
      .getByRole('button', { name: /^put it there: High power, fuel not yet burnt at the end/ })
      .click()
    await expect.poll(async () => (await phases(trial))[0].to.fuel).toMatch(/^\d+\.\d g$/)
    expect((await phases(trial))[0].to.water).toBeUndefined()
    await page.getByRole('button', { name: 'Put all 2 there' }).click()
    await expect.poll(async () => (await phases(trial))[0].to.water).toMatch(/^\d+\.\d °C$/)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('shows what waits in this browser, not what the workshop heard last', async (test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'Far away', burnt('away'))
    const { context } = await newContext(browser)
    const page = await context.newPage()
    await page.goto(`${server.address}trial/${trial}`)
    const fuel = page.getByLabel('High power, Fuel not yet burnt at the end')
    const sack = page.getByLabel('Sack or bundle', { exact: false })
    await fuel.waitFor()
    await until(page, KEPT)
    await server.kill()
    await fuel.fill('112 g')
    await page.getByText('Kept in this browser, on its way to the workshop').waitFor()
    // Reloaded in the middle of a word.
    await sack.fill('sack 7')
    await page.reload()
    await expect.poll(() => fuel.inputValue()).toBe('112 g')
    await expect.poll(() => sack.inputValue()).toBe('sack 7')
    await page.getByText('Kept in this browser, on its way to the workshop').waitFor()
    await server.start()
    await page.locator('[data-keeping="kept"]').waitFor()
    await expect.poll(async () => (await phases(trial))[0].to.fuel).toBe('112 g')
    await expect.poll(() => sack.inputValue()).toBe('sack 7')
    await context.close()
  })
})
