import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { waterBoilingTrial } from '../../proof/trial/waterBoiling.ts'
import { axeViolations, newContext, sidewaysScroll } from '../harness/browser.ts'
import type { BenchServer } from '../harness/server.ts'
import { ask, makeTrial } from './ask.ts'
import { benchForTests } from './bench.ts'

const examples = join(import.meta.dirname, '..', '..', '..', 'examples')

const whole = (
  name: string,
  change: (trial: ReturnType<typeof waterBoilingTrial>) => unknown = (one) => one,
) => JSON.stringify(change({ ...waterBoilingTrial(), name }))

describe('burns on the desk', () => {
  const ready = benchForTests()
  let server: BenchServer
  const begin = async (test: Parameters<typeof ready>[0]) => {
    const bench = await ready(test)
    server = bench.server
    return bench
  }
  const desk = async (page: Page, trial: string): Promise<void> => {
    await page.goto(`${server.address}trial/${trial}`)
    await page.locator('.log-table, .log-add').first().waitFor()
  }
  const stove = async (name: string) => {
    const heads = await ask(server.address, 'list', { kinds: ['stove'] })
    return heads.find((head) => head.name === name)?.id ?? ''
  }
  const textOf = async (trial: string) =>
    JSON.parse((await ask(server.address, 'open', { document: trial })).revision.text)

  it('starts a burn, asks for what is missing, works it out, and keeps it', async (test) => {
    const { browser } = await begin(test)
    const { context } = await newContext(browser)
    const page = await context.newPage()
    await page.goto(`${server.address}stove/${await stove('Redshank')}/trials`)
    await page.getByLabel('Variant', { exact: false }).first().fill('A, as planned')
    await page.getByRole('button', { name: 'Start a burn' }).click()
    await page.getByText('Still to say').waitFor()
    const trial = page.url().split('/').at(-1) ?? ''
    const fill = (label: string | RegExp, text: string) => page.getByLabel(label).first().fill(text)
    await page.getByLabel('Fuel', { exact: true }).selectOption('wood-chips')
    await page.getByLabel('The stove was').selectOption('cold')
    await fill('Sample before drying', '60 g')
    await fill('Sample after drying', '54 g')
    await page.getByText('Moisture, wet basis: 10.0 %').waitFor()
    await fill('Air temperature, in the shade', '18')
    await page.getByText('Write 18 °C or 18 °F').first().waitFor()
    await fill('Air temperature, in the shade', '18 °C')
    await fill('Height above the sea', '240 m')
    await fill('Empty pot, dry', '14.5 oz')
    await page.getByLabel('off', { exact: true }).check()
    await fill('Scale: smallest step', '1 g')
    await fill('Thermometer: smallest step', '0.1 K')
    await fill('Clock: smallest step', '1 s')
    for (const [label, text] of [
      ['Time after lighting at the start', '1 min'],
      ['Time after lighting at the end', '9 min 30 s'],
      ['Fuel not yet burnt at the start', '310 g'],
      ['Fuel not yet burnt at the end', '180 g'],
      ['Pot with water at the start', '1412 g'],
      ['Pot with water at the end', '1395 g'],
      ['Water at the start', '17.5 °C'],
      ['Water at the end', '99 °C'],
    ] as const)
      await fill(`High power, ${label}`, text)
    await page.getByRole('heading', { name: 'What it came to' }).waitFor()
    await page.getByText('How this was worked out: fuel burnt').click()
    await page.getByText('= 310 − 180').first().waitFor()
    await expect.poll(() => page.getByText('written from memory').count()).toBeGreaterThan(0)
    await page.getByText('Kept in the workshop').waitFor()
    await expect.poll(async () => (await textOf(trial)).pot?.weight).toBe('14.5 oz')
    await page.reload()
    await page.getByRole('heading', { name: 'What it came to' }).waitFor()
    await context.close()
  })

  it('reads an ugly file after asking, matches the boil, and takes it into the log', async (test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'With a logger', whole('With a logger'))
    const { context, complaints } = await newContext(browser)
    const page = await context.newPage()
    await desk(page, trial)
    const file = page.locator('.logger input[type=file]')
    await file.setInputFiles(join(examples, 'loggers', '05-which-day.csv'))
    await page.getByText('Which is the day in').waitFor()
    await page.getByLabel('day month year').check()
    await page.getByRole('button', { name: 'That is how it is' }).click()
    await page.locator('.logger-chart canvas').first().waitFor()
    await page.getByRole('button', { name: 'Read files of this logger so next time' }).click()
    await page.getByText('the next file with these headings is read the same way').waitFor()
    // The next one is not asked about any more.
    await page.getByRole('button', { name: 'take it away' }).click()
    await file.setInputFiles({
      name: 'next.csv',
      mimeType: 'text/csv',
      buffer: readFileSync(join(examples, 'loggers', '05-which-day.csv')),
    })
    await page.getByText('was read last time').waitFor()
    await file.setInputFiles(join(examples, 'heron.logger.csv'))
    await page.getByText('One reading stands out').waitFor()
    await page.getByText(/nothing for \d+\ss, where/).waitFor()
    await page.getByRole('cell', { name: '09:10:00', exact: true }).waitFor()
    // Which of two temperatures is the water is not taken for granted.
    expect(await page.locator('.offers').count()).toBe(0)
    await page.getByRole('combobox', { name: /^Water/ }).selectOption('Pot (°C)')
    await page.locator('.offers tbody tr').first().waitFor()
    expect(await axeViolations(page)).toEqual([])
    // It is there again after a reload.
    await page.reload()
    await page.getByText('heron.logger.csv').waitFor()
    await page.locator('.logger-chart canvas').first().waitFor()
    await page.getByRole('application').first().focus()
    for (const key of ['+', 'ArrowRight', '0']) await page.keyboard.press(key)
    expect(complaints.filter((one) => !one.includes('404'))).toEqual([])
    await context.close()
  })

  it('tells the demo series apart: one helps, one harms, one is lucky', async (test) => {
    const { browser } = await begin(test)
    const { context, complaints } = await newContext(browser)
    const page = await context.newPage()
    // Six stoves and 24 burns come in one by one, and each is compared as it comes.
    page.setDefaultTimeout(60_000)
    // Of a workshop that does not have it any more, or never had.
    const there = await ask(server.address, 'list', { kinds: ['stove'] })
    const { id, version } = there.find(({ name }) => name === 'Heron A, as planned') ?? { id: '', version: 0 }
    const step = { id: 'away', client: 'test', at: '2031-05-17T14:05:00Z' }
    await ask(server.address, 'remove', { act: step, document: id, version })
    await page.goto(`${server.address}stove/${await stove('Redshank')}/trials`)
    await page.getByRole('button', { name: 'Lay in the invented series' }).click()
    await page.getByRole('heading', { name: 'Heron A, as planned: how it really burnt' }).waitFor()
    // The series does not say which is which; its README does.
    await page
      .getByText(/“B, wider bore” helps/)
      .first()
      .waitFor()
    await page
      .getByText(/“D, narrow windows” harms/)
      .first()
      .waitFor()
    await page
      .getByText(/“C, taller riser”: not told yet/)
      .first()
      .waitFor()
    await page
      .getByText(/the true gain most likely lies between/)
      .first()
      .waitFor()
    await page
      .getByText(/burns of each, \d+ more/)
      .first()
      .waitFor()
    await expect
      .poll(() => page.locator('.dot-plot').first().locator('.dot').count(), { timeout: 60_000 })
      .toBeGreaterThanOrEqual(24)
    await page.getByRole('button', { name: 'Draw an order by lot' }).click()
    await page.getByText('Burn in this order').waitFor()
    expect(await axeViolations(page)).toEqual([])
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await axeViolations(page)).toEqual([])
    await page.setViewportSize({ width: 360, height: 740 })
    expect(await sidewaysScroll(page)).toBe(0)
    expect(await axeViolations(page)).toEqual([])
    await page.getByLabel('Held against').selectOption('D, narrow windows')
    await page
      .getByText(/“A, as planned” helps/)
      .first()
      .waitFor()
    // Each burn beside its prediction is worked out when asked for, and can be stopped.
    await page.getByRole('button', { name: /^Hold all 24 burns/ }).click()
    await page.getByRole('button', { name: 'Stop' }).click()
    await page.getByRole('button', { name: /^Hold all 24 burns/ }).waitFor()
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'As a table (CSV)' }).click(),
    ])
    expect(readFileSync(await download.path(), 'utf8')).toContain('D, narrow windows')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('keeps what is typed without a workshop, and says so; two windows do not overwrite each other', async (test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'Twice', whole('Twice'))
    const { context } = await newContext(browser)
    const page = await context.newPage()
    await desk(page, trial)
    await context.setOffline(true)
    await page.getByLabel('Sack or bundle').fill('sack 3')
    await page.getByText('Kept in this browser, on its way to the workshop').waitFor()
    await context.setOffline(false)
    await expect.poll(async () => (await textOf(trial)).fuel.batch).toBe('sack 3')
    await page.getByText('Kept in the workshop').waitFor()
    const other = await context.newPage()
    await desk(other, trial)
    await other.getByLabel('Which burn of its series').fill('7')
    await expect.poll(async () => (await textOf(trial)).place).toBe(7)
    // The first window shows it without being asked, and goes on from there.
    await expect.poll(() => page.getByLabel('Which burn of its series').inputValue()).toBe('7')
    await page.getByLabel('Sack or bundle').fill('sack 4')
    await expect.poll(async () => (await textOf(trial)).fuel.batch).toBe('sack 4')
    await expect.poll(async () => (await textOf(trial)).place).toBe(7)
    await context.close()
  })

  it('goes out as a file and comes back in', async (test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'To hand on', whole('To hand on'))
    const { context } = await newContext(browser)
    const page = await context.newPage()
    await desk(page, trial)
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ])
    expect(download.suggestedFilename()).toBe('to-hand-on.trial.json')
    const path = await download.path()
    await page.goto(`${server.address}stove/${await stove('Heron')}/trials`)
    await page.getByLabel('Trial files to take in').setInputFiles({
      name: 'back.trial.json',
      mimeType: 'application/json',
      buffer: readFileSync(path),
    })
    await page.getByText('back.trial.json: here already: “To hand on”.').waitFor()
    await page.getByLabel('Trial files to take in').setInputFiles({
      name: 'other.trial.json',
      mimeType: 'application/json',
      buffer: Buffer.from(
        whole('Handed on', (one) => ({
          ...one,
          events: one.events.map((entry) => ({ ...entry, id: `other-${entry.id}` })),
        })),
      ),
    })
    await page.getByText('other.trial.json: new: “Handed on”.').waitFor()
    // The same burn in more words is no second one.
    await page.getByLabel('Trial files to take in').setInputFiles({
      name: 'longer.trial.json',
      mimeType: 'application/json',
      buffer: Buffer.from(
        whole('Handed on', (one) => ({
          ...one,
          events: [
            ...one.events.map((entry) => ({ ...entry, id: `other-${entry.id}` })),
            { id: 'other-out', at: '2031-05-17T10:05:00Z', event: 'flame out' },
          ],
        })),
      ),
    })
    await page.getByText('longer.trial.json: gone on: “Handed on”.').waitFor()
    await page.getByText('one entry of its log was new and is in it now').waitFor()
    await expect
      .poll(
        async () =>
          (await ask(server.address, 'list', { kinds: ['trial'] })).filter(
            ({ name }) => name === 'To hand on' || name === 'Handed on',
          ).length,
      )
      .toBe(2)
    await context.close()
  })

  it.for([
    ['light', 1280],
    ['dark', 360],
  ] as const)('passes axe and fits the page, %s at %i px', async ([look, width], test) => {
    const { browser } = await begin(test)
    const trial = await makeTrial(server.address, 'Looked at', whole('Looked at'))
    const { context } = await newContext(browser, { look, width })
    const page = await context.newPage()
    await desk(page, trial)
    await page.getByRole('heading', { name: 'What it came to' }).waitFor()
    await page.getByText('How this was worked out').first().click()
    expect(await axeViolations(page)).toEqual([])
    expect(await sidewaysScroll(page)).toBe(0)
    await context.close()
  })
})
