import { randomUUID } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { ask, benchRig, stoveNamed } from '../harness/benchTest.ts'
import { axeViolations, sidewaysScroll } from '../harness/page.ts'
import type { BenchServer } from '../harness/server.ts'

const LONG = 240_000

type Loose = ReturnType<typeof JSON.parse>

const newId = (): string => randomUUID().replaceAll('-', '')
const act = () => ({ id: newId(), client: 'a-test', at: new Date().toISOString() })

/** Redshank with a step of its own, and a variant made from that step. */
let redshank = ''
let variant = ''
const prepare = async (server: BenchServer): Promise<void> => {
  redshank = await stoveNamed(server, 'Redshank')
  const { revision } = await ask<{ readonly revision: { readonly id: string; readonly text: string } }>(
    server,
    'open',
    { document: redshank },
  )
  const stove: Loose = JSON.parse(revision.text)
  stove.parts.shell.openings.intake.count = 14
  stove.parts['fuel can'].openings.ring.height = '10 mm'
  const step = newId()
  await ask(server, 'save', {
    act: act(),
    wanted: {
      document: redshank,
      revision: step,
      base: revision.id,
      text: JSON.stringify(stove),
      note: 'More intake, ring higher: the flame was lazy.',
    },
  })
  stove.name = 'Redshank, wide bore'
  stove.parts.concentrator.openings.bore.diameter = '46 mm'
  variant = newId()
  await ask(server, 'create', {
    act: act(),
    wanted: {
      id: variant,
      kind: 'stove',
      name: stove.name,
      revision: newId(),
      text: JSON.stringify(stove),
      note: '',
      parents: [step],
    },
  })
}

const rig = benchRig({ prepare })

const openFamily = async (wish?: Parameters<typeof rig.open>[1]) => {
  const opened = await rig.open(`/stove/${redshank}/family`, wish)
  await opened.page.getByRole('treeitem', { name: /More intake/ }).waitFor()
  return opened
}

describe('the family of a stove', () => {
  it('tells at each step what was changed and what was predicted, and is walked by arrow keys', async () => {
    const { page, complaints } = await openFamily()
    const pane = page.locator('.family-pane')
    await page.getByRole('treeitem', { name: /More intake/ }).click()
    await pane.getByText('12 → 14 holes').waitFor()
    await pane.getByText('6 mm (15/64 in) higher: 16 mm (5/8 in) → 10 mm (25/64 in)').waitFor()
    await expect
      .poll(() => pane.textContent(), { timeout: LONG })
      .toMatch(/[\d.]+\skW.* for [\d.]+\smin, .* \(.*(more|less|longer|shorter).*\)/)
    expect(await axeViolations(page)).toEqual([])
    // Down to the variant and its only step, up again, closed and opened.
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    await pane.getByText('6 mm (15/64 in) wider: 40 mm (1 9/16 in) → 46 mm (1 13/16 in)').waitFor()
    await page.keyboard.press('ArrowLeft')
    await page.keyboard.press('ArrowLeft')
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(4)
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(5)
    expect(complaints).toEqual([])
  })

  it('goes on from an earlier step as a new stove', async () => {
    const { page } = await openFamily()
    await page
      .getByRole('treeitem', { name: /From the file|as it began/ })
      .first()
      .click()
    await page.getByLabel('Go on from here as a new stove').fill('Redshank, the other way')
    await page.getByRole('button', { name: 'Branch' }).click()
    await page.waitForURL(/\/stove\/[0-9a-f]{32}$/)
    const made = new URL(page.url()).pathname.split('/').at(-1)
    const family = async () =>
      (
        await ask<readonly { readonly document: string }[]>(rig.server(), 'family', { document: redshank })
      ).map(({ document }) => document)
    await expect.poll(family).toContain(made)
  })

  it('sets two steps side by side: one scale, one clock, and what differs', async () => {
    const { page, complaints } = await openFamily()
    await page.getByRole('treeitem', { name: /More intake/ }).click()
    await page.keyboard.press('Space')
    await page.getByRole('treeitem', { name: /concentrator, bore/ }).click({ timeout: LONG })
    await page.keyboard.press('Space')
    await page.getByRole('link', { name: 'Set 2 side by side' }).click()
    await expect.poll(() => page.locator('.beside-curves .beside-line').count()).toBe(4)
    const firepower = page.getByRole('row', { name: /^Firepower/ })
    await expect.poll(() => firepower.textContent()).toMatch(/kW.*kW.*(more|less)/)
    await expect.poll(() => page.title()).toBe('Side by side: Redshank, Redshank, wide bore · Tinwright')
    const bore = page.getByText('concentrator, bore: 6 mm')
    await bore.filter({ hasText: '(15/64 in) wider: 40 mm (1 9/16 in) → 46 mm (1 13/16 in)' }).waitFor()
    // In the units that were chosen, whatever the maker wrote.
    await page.getByRole('radio', { name: 'inch' }).check({ force: true })
    await page.getByText('concentrator, bore: 15/64 in wider: 1 9/16 in → 1 13/16 in').waitFor()
    await page.getByRole('radio', { name: 'mm' }).check({ force: true })
    await page.getByText('concentrator, bore: 6 mm wider: 40 mm → 46 mm').waitFor()
    expect(await axeViolations(page)).toEqual([])
    expect(complaints).toEqual([])
  })

  it('lies well on a phone in the dark', async () => {
    const { page } = await openFamily({ width: 360, height: 740, look: 'dark', touch: true })
    expect(await sidewaysScroll(page)).toBe(0)
    expect(await axeViolations(page)).toEqual([])
  })

  it('stands beside other stoves of the workshop, three on a phone', async () => {
    const heron = await stoveNamed(rig.server(), 'Heron')
    const { page, complaints } = await rig.open(`/beside/${[redshank, variant, heron].join('+')}`, {
      width: 360,
      height: 740,
      touch: true,
    })
    await expect.poll(() => page.locator('.beside-curves .beside-line').count()).toBe(6)
    // All pictures to one scale: each has the same box.
    const boxes = (await page.evaluate(
      '[...document.querySelectorAll(".beside-picture")].map((at) => at.shadowRoot.querySelector("svg").getAttribute("viewBox"))',
    )) as readonly string[]
    expect(new Set(boxes).size).toBe(1)
    expect(await sidewaysScroll(page)).toBe(0)
    expect(await axeViolations(page)).toEqual([])
    expect(complaints).toEqual([])
  })
})
