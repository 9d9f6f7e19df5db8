import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { BrowserContext, Page } from 'playwright-core'
import { describe, expect, it, onTestFinished } from 'vitest'
import { buildOnce } from '#scripts/openBench/build.ts'
import { type Assets, readAssets } from '#server/asset/assets.ts'
import { needs } from '../../outsideProgram.ts'
import { clientOf, openRig } from '../../server/rig.ts'
import { act, value } from '../../store/acts.ts'
import { SHOWN_ROUND } from '../harness/benchTest.ts'
import { launch, newContext, until } from '../harness/browser.ts'

const root = join(import.meta.dirname, '..', '..', '..')

/** The pages as they are, and as a later release would have them. */
const twoBuilds = async (): Promise<readonly [Assets, Assets]> => {
  await buildOnce()
  const folder = mkdtempSync(join(tmpdir(), 'tinwright-newer-'))
  try {
    const program = join(import.meta.dirname, '..', 'harness', 'newerBuild.ts')
    const done = spawnSync(process.execPath, [program, folder], {
      encoding: 'utf8',
      env: { ...process.env, NODE_ENV: 'production' },
    })
    if (done.status !== 0) throw new Error(done.stderr)
    return [readAssets(join(root, 'dist', 'web')), readAssets(folder)]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** The script that a build begins with. */
const entryOf = (assets: Assets): string =>
  /src="(\/assets\/[^"]+\.js)"/.exec(new TextDecoder().decode(assets.get('/index.html')?.bytes))?.[1] ?? ''

const entryIn = (page: Page): Promise<string | null> =>
  page.locator('script[type=module][src]').first().getAttribute('src')

const ring = (page: Page) => page.locator('.grip[data-key="row fuel can ring"]')
const heightOf = (page: Page): Promise<string | null> => ring(page).getAttribute('aria-valuetext')
const nudge = async (page: Page): Promise<string> => {
  const before = await heightOf(page)
  await ring(page).focus()
  await page.keyboard.press('ArrowDown')
  await expect.poll(() => heightOf(page)).not.toBe(before)
  return (await heightOf(page)) ?? ''
}

describe('a newer bench', () => {
  it('is offered to the windows of the older one, and taken by each without losing an edit', async (test) => {
    needs(test, 'chromium')
    const [older, newer] = await twoBuilds()
    expect(entryOf(newer)).not.toBe(entryOf(older))
    const rig = await openRig({ assets: older, house: null })
    onTestFinished(rig.close)
    const text = readFileSync(join(root, 'examples', 'heron.stove.json'), 'utf8')
    const wanted = { kind: 'stove', name: 'Heron', revision: 'heron-1', text, note: '' } as const
    await value(clientOf(rig).call('create', { act: act(), wanted: { id: 'heron', ...wanted } }))

    const browser = await launch()
    onTestFinished(() => browser.close())
    const { context, complaints } = await newContext(browser)
    await context.addInitScript(SHOWN_ROUND)
    const open = async (from: BrowserContext, path: string): Promise<Page> => {
      const page = await from.newPage()
      await page.goto(new URL(path, rig.bench.address).href)
      return page
    }
    // A first visit: the worker comes after the page.
    const one = await open(context, '/stove/heron')
    await ring(one).waitFor()
    await until(one, 'navigator.serviceWorker.controller?.state === "activated"')
    const two = await open(context, '/')
    await two.getByRole('link', { name: 'Heron', exact: true }).waitFor()
    await nudge(one)
    await one.locator('.keeping[data-kind="kept"]').waitFor()

    // The maker ends the bench, brings it up to date, and starts it again.
    await rig.reopen({ assets: newer })
    const offer = (page: Page) => page.locator('.notice', { hasText: 'There is a newer bench' })
    await offer(one).waitFor()
    await offer(two).waitFor()
    // Nothing is taken from under anybody's hands.
    expect(await entryIn(one)).toBe(entryOf(older))
    const last = await nudge(one)
    await offer(one).getByRole('button', { name: 'Load it' }).click()
    await expect.poll(() => entryIn(one)).toBe(entryOf(newer))
    await ring(one).waitFor()
    await expect.poll(() => heightOf(one)).toBe(last)
    await one.locator('.keeping[data-kind="kept"]').waitFor()
    await expect
      .poll(() => value(clientOf(rig).call('drafts', { document: 'heron' })))
      .toEqual([expect.objectContaining({ unsaved: true, undo: expect.stringMatching(/ring/) })])

    // The other window goes on, with parts of the older bench that the server has no more.
    await two.locator('.notice', { hasText: 'Another window has loaded a newer bench' }).waitFor()
    expect(await entryIn(two)).toBe(entryOf(older))
    await two.getByRole('link', { name: 'Help', exact: true }).first().click()
    await two.getByRole('heading', { name: 'Words of the trade' }).waitFor()
    await two
      .locator('.notice', { hasText: 'Another window' })
      .getByRole('button', { name: 'Load it' })
      .click()
    await expect.poll(() => entryIn(two)).toBe(entryOf(newer))
    await two.getByRole('heading', { name: 'Words of the trade' }).waitFor()
    expect(complaints).toEqual([])
  })
})
