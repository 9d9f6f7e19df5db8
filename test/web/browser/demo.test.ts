import { describe, expect, it } from 'vitest'
import { ask, benchRig, stoveNamed } from '../harness/benchTest.ts'
import { axeViolations, sidewaysScroll } from '../harness/browser.ts'

const rig = benchRig()

describe('the series of the demo', () => {
  it('is a family: what was changed and why, what was predicted, what trials said', async () => {
    const heron = await stoveNamed(rig.server(), 'Heron')
    const { page, complaints } = await rig.open(`/stove/${heron}/family`)
    const step = page.getByRole('treeitem', { name: /^Bore of the concentrator 54\smm/ })
    await step.getByText('; 4 trials').waitFor()
    await expect.poll(() => page.getByRole('treeitem').count()).toBe(14)
    await step.click()
    const pane = page.getByLabel('The chosen step')
    await pane.getByRole('heading', { name: 'Heron B, wider bore' }).waitFor()
    await pane.getByText(/^concentrator, bore:/).waitFor()
    await pane.getByText(/^4 trials: boiled in \d\.\d+\smin on average/).waitFor()
    expect(await axeViolations(page)).toEqual([])
    expect(complaints).toEqual([])
  })

  it('says which change helped, and which only looked as if it did', async () => {
    const plain = await stoveNamed(rig.server(), 'Heron A, as planned')
    const { page, complaints } = await rig.open(`/stove/${plain}/trials`)
    const said = page.locator('.verdicts li')
    await said.first().waitFor()
    const verdicts = await said.evaluateAll((all) =>
      all.map((one) => [one.textContent?.slice(0, 3), one.getAttribute('data-verdict')]),
    )
    expect(verdicts).toEqual([
      ['“B,', 'better'],
      ['“C,', 'open'],
      ['“D,', 'worse'],
      ['“E,', 'open'],
      ['“F,', 'open'],
    ])
    await expect.poll(() => page.getByRole('button', { name: 'Lay in the invented series' }).count()).toBe(0)
    expect(complaints).toEqual([])
  })

  it('has whole burns on the desk, log and all', async () => {
    const heads = await ask<readonly { readonly id: string; readonly name: string }[]>(rig.server(), 'list')
    const burn = heads.find(({ name }) => name === 'Heron, burn 1')
    const { page, complaints } = await rig.open(`/trial/${burn?.id}`)
    await page.getByRole('heading', { name: 'What it came to' }).waitFor()
    await page.getByText('11.67 min').first().waitFor()
    await expect.poll(() => page.getByText('Still to say').count()).toBe(0)
    await page.getByRole('row', { name: /Tipped into a lidded tin/ }).waitFor()
    await page.setViewportSize({ width: 360, height: 740 })
    expect(await sidewaysScroll(page)).toBe(0)
    expect(complaints).toEqual([])
  })
})
