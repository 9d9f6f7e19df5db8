import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, chromium, type Page } from 'playwright-core'
import { afterAll, describe, expect, test } from 'vitest'
import { planHtml } from '#craft/plan/plan.ts'
import { needs } from '../../outsideProgram.ts'
import { planOf } from './plans.ts'

/** The page of a plan in a browser with the network off. */

const folder = mkdtempSync(join(tmpdir(), 'tinwright-screen-'))
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
let browser: Browser | null = null

interface Seen {
  readonly page: Page
  readonly asked: readonly string[]
  readonly said: readonly string[]
}

/** What the test asks of a canvas; the types of a page are none of Node's. */
interface HTMLCanvas {
  readonly width: number
  readonly height: number
  readonly getContext: (kind: '2d') => {
    getImageData: (x: number, y: number, width: number, height: number) => { data: Uint8ClampedArray }
  }
}

const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-gpu',
]

const open = async (name: string, width: number): Promise<Seen> => {
  const file = join(folder, `${name}.html`)
  writeFileSync(file, planHtml(await planOf(name)))
  browser ??= await chromium.launch({ executablePath: '/usr/bin/chromium', args: FLAGS })
  const context = await browser.newContext({
    viewport: { width, height: 800 },
    reducedMotion: 'reduce',
    offline: true,
  })
  const page = await context.newPage()
  const [asked, said]: [string[], string[]] = [[], []]
  page.on('request', (request) => {
    if (!/^(?:file|data):/.test(request.url())) asked.push(request.url())
  })
  page.on('pageerror', (error) => said.push(error.message))
  page.on('console', (message) => said.push(message.text()))
  await page.goto(`file://${file}`)
  return { page, asked, said }
}

afterAll(async () => {
  await browser?.close()
  rmSync(folder, { recursive: true })
})

describe.each([
  ['redshank', 1280],
  ['heron', 360],
] as const)('the page of %s, %d pixels wide', (name, width) => {
  test('asks for nothing, says nothing, breaks no rule of axe, and runs over no edge', async (context) => {
    needs(context, 'chromium')
    const { page, asked, said } = await open(name, width)
    await page.locator('#turntable canvas').waitFor()
    expect(asked).toEqual([])
    expect(said).toEqual([])
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width)
    // A figure that ends where the next cell begins would be read with it: “45” and “11 in shell”.
    const touching = await page.evaluate(`[...document.querySelectorAll('tr')].flatMap((row) => {
      const boxes = [...row.cells].filter((cell) => cell.textContent !== '').map((cell) => {
        const range = document.createRange()
        range.selectNodeContents(cell)
        return { text: cell.textContent, box: range.getBoundingClientRect() }
      })
      return boxes.slice(1).flatMap(({ text, box }, i) => (box.left - boxes[i].box.right < 6 ? [boxes[i].text + '|' + text] : []))
    })`)
    expect(touching).toEqual([])
    await page.evaluate(axe)
    const violations = await page.evaluate(async () => {
      const { axe } = globalThis as unknown as {
        axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
      }
      return (await axe.run()).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`)
    })
    expect(violations).toEqual([])
  })

  test('shows sizes in the units that are chosen, and turns the stove by keys', async (context) => {
    needs(context, 'chromium')
    const { page } = await open(name, width)
    const sizes = page.locator('.both').first()
    expect(await sizes.textContent()).toMatch(/\(.+\)/)
    await page.getByLabel('inches').check()
    await expect.poll(() => page.locator('.mm').first().isVisible()).toBe(false)
    await expect.poll(() => page.locator('.in').first().isVisible()).toBe(true)
    await page.getByLabel('millimetres').check()
    await expect.poll(() => page.locator('.in').first().isVisible()).toBe(false)
    const canvas = page.locator('#turntable canvas')
    await canvas.scrollIntoViewIfNeeded()
    const looks = (): Promise<string> =>
      canvas.evaluate((one) => (one as unknown as { toDataURL: () => string }).toDataURL())
    const inks = (): Promise<number> =>
      canvas.evaluate((one) => {
        const { width, height, getContext } = one as unknown as HTMLCanvas
        const { data } = getContext.call(one, '2d').getImageData(0, 0, width, height)
        return new Set(new Uint32Array(data.buffer)).size
      })
    await expect.poll(inks).toBeGreaterThan(50)
    const before = await looks()
    await canvas.focus()
    for (let i = 0; i < 4; i += 1) await page.keyboard.press('ArrowRight')
    await expect.poll(looks).not.toBe(before)
    const turned = await looks()
    await page.getByRole('button', { name: 'taken apart' }).click()
    await expect.poll(looks).not.toBe(turned)
    await expect.poll(inks).toBeGreaterThan(50)
  })
})

test('without scripts the whole plan is there but the turntable', async (context) => {
  needs(context, 'chromium')
  const { page } = await open('redshank', 1280)
  const visible = async (shown: Page): Promise<number> =>
    (
      await Promise.all(
        (await shown.locator('main h2, main p, main td, main figure').all()).map((one) => one.isVisible()),
      )
    ).filter(Boolean).length
  const all = await visible(page)
  expect(all).toBeGreaterThan(200)
  const quiet = await (browser as Browser).newContext({ javaScriptEnabled: false })
  const plain = await quiet.newPage()
  await plain.goto(page.url())
  expect(await plain.locator('#turntable').isVisible()).toBe(false)
  expect(await visible(plain)).toBe(all)
})
