import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { ask, benchRig, stoveNamed } from '../harness/benchTest.ts'

const rig = benchRig()

interface Draft {
  readonly document: string
  readonly text: string
  readonly undo: string | null
  readonly unsaved: boolean
}
interface RevisionHead {
  readonly document: string
  readonly note: string
  readonly parents: readonly string[]
}

const ring = (page: Page) => page.locator('.grip[data-key="row fuel can ring"]')
const heightOf = (page: Page): Promise<string | null> => ring(page).getAttribute('aria-valuetext')
const ready = (page: Page): Promise<void> => ring(page).waitFor()
const keeping = (page: Page, kind: string) => page.locator(`.keeping[data-kind="${kind}"]`)
const allKept = (page: Page): Promise<void> => keeping(page, 'kept').waitFor()
const undoButton = (page: Page) => page.getByRole('button', { name: /^Undo/ }).first()
const redoButton = (page: Page) => page.getByRole('button', { name: /^Redo/ }).first()

/** Moves the upper row by the arrow keys, and waits until the picture shows it. */
const nudge = async (page: Page, key: 'ArrowUp' | 'ArrowDown' = 'ArrowDown', times = 1): Promise<string> => {
  const height = async (): Promise<string> => (await heightOf(page)) ?? ''
  const before = await height()
  await ring(page).focus()
  for (let i = 0; i < times; i++) await page.keyboard.press(key)
  // Each press is a millimetre: on a busy machine the picture rests between two of them.
  const moved = async (): Promise<number> =>
    Math.round(Math.abs(Number.parseFloat(await height()) - Number.parseFloat(before)))
  await expect.poll(moved).toBe(times)
  return height()
}

const save = async (page: Page, note: string): Promise<void> => {
  await page.keyboard.press('Control+s')
  const sheet = page.getByRole('dialog', { name: 'Save what is on the bench' })
  await sheet.getByLabel('What did you change, and why?').fill(note)
  await sheet.getByRole('button', { name: 'Save the revision' }).click()
  await sheet.waitFor({ state: 'hidden' })
}

const notes = async (document: string): Promise<readonly string[]> =>
  (await ask<readonly RevisionHead[]>(rig.server(), 'history', { document })).map(({ note }) => note)

