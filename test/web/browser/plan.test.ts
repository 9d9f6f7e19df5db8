import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import type { Page } from 'playwright-core'
import { afterAll, describe, expect, it } from 'vitest'
import { needs } from '../../outsideProgram.ts'
import { benchRig, stoveNamed } from '../harness/benchTest.ts'
import { axeViolations, rested, sidewaysScroll } from '../harness/page.ts'

const rig = benchRig()
const folder = mkdtempSync(join(tmpdir(), 'tinwright-plan-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** A plan with its bands, and everything in one archive, on a busy machine [ms]. */
const LONG = 300_000

const openPlan = async (name: string, wish?: Parameters<typeof rig.open>[1]) => {
  const opened = await rig.open(`/stove/${await stoveNamed(rig.server(), name)}/plan`, wish)
  await opened.page.getByRole('heading', { name: 'Plan', exact: true }).waitFor()
  return opened
}

const fetched = async (page: Page, button: RegExp): Promise<string> => {
  const wait = page.waitForEvent('download', { timeout: LONG })
  await page.getByRole('button', { name: button }).click()
  const download = await wait
  const path = join(folder, download.suggestedFilename())
  await download.saveAs(path)
  return path
}

describe('the plan of a stove', () => {
  it('comes as a PDF with the name, terms and paper that were asked for', async (context) => {
    needs(context, 'pdfinfo')
    needs(context, 'pdftotext')
    const { page, complaints } = await openPlan('Redshank')
    await page.getByLabel('By', { exact: true }).fill('Ada of the Long Bank')
    await page.getByLabel('Terms').fill('CC BY-SA 4.0')
    await page.getByRole('combobox', { name: 'Paper' }).selectOption('Letter')
    await page.getByLabel('Day').fill('2031-05-17')
    const path = await fetched(page, /^Download Plan to print/)
    expect(path).toMatch(/redshank-plan-letter\.pdf$/)
    const info = spawnSync('pdfinfo', [path], { encoding: 'utf8' }).stdout
    expect(info).toMatch(/Title:\s+Redshank: a plan/)
    expect(info).toMatch(/Page size:\s+612 x 792 pts \(letter\)/)
    expect(Number(/Pages:\s+(\d+)/.exec(info)?.[1])).toBeGreaterThan(15)
    const text = spawnSync('pdftotext', [path, '-'], { encoding: 'utf8' }).stdout
    expect(text).toContain('Ada of the Long Bank · CC BY-SA 4.0 · 2031-05-17')
    // What was said stays in this browser.
    await page.reload()
    await expect
      .poll(() => page.getByLabel('By', { exact: true }).inputValue(), { timeout: LONG })
      .toBe('Ada of the Long Bank')
    expect(complaints).toEqual([])
  })

  it('shows its pages, and one of them large, by keyboard', async () => {
    const { page, complaints } = await openPlan('Heron')
    await page.getByRole('button', { name: 'Look at the pages' }).click()
    await page.locator('.plan-page').first().waitFor({ timeout: LONG })
    await rested(page)
    const pages = await page.locator('.plan-page').count()
    expect(pages).toBeGreaterThan(10)
    // Every page holds its drawing and its words.
    await expect
      .poll(() =>
        page.evaluate(
          'Math.min(...[...document.querySelectorAll(".plan-paper")].map((at) => at.shadowRoot?.querySelectorAll("text").length ?? 0))',
        ),
      )
      .toBeGreaterThan(3)
    expect(await axeViolations(page)).toEqual([])
    await page.getByRole('button', { name: /^Look at page 1,/ }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('dialog').waitFor()
    await page.keyboard.press('ArrowRight')
    await page.getByText(`Page 2 of ${pages}`).waitFor()
    expect(await axeViolations(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
  })

  it('is given up in the middle, and made all the same afterwards: everything in one archive', async () => {
    const { page, complaints } = await openPlan('Heron')
    await page.getByRole('button', { name: 'Download everything (ZIP)' }).click()
    await page.getByRole('button', { name: 'Cancel' }).click()
    await page.getByRole('button', { name: 'Cancel' }).waitFor({ state: 'detached' })
    const path = await fetched(page, /^Download everything/)
    const names = Object.keys(unzipSync(readFileSync(path)))
    for (const wanted of [
      'READ-ME.txt',
      'heron-plan-a4.pdf',
      'heron-plan.html',
      'heron.stove.json',
      'templates/heron-templates-a4.pdf',
      'solids/heron-parts.3mf',
      'cards/heron-sizes.txt',
    ])
      expect(names).toContain(wanted)
    expect(names.filter((name) => name.endsWith('.png')).length).toBeGreaterThan(5)
    expect(complaints).toEqual([])
  })

  it('has its cautions before the downloads and nothing that axe finds, on a phone and in the dark', async () => {
    const { page, complaints } = await openPlan('Greylag', {
      width: 360,
      height: 740,
      look: 'dark',
      touch: true,
    })
    expect(await page.getByRole('complementary', { name: 'Before you cut or burn' }).textContent()).toContain(
      'carbon monoxide',
    )
    expect(await sidewaysScroll(page)).toBe(0)
    expect(await axeViolations(page)).toEqual([])
    expect(complaints).toEqual([])
  })
})
