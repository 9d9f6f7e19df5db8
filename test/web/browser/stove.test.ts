import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { benchRig, stoveNamed } from '../harness/benchTest.ts'
import { axeViolations, type ContextWish, rested, sidewaysScroll } from '../harness/browser.ts'

const rig = benchRig()

const eventually = <T>(look: () => Promise<T>) => expect.poll(look)

const layStove = async (name: string, wish?: ContextWish) => {
  const id = await stoveNamed(rig.server(), name)
  const opened = await rig.open(`/stove/${id}`, wish)
  await opened.page.locator('.answer-value').first().waitFor()
  await opened.page.locator('.grip').first().waitFor()
  return opened
}

/** With all that it shows at first in its place. */
const openStove = async (name: string, wish?: ContextWish) => {
  const opened = await layStove(name, wish)
  await rested(opened.page)
  return opened
}

const value = (page: Page, key: string): Locator => page.locator(`[data-answer="${key}"] .answer-value`)
const grip = (page: Page, key: string): Locator => page.locator(`.grip[data-key="${key}"]`)
const undoButton = (page: Page): Locator => page.getByRole('button', { name: /^Undo/ })

/** Waits until a text is another than it was. */
const changed = (place: Locator, before: string | null): Promise<void> =>
  eventually(() => place.textContent()).not.toBe(before)

const middleOf = async (place: Locator): Promise<readonly [x: number, y: number]> => {
  const box = await place.boundingBox()
  if (box === null) throw new Error('It is nowhere on the page')
  return [box.x + box.width / 2, box.y + box.height / 2]
}

const RING = 'row fuel can ring'

describe('a row under the hand', () => {
  it('is dragged: numbers, picture and curve follow before it is let go; undo brings all back', async () => {
    const { page, complaints } = await openStove('Heron')
    const ring = grip(page, RING)
    const [ratio, height] = [
      await value(page, 'ratio').textContent(),
      await ring.getAttribute('aria-valuetext'),
    ]
    const front = page.locator('.stage-front')
    const [picture, curve] = [await front.innerHTML(), await page.locator('.strip-power').getAttribute('d')]
    const [x, y] = await middleOf(ring)
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x, y + 12, { steps: 3 })
    await eventually(() => ring.getAttribute('aria-valuetext')).not.toBe(height)
    await eventually(() => front.innerHTML()).not.toBe(picture)
    await eventually(() => page.locator('.strip-power').getAttribute('d')).not.toBe(curve)
    await page.mouse.up()
    await expect.poll(() => undoButton(page).textContent()).toMatch(/^Undo: move ring to \d+\smm$/)
    const moved = await ring.getAttribute('aria-valuetext')
    await undoButton(page).click()
    await eventually(() => ring.getAttribute('aria-valuetext')).toBe(height)
    await eventually(() => value(page, 'ratio').textContent()).toBe(ratio)
    await eventually(() => page.locator('.strip-power').getAttribute('d')).toBe(curve)
    await page.getByRole('button', { name: /^Redo/ }).click()
    await eventually(() => ring.getAttribute('aria-valuetext')).toBe(moved)
    await undoButton(page).click()
    expect(complaints).toEqual([])
  })

  it('is dragged by a finger, and the page does not scroll away under it', async () => {
    const { page, context } = await openStove('Redshank', { width: 360, height: 740, touch: true })
    const ring = grip(page, RING)
    const height = await ring.getAttribute('aria-valuetext')
    const [x, y] = await middleOf(ring.locator('.grip-knob'))
    const fingers = await context.newCDPSession(page)
    const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: number) =>
      fingers.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: at === undefined ? [] : [{ x, y: at }],
      })
    await finger('touchStart', y)
    for (let down = 4; down <= 24; down += 4) await finger('touchMove', y + down)
    await eventually(() => ring.getAttribute('aria-valuetext')).not.toBe(height)
    // Said where no finger hides it.
    await page.locator('.grip-tag').waitFor()
    await finger('touchEnd')
    await eventually(() => undoButton(page).getAttribute('aria-label')).toMatch(/^Undo: move ring to /)
    expect(await page.evaluate('scrollY')).toBe(0)
  })

  it('is let go with Escape as if nothing had been', async () => {
    const { page } = await openStove('Heron')
    const ring = grip(page, RING)
    const height = await ring.getAttribute('aria-valuetext')
    const [x, y] = await middleOf(ring)
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x, y + 15, { steps: 3 })
    await eventually(() => ring.getAttribute('aria-valuetext')).not.toBe(height)
    await page.keyboard.press('Escape')
    await eventually(() => ring.getAttribute('aria-valuetext')).toBe(height)
    await page.mouse.up()
    await expect.poll(() => undoButton(page).isDisabled()).toBe(true)
  })

  it('is moved by keys, opened by Enter, drilled with another bit, and left again by Escape', async () => {
    const { page } = await openStove('Greylag')
    const ring = grip(page, RING)
    await ring.focus()
    await page.keyboard.press('ArrowUp')
    await eventually(() => undoButton(page).textContent()).toMatch(/^Undo: move ring to 19\smm$/)
    await page.keyboard.press('Shift+ArrowDown')
    await eventually(() => undoButton(page).textContent()).toMatch(/^Undo: move ring to 24\smm$/)
    await page.keyboard.press('Enter')
    const panel = page.getByRole('region', { name: 'ring in fuel can' })
    await panel.waitFor()
    const ratio = await value(page, 'ratio').textContent()
    // A bit that is owned, then one that is not.
    await panel.getByText('on your shelf', { exact: true }).waitFor()
    await panel.getByRole('button', { name: 'Bit: less' }).click()
    await eventually(() => panel.getByLabel('Bit', { exact: true }).inputValue()).toBe('8 mm')
    await changed(value(page, 'ratio'), ratio)
    await panel.getByLabel('Of all bits').selectOption('9 mm')
    await eventually(() => panel.getByLabel('Bit', { exact: true }).inputValue()).toBe('9 mm')
    await panel.getByText('not on your shelf', { exact: true }).waitFor()
    await panel.getByLabel('Bit', { exact: true }).fill('a thumb')
    await page.keyboard.press('Enter')
    await panel.getByRole('alert').waitFor()
    await page.keyboard.press('Escape')
    await panel.getByLabel('Places', { exact: true }).fill('16')
    await page.keyboard.press('Enter')
    await eventually(() => undoButton(page).textContent()).toBe('Undo: give ring 16 places')
    await panel.focus()
    await page.keyboard.press('Escape')
    await panel.waitFor({ state: 'detached' })
    await eventually(() => page.evaluate('document.activeElement.dataset.key')).toBe(RING)
  })

  it('comes and goes', async () => {
    const { page } = await openStove('Heron')
    await page.getByRole('button', { name: 'Add the row' }).click()
    const panel = page.getByRole('region', { name: 'ring 2 in fuel can' })
    await panel.waitFor()
    await panel.getByRole('button', { name: 'Take ring 2 away' }).click()
    await panel.waitFor({ state: 'detached' })
    await eventually(() => grip(page, 'row fuel can ring 2').count()).toBe(0)
  })
})