describe('what is done on the bench', () => {
  it('is there again after a reload, with its undo, and is saved with a note', async () => {
    const heron = await stoveNamed(rig.server(), 'Heron')
    const { page, complaints } = await rig.open(`/stove/${heron}`)
    await ready(page)
    const start = await heightOf(page)
    // Held down, a key is one step of undo.
    const first = await nudge(page, 'ArrowDown', 3)
    await allKept(page)
    await page.reload()
    await ready(page)
    await expect.poll(() => heightOf(page)).toBe(first)
    await undoButton(page).click()
    await expect.poll(() => heightOf(page)).toBe(start)
    await expect.poll(() => undoButton(page).isDisabled()).toBe(true)
    await redoButton(page).click()
    await expect.poll(() => heightOf(page)).toBe(first)
    await allKept(page)
    const unsaved = async () =>
      (await ask<readonly Draft[]>(rig.server(), 'drafts', { document: heron })).map((draft) => draft.unsaved)
    await expect.poll(unsaved).toEqual([true])
    await save(page, 'Lower ring, for a longer flame.')
    await page.getByText('All kept').waitFor()
    await expect.poll(() => notes(heron)).toEqual([expect.any(String), 'Lower ring, for a longer flame.'])
    // The edits that led there can still be taken back.
    await page.keyboard.press('Control+z')
    await expect.poll(() => heightOf(page)).toBe(start)
    await page.keyboard.press('Control+Shift+z')
    await expect.poll(() => heightOf(page)).toBe(first)
    expect(complaints).toEqual([])
  })

  it('makes a variant with its parent, and leaves the stove as it was', async () => {
    const heron = await stoveNamed(rig.server(), 'Heron')
    const { page, complaints } = await rig.open(`/stove/${heron}`)
    await ready(page)
    const before = await heightOf(page)
    const moved = await nudge(page)
    await page.getByRole('button', { name: 'Save …' }).click()
    const sheet = page.getByRole('dialog', { name: 'Save what is on the bench' })
    await sheet.getByLabel('What did you change, and why?').fill('Ring lower still.')
    await sheet.getByRole('radio', { name: /variant/ }).check()
    await sheet.getByLabel('Its name').fill('Heron low')
    await sheet.getByRole('button', { name: 'Make the variant' }).click()
    await page.locator('.where-name', { hasText: 'Heron low' }).waitFor()
    await ready(page)
    await expect.poll(() => heightOf(page)).toBe(moved)
    await allKept(page)
    const variant = await stoveNamed(rig.server(), 'Heron low')
    const family = await ask<readonly (RevisionHead & { readonly id: string })[]>(rig.server(), 'family', {
      document: variant,
    })
    const own = family.find(({ document }) => document === variant)
    expect(family.find(({ id }) => id === own?.parents[0])?.document).toBe(heron)
    await page.goto(new URL(`/stove/${heron}`, rig.server().address).href)
    await ready(page)
    await expect.poll(() => heightOf(page)).toBe(before)
    // What went with the variant is one undo away here.
    await undoButton(page).click()
    await expect.poll(() => heightOf(page)).toBe(moved)
    await redoButton(page).click()
    await page.goto(rig.server().address)
    await page.getByRole('heading', { name: 'Heron and its 7 variants' }).waitFor()
    expect(complaints).toEqual([])
  })

  it('is safe in a server that is killed in the middle of an edit', async () => {
    const greylag = await stoveNamed(rig.server(), 'Greylag')
    const { page, complaints } = await rig.open(`/stove/${greylag}`)
    await ready(page)
    await nudge(page)
    await rig.server().kill()
    const last = await nudge(page, 'ArrowDown', 2)
    await keeping(page, 'kept here only').waitFor()
    await page.getByText('The workshop does not answer.').waitFor()
    await save(page, 'Saved while the workshop was away.')
    await rig.server().start()
    await allKept(page)
    await expect.poll(() => notes(greylag)).toContain('Saved while the workshop was away.')
    await page.reload()
    await ready(page)
    await expect.poll(() => heightOf(page)).toBe(last)
    expect(complaints).toEqual([])
  })

  it('is safe in a window that is closed before the workshop has heard of it', async () => {
    const greylag = await stoveNamed(rig.server(), 'Greylag')
    const { page, another, complaints } = await rig.open(`/stove/${greylag}`)
    await ready(page)
    await page.evaluate('navigator.serviceWorker.ready')
    await rig.server().kill()
    const last = await nudge(page, 'ArrowDown', 2)
    await keeping(page, 'kept here only').waitFor()
    await page.close()
    await rig.server().start()
    const next = await another(`/stove/${greylag}`)
    await ready(next)
    // The new window goes on where the closed one was, with its undo.
    await expect.poll(() => heightOf(next)).toBe(last)
    await allKept(next)
    await expect.poll(() => undoButton(next).isDisabled()).toBe(false)
    const drafts = () => ask<readonly Draft[]>(rig.server(), 'drafts', { document: greylag })
    await expect.poll(async () => (await drafts()).some(({ unsaved }) => unsaved)).toBe(true)
    expect(complaints).toEqual([])
  })

  it('is done once, however often an answer is lost on its way', async () => {
    const heron = await stoveNamed(rig.server(), 'Heron')
    const { page } = await rig.open(`/stove/${heron}`, { noWorker: true })
    await ready(page)
    // The server does it, and the page never hears of it: the first time of each call.
    for (const call of ['autosave', 'undoEdit', 'redoEdit', 'save', 'create'])
      await page.route(
        `**/api/${call}`,
        async (route) => {
          await route.fetch()
          await route.abort()
        },
        { times: 1 },
      )
    const before = await notes(heron)
    const start = await heightOf(page)
    const first = await nudge(page)
    await allKept(page)
    await undoButton(page).click()
    await expect.poll(() => heightOf(page)).toBe(start)
    await allKept(page)
    await redoButton(page).click()
    await expect.poll(() => heightOf(page)).toBe(first)
    await allKept(page)
    await save(page, 'Answered at the second try.')
    await allKept(page)
    await expect.poll(() => notes(heron)).toEqual([...before, 'Answered at the second try.'])
    // One step it was, for the page and for the workshop.
    await page.reload()
    await ready(page)
    await undoButton(page).click()
    await expect.poll(() => heightOf(page)).toBe(start)
    await redoButton(page).click()
    await expect.poll(() => heightOf(page)).toBe(first)
    await expect.poll(() => redoButton(page).isDisabled()).toBe(true)
    await allKept(page)
    await page.getByRole('button', { name: 'Save …' }).click()
    const sheet = page.getByRole('dialog', { name: 'Save what is on the bench' })
    await sheet.getByLabel('Its name').fill('Heron once')
    await sheet.getByRole('button', { name: 'Make the variant' }).click()
    await page.locator('.where-name', { hasText: 'Heron once' }).waitFor()
    await allKept(page)
    const made = async () =>
      (await ask<readonly { readonly name: string }[]>(rig.server(), 'list')).filter(
        ({ name }) => name === 'Heron once',
      )
    await expect.poll(made).toHaveLength(1)
  })

  it('is all there after one kill upon the other', async () => {
    const redshank = await stoveNamed(rig.server(), 'Redshank')
    const { page, complaints } = await rig.open(`/stove/${redshank}`)
    await ready(page)
    let last = await heightOf(page)
    for (let round = 0; round < 5; round++) {
      last = await nudge(page, round % 2 === 0 ? 'ArrowDown' : 'ArrowUp', 1 + round)
      // In the middle of what is on its way, a little later each time.
      await page.waitForTimeout(round * 220)
      await rig.server().kill()
      await rig.server().start()
    }
    await allKept(page)
    await page.reload()
    await ready(page)
    await expect.poll(() => heightOf(page)).toBe(last)
    // The workshop has it too, and not this browser alone.
    const elsewhere = await rig.open(`/stove/${redshank}`)
    await ready(elsewhere.page)
    await elsewhere.page.getByRole('button', { name: 'Take it over here' }).click()
    await expect.poll(() => heightOf(elsewhere.page)).toBe(last)
    expect(complaints).toEqual([])
  })
})

