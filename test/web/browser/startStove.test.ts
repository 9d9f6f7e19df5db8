import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { planCode } from '#stove/document/planCode.ts'
import { readStove } from '#stove/document/read.ts'
import { ask, benchRig } from '../harness/benchTest.ts'
import { axeViolations, sidewaysScroll } from '../harness/page.ts'

const rig = benchRig()

const LONG = 240_000

interface Head {
  readonly id: string
}

const stoveAt = async (url: string) => {
  const document = new URL(url).pathname.split('/').at(-1)
  // The page shows it before the workshop has it.
  await expect
    .poll(async () => (await ask<readonly Head[]>(rig.server(), 'list')).map(({ id }) => id))
    .toContain(document)
  const { revision } = await ask<{ readonly revision: { readonly text: string; readonly note: string } }>(
    rig.server(),
    'open',
    { document },
  )
  const read = readStove(revision.text)
  return { note: revision.note, stove: read.ok ? read.value : null }
}

describe('a new stove', () => {
  it('is started from two cans of the shelf, by keyboard, and lies on the bench', async () => {
    const { page, complaints } = await rig.open('/start')
    await page.getByLabel('Outside').selectOption('lever-lid tin')
    await page.getByLabel('Inside it, for the fuel').selectOption('drawn tomato can')
    await page.getByText(/^Burns clean, about/).waitFor({ timeout: LONG })
    await page.getByText(/held by its rim/).waitFor()
    expect(await axeViolations(page)).toEqual([])
    await page.getByLabel('Name', { exact: true }).fill('Dunlin')
    await expect.poll(() => page.getByRole('button', { name: 'Lay it on the bench' }).isEnabled()).toBe(true)
    await page.getByRole('button', { name: 'Lay it on the bench' }).focus()
    await page.keyboard.press('Enter')
    await page.waitForURL(/\/stove\/[0-9a-f]{32}$/)
    const { stove, note } = await stoveAt(page.url())
    expect(stove?.name).toBe('Dunlin')
    expect([...(stove?.parts.keys() ?? [])]).toEqual(
      expect.arrayContaining(['shell', 'fuel can', 'concentrator', 'damper']),
    )
    expect(note).toBe('Started from lever-lid tin and drawn tomato can of the shelf.')
    // Loaded anew, it is all there.
    await page.reload()
    await page.getByText('Dunlin').first().waitFor()
    expect(complaints).toEqual([])
  })

  it('has its concentrator slit for vanes, and a can of the shelf for its pot stand, where that is wanted', async () => {
    const { page, complaints } = await rig.open('/start')
    await page.getByLabel('Outside').selectOption('lever-lid tin')
    await page.getByLabel('Inside it, for the fuel').selectOption('drawn tomato can')
    // A can that is in the stove already cannot carry the pot as well.
    const stand = page.getByLabel('Pot stand')
    expect(await stand.locator('option', { hasText: /^(lever-lid tin|drawn tomato can),/ }).count()).toBe(0)
    await stand.selectOption('coffee can')
    await page.getByLabel('Concentrator').selectOption('vanes')
    await page.getByText(/^concentrator: \d+ vanes, .* wide, bent 30 deg$/).waitFor({ timeout: LONG })
    expect(await axeViolations(page)).toEqual([])
    await page.getByRole('button', { name: 'Lay it on the bench' }).click({ timeout: LONG })
    await page.waitForURL(/\/stove\/[0-9a-f]{32}$/)
    const { stove } = await stoveAt(page.url())
    expect(stove?.parts.get('concentrator')?.openings.get('vanes')).toMatchObject({
      kind: 'vanes',
      bend: 'up',
    })
    expect(stove?.parts.has('pot stand')).toBe(true)
    expect(complaints).toEqual([])
  })

  it('says why two cans make none', async () => {
    const { page } = await rig.open('/start')
    await page.getByLabel('Outside').selectOption('bean can')
    await page.getByLabel('Inside it, for the fuel').selectOption('coffee can')
    await page.getByText(/coffee can in bean can makes no stove that holds/).waitFor({ timeout: LONG })
    await expect.poll(() => page.getByRole('button', { name: 'Lay it on the bench' }).isDisabled()).toBe(true)
    await page.getByLabel('Inside it, for the fuel').selectOption('bean can')
    await page.getByText('A can cannot stand in itself').waitFor()
  })

  it('comes from an example, from a file, and from the code of a plan', async () => {
    const text = readFileSync('examples/heron.stove.json', 'utf8')
    const { page, complaints } = await rig.open('/start')
    await page.getByRole('button', { name: 'Greylag' }).click()
    await page.waitForURL(/\/stove\//)
    expect((await stoveAt(page.url())).stove?.name).toBe('Greylag, my own')

    await page.goto(new URL('/start', rig.server().address).href)
    await page.getByLabel('Stove file', { exact: true }).setInputFiles({
      name: 'knot.stove.json',
      mimeType: 'application/json',
      buffer: Buffer.from(text.replace('"Heron"', '"Knot"')),
    })
    await page.waitForURL(/\/stove\//)
    expect((await stoveAt(page.url())).stove?.name).toBe('Knot')

    await page.goto(new URL('/start', rig.server().address).href)
    const code = planCode(text.replace('"Heron"', '"Sanderling"')) as string
    await page.getByLabel(/paste its whole text/).fill(code.slice(0, -5))
    await page.getByRole('button', { name: 'Read it' }).click()
    await page.getByText(/Scan it again, flat and in good light/).waitFor()
    await page.getByLabel(/paste its whole text/).fill(code)
    await page.getByRole('button', { name: 'Read it' }).click()
    await page.waitForURL(/\/stove\//)
    expect((await stoveAt(page.url())).stove?.name).toBe('Sanderling')
    expect(complaints).toEqual([])
  })

  it('is started on a phone in the dark', async () => {
    const { page } = await rig.open('/start', { width: 360, height: 740, look: 'dark', touch: true })
    await page.getByLabel('Outside').waitFor()
    expect(await sidewaysScroll(page)).toBe(0)
    expect(await axeViolations(page)).toEqual([])
  })
})
