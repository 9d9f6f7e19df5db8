import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { ask, benchRig } from '../harness/benchTest.ts'

const rig = benchRig()
const folder = mkdtempSync(join(tmpdir(), 'tinwright-files-'))
afterAll(() => rmSync(folder, { recursive: true }))

const names = async (): Promise<readonly string[]> =>
  (await ask<readonly { readonly kind: string; readonly name: string }[]>(rig.server(), 'list'))
    .filter(({ kind }) => kind === 'stove')
    .map(({ name }) => name)

describe('the stoves of the workshop', () => {
  it('shows each with its picture and what it does', async () => {
    const { page, complaints } = await rig.open('/')
    for (const name of ['Redshank', 'Heron', 'Greylag']) {
      const row = page.locator('.stove-row', { has: page.getByRole('link', { name, exact: true }) })
      await row.locator('img').waitFor()
      await expect
        .poll(() => row.locator('.stove-line').textContent())
        .toMatch(/^Burns clean: [\d.]+\skW\s\(\d+\sBtu\/h\) of wood gas for .*min on \d+\sg\s\([\d.]+\soz\)$/)
    }
    expect(complaints).toEqual([])
  })

  it('renames, takes away and brings back, and takes each back in words', async () => {
    const { page, complaints } = await rig.open('/')
    await page.getByRole('button', { name: 'More for Heron', exact: true }).click()
    await page.getByLabel('Name').fill('Grey heron')
    await page.getByRole('button', { name: 'Rename' }).click()
    await page.getByRole('link', { name: 'Grey heron' }).waitFor()
    await expect.poll(names).toContain('Grey heron')

    // What leaves as a file bears the new name, inside too.
    await page.getByRole('button', { name: 'More for Grey heron' }).click()
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ])
    expect(file.suggestedFilename()).toBe('grey-heron.stove.json')
    expect(JSON.parse(readFileSync(await file.path(), 'utf8')).name).toBe('Grey heron')
    await page.keyboard.press('Escape')

    await page.getByRole('button', { name: 'Undo: rename “Heron” to “Grey heron”' }).click()
    await page.getByRole('link', { name: 'Heron', exact: true }).waitFor()
    await page.keyboard.press('Control+Shift+z')
    await page.getByRole('link', { name: 'Grey heron' }).waitFor()
    await page.keyboard.press('Control+z')
    await page.getByRole('link', { name: 'Heron', exact: true }).waitFor()

    await page.getByRole('button', { name: 'More for Greylag' }).click()
    await page.getByRole('button', { name: 'Take away' }).click()
    await page.getByText('Taken away (1)').click()
    await expect.poll(names).not.toContain('Greylag')
    await page.getByRole('button', { name: 'Bring back Greylag' }).click()
    await page.getByRole('link', { name: 'Greylag', exact: true }).waitFor()
    await expect.poll(names).toContain('Greylag')
    expect(complaints).toEqual([])
  })

  it('brings in a stove file, and says of a bad one what is wrong with it', async () => {
    const { page, complaints } = await rig.open('/')
    const good = await ask<{ readonly text: string }>(rig.server(), 'exportFile', {
      document: (await ask<readonly { id: string; name: string }[]>(rig.server(), 'list')).find(
        ({ name }) => name === 'Redshank',
      )?.id,
    })
    const goodFile = join(folder, 'curlew.stove.json')
    const badFile = join(folder, 'broken.stove.json')
    writeFileSync(goodFile, good.text.replace('"name": "Redshank"', '"name": "Curlew"'))
    writeFileSync(badFile, good.text.replace(/"count": \d+/, '"count": "eleven"'))
    await page.getByLabel('Files to bring in').setInputFiles([goodFile, badFile])
    await page.getByRole('link', { name: 'Curlew' }).waitFor()
    const refused = page.locator('.notice', {
      hasText: 'broken.stove.json will not do, and nothing was changed',
    })
    await refused.waitFor()
    await expect.poll(() => refused.textContent()).toMatch(/count.*eleven/s)
    // Dropped on the page, an archive comes in as well, and doubles nothing.
    const archive = Buffer.from(
      await (await fetch(new URL('/api/archive', rig.server().address))).arrayBuffer(),
    )
    await page.getByLabel('Files to bring in').setInputFiles({
      name: 'all.zip',
      mimeType: 'application/zip',
      buffer: archive,
    })
    await page.locator('.notice', { hasText: 'all.zip: all of it is here already' }).waitFor()
    await expect.poll(async () => (await names()).filter((name) => name === 'Curlew')).toHaveLength(1)
    expect(complaints).toEqual([])
  })

  it('says what to do where there is no stove', async () => {
    const { page } = await rig.open('/')
    for (const name of await names()) {
      await page.getByRole('button', { name: `More for ${name}`, exact: true }).click()
      await page.getByRole('button', { name: 'Take away' }).click()
      await page.getByRole('link', { name, exact: true }).waitFor({ state: 'detached' })
    }
    await page.getByText('There is no stove in this workshop').waitFor()
  })
})