describe('from above', () => {
  it('leaves a hole out and takes it in again', async () => {
    const { page } = await openStove('Redshank')
    const hole = page.getByRole('checkbox', { name: /^intake, hole 3 / })
    const flow = await page.locator('.stage-words').textContent()
    await hole.click()
    await eventually(() => hole.getAttribute('aria-checked')).toBe('false')
    await changed(page.locator('.stage-words'), flow)
    await hole.focus()
    await page.keyboard.press('Space')
    await eventually(() => hole.getAttribute('aria-checked')).toBe('true')
  })

  it('turns the damper by hand, by keys and by its slider: the fire goes down with it', async () => {
    const { page } = await openStove('Redshank')
    const damper = page.getByRole('slider', { name: 'Damper, turned' })
    const power = await value(page, 'firepower').textContent()
    await damper.scrollIntoViewIfNeeded()
    const [x, y] = await middleOf(damper.locator('.above-mark'))
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x - 18, y - 2, { steps: 4 })
    await page.mouse.up()
    await eventually(() => damper.getAttribute('aria-valuetext')).not.toContain('100 % open')
    await changed(value(page, 'firepower'), power)
    const turned = await damper.getAttribute('aria-valuetext')
    await damper.focus()
    await page.keyboard.press('ArrowRight')
    await eventually(() => damper.getAttribute('aria-valuetext')).not.toBe(turned)
    await page.getByRole('slider', { name: 'Damper', exact: true }).focus()
    await page.keyboard.press('Home')
    await eventually(() => damper.getAttribute('aria-valuetext')).toContain('0°')
  })

  it('turns the wind, which blows once it is turned', async () => {
    const { page } = await openStove('Heron')
    const wind = page.getByRole('slider', { name: 'Wind, where it comes from' })
    await expect.poll(() => wind.getAttribute('aria-valuetext')).toBe('calm')
    await wind.focus()
    await page.keyboard.press('Shift+ArrowRight')
    await eventually(() => wind.getAttribute('aria-valuetext')).toBe('45° from the front')
    await expect.poll(() => page.getByLabel('Wind', { exact: true }).inputValue()).toBe('2 m/s')
  })
})

