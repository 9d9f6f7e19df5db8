import { describe, expect, it } from 'vitest'
import type { Mark } from '#craft/page/paint.ts'
import type { PaperName } from '#craft/sheet/paper.ts'
import { pageSize } from '#craft/sheet/paper.ts'
import { recordPages, recordPdf } from '#craft/trial/recordPdf.ts'
import { RECORD_KEYS } from '#craft/trial/recordSheet.ts'
import { trialSchema } from '#proof/trial/schema.ts'
import { fonts } from '../fonts.ts'

const issue = { date: '2031-05-17', version: '0.1.0' }
const PAPERS: readonly PaperName[] = ['A4', 'Letter']
const POINTS_PER_MM = 72 / 25.4

/** Two texts share ink only where their boxes meet by more than a rounding. */
const meet = (a: Mark, b: Mark): boolean =>
  a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5

describe.each(PAPERS)('the empty trial sheet on %s', (paper) => {
  const pages = recordPages('Heron with a rather long name of its own', { paper, ...issue })

  it('is two pages', () => {
    expect(pages).toHaveLength(2)
  })

  it('has no text over another and none off the page', () => {
    const size = pageSize(paper, 'portrait')
    for (const { marks } of pages) {
      expect(marks.length).toBeGreaterThan(20)
      for (const [i, one] of marks.entries()) {
        expect(one.left, one.what).toBeGreaterThanOrEqual(0)
        expect(one.right, one.what).toBeLessThanOrEqual(size.width * POINTS_PER_MM)
        expect(one.top, one.what).toBeGreaterThanOrEqual(0)
        expect(one.bottom, one.what).toBeLessThanOrEqual(size.height * POINTS_PER_MM)
        for (const other of marks.slice(i + 1))
          expect(meet(one, other), `${one.what} / ${other.what}`).toBe(false)
      }
    }
  })

  it('carries the cautions on its first page and carbon monoxide on both', () => {
    const words = pages.map(({ marks }) => marks.map(({ what }) => what).join(' '))
    for (const said of [
      /never in a tent, shelter or vehicle/,
      /drown it/,
      /may hold lead/,
      /not an approval/,
    ])
      expect(words[0]).toMatch(said)
    for (const page of words) expect(page).toContain('Carbon monoxide: burn outdoors only')
  })
})

it('has room for everything that a trial file must have', () => {
  const first = new Set(RECORD_KEYS.map((key) => key.split('.')[0]))
  // What a file says of itself, and what follows from the rest.
  first.add('format')
  for (const [key, schema] of Object.entries(trialSchema.shape))
    if (!schema.safeParse(undefined).success) expect([...first], key).toContain(key)
  expect(new Set(RECORD_KEYS).size).toBe(RECORD_KEYS.length)
})

it('the same name and day give the same bytes; a day that is none is refused', async () => {
  const make = () => recordPdf('Heron', { paper: 'A4', ...issue, fonts })
  expect((await make()).pdf).toEqual((await make()).pdf)
  await expect(recordPdf('', { paper: 'A4', ...issue, date: '2031-02-31', fonts })).rejects.toThrow(/date/)
})
