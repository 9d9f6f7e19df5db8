import { describe, expect, it } from 'vitest'
import { ask, benchRig } from '../harness/benchTest.ts'
import { axeViolations, sidewaysScroll } from '../harness/page.ts'

const rig = benchRig()

const LONG = 240_000

interface Head {
  readonly id: string
  readonly kind: string
  readonly name: string
  readonly head: string
}

const cans = async (): Promise<readonly string[]> =>
  (await ask<readonly Head[]>(rig.server(), 'list'))
    .filter(({ kind }) => kind === 'can')
    .map(({ name }) => name)

const openShelf = async (wish?: Parameters<typeof rig.open>[1]) => {
  const opened = await rig.open('/shelf', wish)
  await opened.page.getByRole('button', { name: 'Change lever-lid tin' }).waitFor()
  return opened
}

describe('the shelf', () => {
  it('takes a can by tape measure, says what is wrong at its field, changes it and takes it back', async () => {
    const { page, complaints } = await openShelf()
    await page.getByRole('button', { name: 'Add a can' }).click()
    await page.getByLabel('Your name for it').fill('soup can')
    await page.getByLabel(/Across, over the seam/).fill('76')
    await page.getByLabel('Height', { exact: false }).first().fill('110 mm')
    // A number without its unit is refused at its own field.
    await page.getByText(/76 will not do/).waitFor()
    await expect
      .poll(() => page.getByLabel(/Across, over the seam/).getAttribute('aria-invalid'))
      .toBe('true')
    await page.getByLabel(/Across, over the seam/).fill('76 mm ± 0.3 mm')
    await page.getByText(/^Reads as 76\smm/).waitFor()
    await page.getByRole('button', { name: 'Lay it on the shelf' }).click()
    await page.getByRole('button', { name: 'Change soup can' }).waitFor()
    await expect.poll(cans).toContain('soup can')
    // Whoever works by keyboard goes on where the sheet was opened.
    await expect.poll(() => page.evaluate('document.activeElement.textContent')).toBe('Add a can')

    await page.getByRole('button', { name: 'Change soup can' }).click()
    await page.getByLabel('Height', { exact: false }).first().fill('4 3/8 in')
    await page.getByRole('button', { name: 'Keep the change' }).click()
    await page
      .locator('.shelf-row', { hasText: 'soup can' })
      .getByText(/111\.1\smm/)
      .waitFor()

    await page.getByRole('button', { name: 'Take away soup can' }).click()
    await page.getByRole('button', { name: 'Change soup can' }).waitFor({ state: 'detached' })
    await expect.poll(cans).not.toContain('soup can')
    await page.keyboard.press('Control+z')
    await page.getByRole('button', { name: 'Change soup can' }).waitFor()
    expect(complaints).toEqual([])
  })

  it('takes a can by its size code, a bit, a pot and a fuel', async () => {
    const { page, complaints } = await openShelf()
    await page.getByRole('button', { name: 'Add a can' }).click()
    await page.getByLabel('Your name for it').fill('big can')
    await page.getByLabel(/Size code/).fill('603x700')
    await page
      .getByText(/No\. 10/)
      .first()
      .waitFor()
    await page.getByRole('button', { name: 'Lay it on the shelf' }).click()
    await page
      .locator('.shelf-row', { hasText: 'big can' })
      .getByText(/^603x700: 157\.2\smm/)
      .waitFor()

    await page.getByRole('button', { name: 'Add a bit' }).click()
    await page.getByLabel(/Its size/).fill('9 mm')
    await page.getByRole('button', { name: 'Lay it on the shelf' }).click()
    await page.getByRole('button', { name: 'Change 9 mm' }).waitFor()

    await page.getByRole('button', { name: 'Add a pot' }).click()
    await page.getByLabel(/Across its bottom/).fill('5 in')
    await page.getByRole('button', { name: 'Lay it on the shelf' }).click()
    await page.locator('[data-kind="pot"] .shelf-row', { hasText: '127 mm' }).waitFor()

    await page.getByRole('button', { name: 'Add a fuel' }).click()
    await page.getByRole('combobox', { name: 'Fuel' }).selectOption('twigs')
    await page.getByLabel(/Moisture/).fill('14 %')
    await page.getByRole('button', { name: 'Lay it on the shelf' }).click()
    await page.locator('[data-kind="fuel"] .shelf-row', { hasText: 'moisture 14 %' }).waitFor()
    expect(complaints).toEqual([])
  })

  it('says how every can goes with every other, square by square, by keyboard', async () => {
    const { page, complaints } = await openShelf()
    const said = page.locator('.fits-said')
    await page.getByRole('button', { name: /^drawn tomato can into lever-lid tin/ }).focus()
    await expect.poll(() => said.textContent()).toMatch(/^drawn tomato can .*lever-lid tin/)
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => said.textContent()).toMatch(/drawn tomato can drops into milk powder tin/)
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('ArrowUp')
    await expect.poll(() => said.textContent()).toMatch(/lever-lid tin .*milk powder tin/)
    expect(complaints).toEqual([])
  })

  it('says what could be made of its cans, the best first, and starts the one that is chosen', async () => {
    const { page, complaints } = await openShelf()
    await page.getByRole('button', { name: 'Try every pair' }).click()
    const first = page.locator('.possible-stove').first()
    await first.waitFor({ timeout: LONG })
    await expect.poll(() => page.locator('.possible-stove').count()).toBe(8)
    const words = (await first.locator('strong').textContent()) ?? ''
    await expect.poll(() => first.textContent()).toContain('Burns clean')
    expect(await axeViolations(page)).toEqual([])
    await first.click()
    await page.getByRole('heading', { name: 'Start a stove' }).waitFor()
    const [inner, outer] = words.trim().split(' in ')
    await expect.poll(() => page.getByLabel('Outside').inputValue()).toBe(outer)
    await expect.poll(() => page.getByLabel('Inside it, for the fuel').inputValue()).toBe(inner)
    expect(complaints).toEqual([])
  })

  it('lies well on a phone in the dark, and so does its form for a can', async () => {
    const { page, complaints } = await openShelf({ width: 360, height: 740, look: 'dark', touch: true })
    expect(await sidewaysScroll(page)).toBe(0)
    expect(await axeViolations(page)).toEqual([])
    await page.getByRole('button', { name: 'Add a can' }).click()
    await page.getByLabel('Your name for it').waitFor()
    expect(await axeViolations(page)).toEqual([])
    expect(complaints).toEqual([])
  })
})