describe('the burn strip', () => {
  it('moves the section through the burn, by mouse and by keys', async () => {
    const { page } = await openStove('Greylag')
    const time = page.getByRole('slider', { name: 'Time after lighting' })
    const bed = page.locator('.stage-bed')
    const half = await bed.innerHTML()
    await time.focus()
    await page.keyboard.press('Home')
    await eventually(() => time.getAttribute('aria-valuetext')).toMatch(/lighting/)
    await eventually(() => bed.innerHTML()).not.toBe(half)
    await page.keyboard.press('End')
    await eventually(() => time.getAttribute('aria-valuetext')).toMatch(/char glows/)
    await page.keyboard.press('Escape')
    await eventually(() => bed.innerHTML()).toBe(half)
    await page.locator('.strip-place').scrollIntoViewIfNeeded()
    const box = await page.locator('.strip-place').boundingBox()
    if (box === null) throw new Error('There is no strip')
    await page.mouse.click(box.x + box.width * 0.12, box.y + box.height / 2)
    await eventually(() => bed.innerHTML()).not.toBe(half)
    await page.getByRole('button', { name: 'Half way down' }).click()
    await eventually(() => bed.innerHTML()).toBe(half)
  })

  it('draws its bands once the hand rests, and stops when asked', async () => {
    const { page } = await layStove('Heron')
    await page.getByRole('progressbar', { name: 'Drawing bands' }).waitFor()
    await page.getByRole('button', { name: 'Stop', exact: true }).click()
    await page.getByRole('button', { name: 'Draw the bands' }).click()
    await page.locator('.strip-band').waitFor()
    await expect
      .poll(() => page.locator('[data-answer="firepower"] .answer-range').textContent())
      .toMatch(/ to .*kW$/)
  })
})

describe('what is said of it', () => {
  it('points at the opening it means, and opens it', async () => {
    const { page } = await openStove('Redshank')
    const finding = page.locator('.findings li button').first()
    // The stove in space comes into sight with it: without a graphics card the page is deaf until that is drawn.
    await page.locator('.space-beside').waitFor({ state: 'attached' })
    await page.evaluate('document.querySelector(".space-beside").scrollIntoView()')
    await page.locator('.space[data-busy="false"]').waitFor({ timeout: 120_000 })
    await finding.focus()
    await eventually(() => page.locator('.grip[data-pointed="true"]').count()).toBe(1)
    await finding.click()
    await page.locator('.opening-panel').waitFor()
  })

  it('answers to fuel and weather, and says what will not do', async () => {
    const { page } = await openStove('Heron')
    const power = await value(page, 'firepower').textContent()
    await page.getByRole('combobox', { name: /^Fuel/ }).selectOption('twigs')
    await changed(value(page, 'firepower'), power)
    await page.getByLabel('Water in the fuel').fill('12')
    await page.keyboard.press('Enter')
    await eventually(() => page.locator('.condition-fault').textContent()).toMatch(/12\s%/)
    await page.getByRole('button', { name: 'A calm, mild day again' }).click()
    await eventually(() => value(page, 'firepower').textContent()).toBe(power)
  })

  it('sets an edit beside the revision it came from', async () => {
    const { page } = await openStove('Greylag')
    await grip(page, 'bore concentrator bore').focus()
    for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowDown')
    await page.locator('.answer-change').filter({ hasText: 'than its last revision' }).first().waitFor()
    await page.locator('.stage-ghost path').first().waitFor({ state: 'attached' })
  })
})

describe.each([
  ['light', 1280],
  ['dark', 1280],
  ['light', 360],
  ['dark', 360],
] as const)('%s, %i px wide', (look, width) => {
  it('has nothing that axe finds wrong, nothing beyond its edge, and its cautions', async () => {
    const { page, complaints } = await openStove('Redshank', { look, width, height: 800, touch: width < 500 })
    expect(await axeViolations(page)).toEqual([])
    expect(await sidewaysScroll(page)).toBe(0)
    await page
      .getByText(/carbon monoxide/)
      .first()
      .waitFor()
    if (width < 500)
      for (const tab of ['Burn', 'From above', 'Findings', 'Air', 'Turndown', 'Weather', 'New row']) {
        await page.getByRole('tab', { name: tab }).click()
        expect(await axeViolations(page)).toEqual([])
        expect(await sidewaysScroll(page)).toBe(0)
      }
    else {
      await grip(page, RING).focus()
      await page.keyboard.press('Enter')
      await page.locator('.opening-panel').waitFor()
      expect(await axeViolations(page)).toEqual([])
    }
    expect(complaints).toEqual([])
  })
})
