import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, expect, it } from 'vitest'
import { needs } from '../../outsideProgram.ts'
import { ask, benchRig } from '../harness/benchTest.ts'
import { rested } from '../harness/page.ts'

const rig = benchRig()
const folder = mkdtempSync(join(tmpdir(), 'tinwright-job-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** A prediction with its bands, and a plan, on a busy machine [ms]. */
const LONG = 240_000

const kept = async (): Promise<readonly string[]> =>
  (await ask<readonly { readonly name: string }[]>(rig.server(), 'list')).map(({ name }) => name)

const ratio = (page: Page): Promise<string | null> =>
  page.locator('[data-answer="ratio"] .answer-value').textContent()

it('goes from two cans of the shelf to a variant, its comparison and its plan, and all of it is there again', async (context) => {
  needs(context, 'pdftotext')
  // A new stove from two cans.
  const { page, complaints } = await rig.open('/start')
  await page.getByLabel('Outside').selectOption('milk powder tin')
  await page.getByLabel('Inside it, for the fuel').selectOption('juice can')
  await page.getByText(/^Burns clean, about/).waitFor({ timeout: LONG })
  await page.getByLabel('Name', { exact: true }).fill('Dunlin')
  const lay = page.getByRole('button', { name: 'Lay it on the bench' })
  await expect.poll(() => lay.isEnabled()).toBe(true)
  await lay.click()
  await page.waitForURL(/\/stove\/[0-9a-f]{32}$/)
  const dunlin = page.url()

  // A row is dragged; the numbers follow; undo brings them back, redo takes them again.
  const ring = page.locator('.grip[data-key="row fuel can ring"]')
  await ring.waitFor()
  await page.locator('[data-answer="ratio"] .answer-value').waitFor()
  await rested(page)
  const [drawn, height] = [await ratio(page), await ring.getAttribute('aria-valuetext')]
  const box = await ring.boundingBox()
  if (box === null) throw new Error('The ring is nowhere on the page')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x, y + 25, { steps: 4 })
  await page.mouse.up()
  await expect.poll(() => ring.getAttribute('aria-valuetext')).not.toBe(height)
  await expect.poll(() => ratio(page)).not.toBe(drawn)
  await page.keyboard.press('Control+z')
  await expect.poll(() => ring.getAttribute('aria-valuetext')).toBe(height)
  await expect.poll(() => ratio(page)).toBe(drawn)
  await page.keyboard.press('Control+Shift+z')
  await expect.poll(() => ring.getAttribute('aria-valuetext')).not.toBe(height)
  const lowered = await ring.getAttribute('aria-valuetext')

  // It becomes a variant.
  await page.getByRole('button', { name: /^Save/ }).click()
  const sheet = page.locator('dialog[open]')
  await sheet.getByLabel('What did you change, and why?').fill('Ring lower, so that the gas mixes first.')
  await sheet.getByRole('radio', { name: /variant/ }).check()
  await sheet.getByLabel('Its name').fill('Dunlin low')
  await sheet.getByRole('button', { name: 'Make the variant' }).click()
  await page.waitForURL((url) => url.href !== dunlin && /\/stove\/[0-9a-f]{32}$/.test(url.pathname))
  const low = page.url()
  await expect.poll(kept).toEqual(expect.arrayContaining(['Dunlin', 'Dunlin low']))

  // The two beside each other.
  const idOf = (url: string): string => new URL(url).pathname.split('/').at(-1) as string
  await page.goto(new URL(`/beside/${idOf(dunlin)}+${idOf(low)}`, rig.server().address).href)
  await expect
    .poll(() => page.getByRole('row', { name: /^Firepower/ }).textContent(), { timeout: LONG })
    .toMatch(/kW.*kW.*(more|less)/)
  await page
    .getByText(/fuel can, ring: .*lower/)
    .first()
    .waitFor()

  // Its plan, read back by a program that is not ours.
  await page.goto(`${low}/plan`)
  const download = page.waitForEvent('download', { timeout: LONG })
  await page.getByRole('button', { name: /^Download Plan to print/ }).click()
  const file = await download
  const path = join(folder, file.suggestedFilename())
  await file.saveAs(path)
  expect(path).toMatch(/dunlin-low-plan-a4\.pdf$/)
  const words = spawnSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' }).stdout
  expect(words).toContain('Dunlin low')
  expect(words).toContain('carbon monoxide')

  // Closed and opened again, both are there, each as it was left.
  await page.goto(low)
  await page.reload()
  await expect.poll(() => ring.getAttribute('aria-valuetext')).toBe(lowered)
  await page.goto(dunlin)
  await expect.poll(() => ring.getAttribute('aria-valuetext')).toBe(height)
  expect(complaints).toEqual([])
})
