import { describe, expect, it } from 'vitest'
import { ask, benchRig } from '../harness/benchTest.ts'
import { axeViolations } from '../harness/browser.ts'

const rig = benchRig()

/** One grey pixel. */
const PHOTO = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
)

describe('the page of the workshop', () => {
  it('says where it is and what is in it, and that all of it is whole', async () => {
    const { page, complaints } = await rig.open('/workshop')
    await page.locator('.workshop-place', { hasText: rig.server().home }).waitFor()
    await expect.poll(() => page.locator('.workshop-counts').textContent()).toMatch(/9 stoves.*24 trials/)
    await page.getByRole('button', { name: 'Read all of it' }).click()
    await page.getByText('Everything is as it was written.').waitFor()
    await page.getByText('The bench listens to this machine alone.').waitFor()
    expect(complaints).toEqual([])
  })

  it('gives the archive out', async () => {
    const { page } = await rig.open('/workshop')
    const waiting = page.waitForEvent('download')
    await page.getByRole('link', { name: 'Save the archive' }).click()
    const download = await waiting
    expect(download.suggestedFilename()).toMatch(/\.zip$/)
  })

  it('keeps photos, shows them, and takes them away and back', async () => {
    const { page, complaints } = await rig.open('/workshop')
    await page.getByLabel('Photos of').selectOption({ label: 'Heron' })
    await page
      .getByLabel('Photos to add')
      .setInputFiles({ name: 'post.png', mimeType: 'image/png', buffer: PHOTO })
    await page.getByRole('img', { name: 'post' }).waitFor()
    await expect
      .poll(() =>
        page
          .locator('.photos img')
          .evaluate((image) => (image as unknown as { naturalWidth: number }).naturalWidth),
      )
      .toBe(1)
    expect(await axeViolations(page)).toEqual([])
    await page.getByRole('button', { name: 'Take away post' }).click()
    await page.getByRole('img', { name: 'post' }).waitFor({ state: 'detached' })
    await page.getByRole('button', { name: /^Undo: take “post” away/ }).click()
    await page.getByRole('img', { name: 'post' }).waitFor()
    const photos = async () =>
      (await ask<readonly { readonly kind: string }[]>(rig.server(), 'list')).filter(
        ({ kind }) => kind === 'photo',
      )
    await expect.poll(photos).toHaveLength(1)
    await page
      .getByLabel('Photos to add')
      .setInputFiles({ name: 'notes.png', mimeType: 'image/png', buffer: Buffer.from('no picture') })
    await page.locator('.notice', { hasText: 'notes.png was not kept.' }).waitFor()
    expect(complaints).toEqual([])
  })
})
