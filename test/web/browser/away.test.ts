import { describe, expect, it } from 'vitest'
import { ask, benchRig, stoveNamed } from '../harness/benchTest.ts'
import { until } from '../harness/page.ts'

const rig = benchRig()

const names = async (): Promise<readonly string[]> =>
  (await ask<readonly { readonly kind: string; readonly name: string }[]>(rig.server(), 'list')).map(
    ({ name }) => name,
  )

/** The pages are kept once the worker that keeps them is at work. */
const KEPT = 'navigator.serviceWorker.ready.then(({ active }) => active.state === "activated")'

describe('without its server', () => {
  it('opens again after the first visit, shows what was seen, and sends what was done when the server is back', async () => {
    const { page, complaints } = await rig.open('/')
    await page.getByRole('link', { name: 'Heron', exact: true }).waitFor()
    await page.locator('.stove-row img').nth(2).waitFor()
    await until(page, KEPT)

    await rig.server().kill()
    await page.reload()
    await page.getByRole('link', { name: 'Heron', exact: true }).waitFor()
    await page.locator('.stove-row img').nth(2).waitFor()
    await page.getByText('The workshop does not answer.').waitFor()

    await page.getByRole('button', { name: 'More for Heron', exact: true }).click()
    await page.getByLabel('Name').fill('Night heron')
    await page.getByRole('button', { name: 'Rename' }).click()
    await page.getByRole('link', { name: 'Night heron' }).waitFor()
    await page.getByText('1 kept in this browser').waitFor()
    // Closed and opened again, it is still there.
    await page.reload()
    await page.getByRole('link', { name: 'Night heron' }).waitFor()

    await rig.server().start()
    await page.getByText('All kept').waitFor()
    await page.getByText('The workshop does not answer.').waitFor({ state: 'detached' })
    await expect.poll(names).toContain('Night heron')
    expect(complaints).toEqual([])
  })

  it('lays a stove on the bench that was seen before', async () => {
    const greylag = await stoveNamed(rig.server(), 'Greylag')
    const { page, complaints } = await rig.open(`/stove/${greylag}`)
    const ring = page.locator('.grip[data-key="row fuel can ring"]')
    await ring.waitFor()
    await until(page, KEPT)
    await rig.server().kill()
    await page.reload()
    await ring.waitFor()
    await page.locator('.answer-value').first().waitFor()
    await page.getByRole('link', { name: 'Help', exact: true }).first().click()
    await page.getByRole('heading', { name: 'Words of the trade' }).waitFor()
    await rig.server().start()
    expect(complaints).toEqual([])
  })

  it('keeps no answer of the workshop among its pages', async () => {
    const { page } = await rig.open('/')
    await until(page, KEPT)
    await page.getByRole('link', { name: 'Redshank' }).waitFor()
    const kept = await page.evaluate(
      `caches.keys().then((names) => Promise.all(names.map((name) => caches.open(name).then((cache) => cache.keys()))))
        .then((all) => all.flat().map(({ url }) => new URL(url).pathname))`,
    )
    expect(kept).toContain('/index.html')
    expect((kept as string[]).filter((path) => path.startsWith('/api/'))).toEqual([])
  })

  it('sends what a window that was closed had not sent', async () => {
    const { page, another } = await rig.open('/')
    await page.getByRole('link', { name: 'Redshank' }).waitFor()
    await until(page, KEPT)
    await rig.server().kill()
    await page.getByRole('button', { name: 'More for Redshank' }).click()
    await page.getByLabel('Name').fill('Spotted redshank')
    await page.getByRole('button', { name: 'Rename' }).click()
    await page.getByText('1 kept in this browser').waitFor()
    await page.close()
    await rig.server().start()
    const next = await another('/')
    await next.getByRole('link', { name: 'Spotted redshank' }).waitFor()
    await expect.poll(names).toContain('Spotted redshank')
  })
})

describe('a browser that keeps nothing', () => {
  it('is told so in a sentence, before anything is done that would be lost', async () => {
    const { page, context } = await rig.open('/help')
    await context.addInitScript(
      "IDBFactory.prototype.open = () => { throw new DOMException('no room', 'QuotaExceededError') }",
    )
    await page.goto(rig.server().address)
    await page.getByText('This browser gives the bench no room to keep anything in').waitFor()
  })
})
