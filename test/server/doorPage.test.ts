import { spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { stripVTControlCharacters } from 'node:util'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launch, newContext, PATIENCE } from '#scripts/openBench/browser.ts'
import { qrLetters } from '#server/door/picture.ts'
import type { Invitation } from '#wire/door.ts'
import { needs } from '../outsideProgram.ts'
import { value } from '../store/acts.ts'
import { axeViolations, sidewaysScroll } from '../web/harness/page.ts'
import { clientOf, houseOrigin, openRig, type Rig } from './rig.ts'

let folder: string
let rig: Rig
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tinwright-door-'))
  rig = await openRig()
})
afterAll(async () => {
  await rig.close()
  rmSync(folder, { recursive: true })
})

/** A browser on a machine under load is slow. */
const LONG = { timeout: PATIENCE }

const invite = (): Promise<Invitation> => value(clientOf(rig).call('invite', {}))

/** What a scanner that we did not write reads from a picture. */
const scanned = (file: string): string =>
  spawnSync('zbarimg', ['--quiet', '--raw', file], { encoding: 'utf8' }).stdout.trim()

const inChromium = async (work: (browser: Browser) => Promise<void>): Promise<void> => {
  const browser = await launch()
  try {
    await work(browser)
  } finally {
    await browser.close()
  }
}

/** Dots of a terminal, as a bitmap: each letter is a light or dark square over another. Netpbm's `P1`. */
const bitmapOf = (letters: string): string => {
  const lines = stripVTControlCharacters(letters).trimEnd().split('\n')
  const light = (line: string, above: boolean): readonly boolean[] =>
    [...line].map((letter) => letter === '█' || letter === (above ? '▀' : '▄'))
  const rows = lines.flatMap((line) => [light(line, true), light(line, false)])
  const size = 8
  const wide = rows.map((row) => row.map((one) => (one ? '0 ' : '1 ').repeat(size)).join(''))
  const tall = wide.flatMap((row) => Array.from({ length: size }, () => row))
  return `P1\n${(rows[0]?.length ?? 0) * size} ${tall.length}\n${tall.join('\n')}\n`
}

describe('the way in', () => {
  it('stands in the terminal as a picture that a phone can scan', (context) => {
    needs(context, 'zbarimg')
    const address = 'http://192.168.178.20:4300/pair#K7QM-3XRD'
    const file = join(folder, 'terminal.pbm')
    writeFileSync(file, bitmapOf(qrLetters(address)))
    expect(scanned(file)).toBe(address)
  })

  it('is found by a phone, and leads in, with nothing against the policy', (test) => {
    needs(test, 'chromium', 'zbarimg')
    return inChromium(async (browser) => {
      const { pages, pictures, code } = await invite()
      const { context, complaints } = await newContext(browser, { width: 390, height: 760, touch: true })
      const page = await context.newPage()
      await page.setContent(`<style>body{background:#000}svg{width:360px}</style>${pictures[0]}`)
      const file = join(folder, 'screen.png')
      writeFileSync(file, await page.screenshot())
      expect(scanned(file)).toBe(pages[0])
      // A stranger who opens any page is shown the door.
      await page.goto(`${houseOrigin(rig)}/stove/some`)
      expect(new URL(page.url()).pathname).toBe('/pair')
      await page.getByLabel('Code').fill('AAAA-AAAA')
      await page.getByRole('button').click()
      await page.getByText('This code will not do').waitFor()
      await page.goto('about:blank')
      await page.goto(pages[0] ?? '')
      await expect.poll(() => page.getByLabel('Code').inputValue(), LONG).toBe(code)
      // Out of the history, where the next one at this phone would find it.
      await expect.poll(() => new URL(page.url()).hash, LONG).toBe('')
      await page.getByLabel('What this device is called').fill('Kitchen phone')
      await page.keyboard.press('Enter')
      await page.waitForURL(`${houseOrigin(rig)}/`)
      await expect.poll(() => page.title(), LONG).toBe('The bench')
      const devices = await value(clientOf(rig).call('devices', {}))
      expect(devices.map(({ name }) => name)).toEqual(['Kitchen phone'])
      // No script of a page ever sees the token.
      expect(await page.evaluate('document.cookie')).toBe('')
      // Once in, the door lets through.
      await page.goto(`${houseOrigin(rig)}/pair`)
      await page.waitForURL(`${houseOrigin(rig)}/`)
      expect(complaints.filter((one) => !/status of 401/.test(one))).toEqual([])
    })
  })

  it('can be read and used by everybody, light and dark', (test) => {
    needs(test, 'chromium', 'zbarimg')
    return inChromium(async (browser) => {
      for (const look of ['light', 'dark'] as const) {
        const { context, complaints } = await newContext(browser, { width: 320, height: 640, look })
        const page = await context.newPage()
        await page.goto(`${houseOrigin(rig)}/pair`)
        await page.getByRole('button').waitFor()
        expect(await axeViolations(page)).toEqual([])
        expect(await sidewaysScroll(page)).toBe(0)
        await page.keyboard.press('Tab')
        await page.keyboard.press('Tab')
        await expect
          .poll(() => page.evaluate('document.activeElement.textContent'), LONG)
          .toBe('Let this device in')
        expect(complaints).toEqual([])
        await context.close()
      }
    })
  })

  it('lets no page elsewhere do anything, even in the browser of a device that is in', (test) => {
    needs(test, 'chromium', 'zbarimg')
    return inChromium(async (browser) => {
      const { context } = await newContext(browser)
      const page = await context.newPage()
      const before = (await value(rig.workshop.about())).sequence
      // Another program of the same machine: the nearest that a stranger can come.
      const elsewhere = createServer((_, response) => {
        response.setHeader('content-type', 'text/html').end('<title>elsewhere</title>')
      })
      elsewhere.listen(0, '127.0.0.1')
      await once(elsewhere, 'listening')
      await page.goto(`http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}/`)
      const attempts = await page.evaluate(`(async () => {
        const url = ${JSON.stringify(rig.bench.address)}
        const body = JSON.stringify({ act: { id: 'evil', client: 'evil', at: '2031-05-17T14:05:00Z' } })
        const tries = [
          fetch(url + 'api/undo', { method: 'POST', body, headers: { 'content-type': 'application/json' } }),
          fetch(url + 'api/undo', { method: 'POST', body, mode: 'no-cors', headers: { 'content-type': 'text/plain' } }),
          fetch(url + 'api/about', { method: 'POST', body: '{}' }),
          fetch(url + 'api/archive'),
        ].map((one) => one.then((r) => r.type === 'opaque' ? 'opaque' : r.text(), () => 'blocked'))
        const frame = document.createElement('iframe')
        frame.src = url
        document.body.append(frame)
        const image = new Image()
        const drawn = new Promise((done) => { image.onload = () => done('shown'); image.onerror = () => done('blocked') })
        image.src = url + 'api/photo/any'
        return Promise.all([...tries, drawn])
      })()`)
      expect(attempts).toEqual(Array(5).fill('blocked'))
      expect((await value(rig.workshop.about())).sequence).toBe(before)
      expect(rig.lines.filter((line) => line.includes('Origin: http://127.0.0.1'))).not.toEqual([])
      elsewhere.close()
      elsewhere.closeAllConnections()
    })
  })
})