describe('two windows on one stove', () => {
  it('see each other, and keep both where they went apart', async () => {
    const redshank = await stoveNamed(rig.server(), 'Redshank')
    const path = `/stove/${redshank}`
    const { page: one, another, complaints } = await rig.open(path)
    const two = await another(path)
    await ready(one)
    await ready(two)
    const start = await heightOf(one)

    const inTwo = await nudge(two, 'ArrowUp')
    await allKept(two)
    await one.getByText('Another window has an edit of this stove').waitFor()

    const inOne = await nudge(one, 'ArrowDown', 2)
    await save(one, 'Saved in the first window.')
    await keeping(two, 'conflict').waitFor()
    const sentence = two.getByRole('alert').filter({ hasText: 'Both are kept' })
    await expect.poll(() => sentence.textContent()).toContain('Saved in the first window.')
    await expect.poll(() => heightOf(two)).toBe(inTwo)

    // Theirs is taken, and mine comes back by undo.
    await two.getByRole('button', { name: 'Take theirs' }).click()
    await expect.poll(() => heightOf(two)).toBe(inOne)
    await allKept(two)
    await undoButton(two).click()
    await expect.poll(() => heightOf(two)).toBe(inTwo)

    // Once more, and mine becomes a stove of its own.
    await nudge(one, 'ArrowUp')
    await save(one, 'And once more.')
    await keeping(two, 'conflict').waitFor()
    await two.getByRole('button', { name: 'Keep mine as “Redshank, mine”' }).click()
    await two.locator('.where-name', { hasText: 'Redshank, mine' }).waitFor()
    await ready(two)
    await expect.poll(() => heightOf(two)).toBe(inTwo)
    await expect
      .poll(() => notes(redshank))
      .toEqual([expect.any(String), 'Saved in the first window.', 'And once more.'])
    expect(inTwo).not.toBe(start)
    expect(complaints).toEqual([])
  })

  it('follow each other where nothing is in the way', async () => {
    const heron = await stoveNamed(rig.server(), 'Heron')
    const { page: one, another, complaints } = await rig.open(`/stove/${heron}`)
    const two = await another(`/stove/${heron}`)
    await ready(one)
    await ready(two)
    const moved = await nudge(one)
    await save(one, 'For both.')
    await expect.poll(() => heightOf(two)).toBe(moved)
    expect(complaints).toEqual([])
  })
})
