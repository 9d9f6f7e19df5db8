import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { benchRig, stoveNamed } from '../harness/benchTest.ts'
import { axeViolations, sidewaysScroll, until } from '../harness/page.ts'

const rig = benchRig()

const LONG = 240_000

/** The picture as it is on the screen, after it has stopped changing; `not`: what it shows no more, `like`: what it shows again. */
const picture = async (
  page: Page,
  wish: { not?: readonly Buffer[]; like?: Buffer } = {},
): Promise<Buffer> => {
  const place = page.locator('.space-held')
  let [last, now]: [Buffer, Buffer] = [Buffer.alloc(0), Buffer.alloc(0)]
  await expect
    .poll(
      async () => {
        if (await page.evaluate('document.querySelector(".space")?.dataset.busy !== "false"')) return 'busy'
        last = now
        now = await place.screenshot()
        if (!now.equals(last)) return 'moving'
        if (wish.not?.some((old) => now.equals(old))) return 'as it was'
        return wish.like === undefined || now.equals(wish.like) ? 'there' : 'another'
      },
      { interval: 150 },
    )
    .toBe('there')
  return now
}

const openSpace = async (name: string, wish?: Parameters<typeof rig.open>[1]) => {
  const opened = await rig.open(`/stove/${await stoveNamed(rig.server(), name)}/space`, wish)
  await opened.page.locator('.space').waitFor({ timeout: LONG })
  return opened
}

/** How many different colours there are in a picture: paper alone has one. */
const colours = async (page: Page, png: Buffer): Promise<number> =>
  (await page.evaluate(`(async () => {
    const bytes = Uint8Array.from(atob(${JSON.stringify(png.toString('base64'))}), (letter) => letter.charCodeAt(0))
    const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
    const canvas = new OffscreenCanvas(picture.width, picture.height)
    const brush = canvas.getContext('2d')
    brush.drawImage(picture, 0, 0)
    const { data } = brush.getImageData(0, 0, picture.width, picture.height)
    const seen = new Set()
    for (let i = 0; i < data.length; i += 4) seen.add((data[i] << 16) | (data[i + 1] << 8) | data[i + 2])
    return seen.size
  })()`)) as number

/** A place of the picture that a hole is seen at, looked for from the top left, or null [px]. */
const holeIn = async (page: Page): Promise<readonly [x: number, y: number] | null> => {
  const place = page.locator('.space-held')
  await place.scrollIntoViewIfNeeded()
  const box = await place.boundingBox()
  if (box === null) throw new Error('The picture is nowhere on the page')
  for (let y = box.y + 0.1 * box.height; y < box.y + box.height; y += 14)
    for (let x = box.x + box.width * 0.25; x < box.x + box.width * 0.75; x += 16) {
      await page.mouse.move(x, y)
      await page.evaluate('new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go)))')
      if ((await place.getAttribute('data-over')) === 'true') return [x, y]
    }
  return null
}

describe('a stove in space beside its section', () => {
  it('opens the row of a hole that is pressed, and changes places with the section', async () => {
    const id = await stoveNamed(rig.server(), 'Greylag')
    const { page, complaints } = await rig.open(`/stove/${id}`, { width: 1280, height: 1000 })
    page.setDefaultTimeout(LONG)
    await page.locator('.grip').first().waitFor()
    await page.locator('.space-beside').waitFor({ state: 'attached' })
    await page.evaluate('document.querySelector(".space-beside").scrollIntoView()')
    await page.locator('.space[data-busy="false"]').waitFor()
    await picture(page)
    const hole = await holeIn(page)
    if (hole === null) throw new Error('No hole of Greylag is in sight')
    await page.mouse.click(...hole)
    const panel = page.locator('.space .opening-panel')
    await panel.waitFor()
    const name = await panel.getAttribute('aria-label')
    const key = await page.locator('.grip[data-open="true"]').getAttribute('data-key')
    const [opening, part] = (name ?? '').split(' in ')
    expect(key).toBe(`row ${part} ${opening}`)
    expect(await axeViolations(page)).toEqual([])
    await page.keyboard.press('Escape')
    await panel.waitFor({ state: 'detached' })
    // By keys alone: found in the list, then opened.
    await page.getByLabel('Point out').selectOption({ label: 'fuel can: ring' })
    await page.getByRole('button', { name: 'Change it' }).click()
    await page.locator('.space').getByRole('region', { name: 'ring in fuel can' }).waitFor()
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Show it large' }).click()
    await page.locator('.stove-stage .space').waitFor()
    await page.locator('.more-picture .grip').first().waitFor()
    await page.getByRole('button', { name: 'Put the section back on top' }).click()
    await page.locator('.stove-stage .grip').first().waitFor()
    expect(complaints).toEqual([])
  })
})

describe('a stove in space', () => {
  it('is no blank sheet, and looks otherwise whole, cut open, taken apart, packed, turned and pointed at', async () => {
    const { page, complaints } = await openSpace('Greylag')
    const seen: Buffer[] = []
    for (const how of ['Cut open', 'Whole', 'Taken apart', 'Packed']) {
      await page.getByRole('button', { name: how }).click()
      const now = await picture(page, { not: seen })
      expect(await colours(page, now), how).toBeGreaterThan(200)
      seen.push(now)
    }
    await page.getByRole('button', { name: 'Whole' }).click()
    const whole = await picture(page, { not: seen.slice(-1) })
    await page.locator('.space-held').focus()
    await page.keyboard.press('ArrowRight')
    await picture(page, { not: [whole] })
    await expect
      .poll(() => page.locator('.space-held').getAttribute('aria-label'))
      .toContain('seen from 38° clockwise')
    await page.keyboard.press('Home')
    await picture(page, { like: whole })
    await page.getByLabel('Point out').selectOption({ label: 'shell: intake' })
    await picture(page, { not: [whole] })
    expect(await axeViolations(page)).toEqual([])
    expect(complaints).toEqual([])
  })

  it('is dragged by mouse and finger, and lies well on a phone in the dark', async () => {
    const { page, complaints } = await openSpace('Redshank', {
      width: 360,
      height: 740,
      look: 'dark',
      touch: true,
    })
    const before = await picture(page)
    const box = await page.locator('.space-held').boundingBox()
    if (box === null) throw new Error('The picture is nowhere on the page')
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await page.mouse.down()
    await page.mouse.move(box.x + box.width / 2 - 60, box.y + box.height / 2 + 20, { steps: 4 })
    await page.mouse.up()
    await picture(page, { not: [before] })
    expect(await sidewaysScroll(page)).toBe(0)
    expect(await axeViolations(page)).toEqual([])
    expect(complaints).toEqual([])
  })

  it('is drawn where the device has no WebGL', async () => {
    const { context, another } = await rig.open('/shelf')
    await context.addInitScript(
      'HTMLCanvasElement.prototype.getContext = () => null; OffscreenCanvas.prototype.getContext = () => null',
    )
    const page = await another(`/stove/${await stoveNamed(rig.server(), 'Heron')}/space`)
    await page.getByText(/this device shows nothing in space/).waitFor({ timeout: LONG })
    await until(
      page,
      '(document.querySelector(".space-drawn")?.shadowRoot?.querySelectorAll("path").length ?? 0) > 2',
    )
    expect(await axeViolations(page)).toEqual([])
  })
})
