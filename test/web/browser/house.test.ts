import { createHash, X509Certificate } from 'node:crypto'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { TRIAL_FORMAT } from '#proof/trial/schema.ts'
import { houseAddresses } from '#server/door/house.ts'
import { WITHOUT_CERTIFICATE } from '#wire/door.ts'
import { standingEvents } from '#wire/trials.ts'
import { needs } from '../../outsideProgram.ts'
import { makeAuthority } from '../../server/certificates.ts'
import { axeViolations, launch, newContext, until } from '../harness/browser.ts'
import { isInHouse, needsOwnNetwork, runInHouse } from '../harness/houseNetwork.ts'
import { type BenchServer, startServer } from '../harness/server.ts'
import { ask, makeTrial } from './ask.ts'

const PHONE = { width: 360, height: 740, touch: true } as const
const EMPTY = JSON.stringify({ format: TRIAL_FORMAT, name: 'Test burn' })
const CAUTION = 'is not encrypted'

const ending: (() => Promise<void> | void)[] = []
afterEach(async () => {
  for (const end of ending.splice(0).toReversed()) await end()
})

interface House {
  readonly server: BenchServer
  readonly browser: Browser
  /** Where a phone finds the bench: never an address that browsers trust like this machine's own. */
  readonly origin: string
}

/** Browsers hold 127.… for safe, so an address of this machine in a network is needed. */
const openHouse = async (more: readonly string[] = [], flags: readonly string[] = []): Promise<House> => {
  const server = await startServer(['--lan', ...more])
  ending.push(server.close)
  const browser = await launch(flags)
  ending.push(() => browser.close())
  const [origin = ''] = server.houseOrigins
  return { server, browser, origin }
}

/** The maker asks for a code on the page of the workshop. */
const codeFrom = async (page: Page): Promise<string> => {
  await page.getByRole('button', { name: /^Let a device in$|^Another code$/ }).click()
  const code = page.locator('.invitation-code')
  await code.waitFor()
  return (await code.textContent()) ?? ''
}

/** A phone is let in: it types the code that the maker's page shows. */
const letIn = async (
  { origin }: House,
  context: BrowserContext,
  maker: Page,
  name: string,
): Promise<Page> => {
  const phone = await context.newPage()
  await phone.goto(`${origin}/`)
  await phone.waitForURL(`${origin}/pair`)
  await phone.getByLabel('Code').fill(await codeFrom(maker))
  await phone.getByLabel('What this device is called').fill(name)
  await phone.getByRole('button', { name: 'Let this device in' }).tap()
  await phone.waitForURL(`${origin}/`)
  return phone
}

const openBurn = async ({ origin }: House, page: Page, trial: string): Promise<void> => {
  await page.goto(`${origin}/burn/${trial}`)
  await page.locator('.burn-buttons').waitFor()
}

const note = (page: Page, name: string): Promise<void> =>
  page
    .locator('.burn-buttons')
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .tap()

const standing = (page: Page, text: string): Promise<void> =>
  page.locator('.burn-standing').getByText(text).waitFor()

const said = async (server: BenchServer, trial: string): Promise<readonly string[]> =>
  standingEvents(await ask(server.address, 'events', { trial })).map(({ body }) => JSON.parse(body).event)

const here = async ({ browser, server }: House): Promise<Page> => {
  const { context } = await newContext(browser)
  const maker = await context.newPage()
  await maker.goto(`${server.address}workshop`)
  return maker
}

const withPhone = (): void => {
  it('logs a burn over plain HTTP, where browsers withhold much: let in, kept, sent, let in no more', async (test) => {
    needs(test, 'chromium')
    const house = await openHouse()
    const { server, browser } = house
    const maker = await here(house)
    const section = maker.locator('section', { hasText: 'Devices of the house' })
    await section.getByText(CAUTION).waitFor()
    await section.getByText(WITHOUT_CERTIFICATE).waitFor()
    const { context, complaints } = await newContext(browser, PHONE)
    const phone = await letIn(house, context, maker, 'Stove phone')
    await section.getByRole('rowheader', { name: 'Stove phone' }).waitFor()
    expect(await axeViolations(maker)).toEqual([])
    expect(
      await phone.evaluate(
        `[isSecureContext, 'randomUUID' in crypto, 'serviceWorker' in navigator, 'wakeLock' in navigator, 'locks' in navigator]`,
      ),
    ).toEqual([false, false, false, false, false])

    const trial = await makeTrial(server.address, 'Over plain HTTP', EMPTY)
    await openBurn(house, phone, trial)
    await phone.getByText('Keep this page open').waitFor()
    await phone.getByRole('button', { name: /I am outdoors/ }).tap()
    await note(phone, 'Lit')
    await standing(phone, '1 event, all with the workshop')
    await context.setOffline(true)
    await note(phone, 'Flame on')
    await note(phone, 'Pot on')
    await standing(phone, '3 events, 2 not yet with the workshop')
    await context.setOffline(false)
    await standing(phone, '3 events, all with the workshop')

    // Out of reach again, and closed before anything was sent: it opens once the bench is in reach, with all of it.
    await context.setOffline(true)
    await note(phone, 'Boil')
    await standing(phone, '4 events, 1 not yet with the workshop')
    await phone.close({ runBeforeUnload: false })
    await context.setOffline(false)
    const again = await context.newPage()
    await openBurn(house, again, trial)
    await standing(again, '4 events, all with the workshop')
    await expect.poll(() => said(server, trial)).toEqual(['lit', 'flame on', 'pot on', 'boil'])

    // The other pages do as well: a stove is renamed here and seen there.
    await again.goto(`${house.origin}/`)
    await again.getByRole('button', { name: 'More for Heron', exact: true }).click()
    await again.getByLabel('Name').fill('Grey heron')
    await again.getByRole('button', { name: 'Rename' }).click()
    await expect
      .poll(async () => (await ask(server.address, 'list', {})).map(({ name }) => name))
      .toContain('Grey heron')

    await section.getByRole('button', { name: 'Let in no more: Stove phone' }).click()
    await section.getByText('Stove phone may not come in any more.').waitFor()
    await again.goto(`${house.origin}/`)
    await again.waitForURL(`${house.origin}/pair`)
    expect(complaints).toEqual([])
  })

  it('keeps the pages over https, with a certificate that it trusts', async (test) => {
    needs(test, 'chromium', 'openssl')
    const folder = mkdtempSync(join(tmpdir(), 'tinwright-house-'))
    ending.push(() => rmSync(folder, { recursive: true }))
    const authority = makeAuthority()
    ending.push(authority.close)
    const names = houseAddresses(networkInterfaces()).map((address) => `IP:${address}`)
    const { certificate, key } = authority.sign({ names: names.join() })
    const [pem, keyFile] = [join(folder, 'bench.pem'), join(folder, 'bench.key')]
    writeFileSync(pem, certificate)
    writeFileSync(keyFile, key)
    // Trusted as if its authority had been made known to the phone.
    const spki = new X509Certificate(certificate).publicKey.export({ type: 'spki', format: 'der' })
    const pin = createHash('sha256').update(spki).digest('base64')
    const house = await openHouse(
      ['--certificate', pem, '--key', keyFile],
      [`--ignore-certificate-errors-spki-list=${pin}`],
    )
    expect(house.origin).toMatch(/^https:/)
    const maker = await here(house)
    await maker.getByRole('button', { name: 'Let a device in' }).waitFor()
    await expect.poll(() => maker.getByText(CAUTION).count()).toBe(0)
    const { context, complaints } = await newContext(house.browser, PHONE)
    const phone = await letIn(house, context, maker, 'Safe phone')
    const [cookie] = await context.cookies()
    expect(cookie).toMatchObject({ secure: true, httpOnly: true, sameSite: 'Strict' })
    await until(phone, `navigator.serviceWorker.ready.then(({ active }) => active.state === 'activated')`)
    const trial = await makeTrial(house.server.address, 'Over https', EMPTY)
    await openBurn(house, phone, trial)
    await phone.getByRole('button', { name: /I am outdoors/ }).tap()
    await note(phone, 'Lit')
    await standing(phone, '1 event, all with the workshop')
    await context.setOffline(true)
    await phone.reload()
    await note(phone, 'Flame on')
    await standing(phone, '2 events, 1 not yet with the workshop')
    await context.setOffline(false)
    await standing(phone, '2 events, all with the workshop')
    await expect.poll(() => said(house.server, trial)).toEqual(['lit', 'flame on'])
    expect(complaints).toEqual([])
  })
}

if (isInHouse()) describe('a phone of the house', withPhone)
else
  describe('a phone of a house that is made for it, since this machine is in none', () => {
    it('does all of it', { timeout: 1_200_000 }, async (test) => {
      needs(test, 'chromium', 'openssl')
      needsOwnNetwork(test)
      const { status, said } = await runInHouse(import.meta.filename)
      expect(status, said).toBe(0)
      // Two tests, and none of them left out.
      expect(said).toMatch(/^2 passed, 0 failed$/m)
      // A second try in there is told out here.
      expect(said).not.toContain('Needed a second try')
    })
  })
