import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PDFBool, PDFDict, PDFDocument, PDFName } from '@cantoo/pdf-lib'
import { afterAll, describe, expect, it } from 'vitest'
import { BadInput } from '#basis/problem.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { type TemplateOptions, templatesPdf } from '#craft/templates.ts'
import { needs } from '../../outsideProgram.ts'
import { fonts } from '../fonts.ts'
import { bareShell, pocketStove, round, row, testStoves } from '../stoves.ts'

const OPTIONS: TemplateOptions = { paper: 'A4', date: '2031-05-17', version: '0.1.0', fonts }

const folder = mkdtempSync(join(tmpdir(), 'tinwright-pdf-'))
afterAll(() => rmSync(folder, { recursive: true }))

const onDisk = (name: string, pdf: Uint8Array): string => {
  const path = join(folder, name)
  writeFileSync(path, pdf)
  return path
}

describe('the template document', () => {
  it('is the same to the byte for the same stove, day and version', async () => {
    for (const make of testStoves) {
      const [one, other] = [await templatesPdf(make(), OPTIONS), await templatesPdf(make(), OPTIONS)]
      expect(Buffer.compare(one.pdf, other.pdf)).toBe(0)
    }
  })

  it('differs by its day', async () => {
    const [one, other] = [
      await templatesPdf(pocketStove(), OPTIONS),
      await templatesPdf(pocketStove(), { ...OPTIONS, date: '2031-05-18' }),
    ]
    expect(Buffer.compare(one.pdf, other.pdf)).not.toBe(0)
  })

  it('asks for printing without scaling, on paper of the page’s size, and bears title, day and version', async () => {
    const { pdf, pages } = await templatesPdf(pocketStove(), OPTIONS)
    const doc = await PDFDocument.load(pdf, { updateMetadata: false })
    const wishes = doc.catalog.lookup(PDFName.of('ViewerPreferences'), PDFDict)
    expect(wishes.get(PDFName.of('PrintScaling'))).toBe(PDFName.of('None'))
    expect(wishes.get(PDFName.of('PickTrayByPDFSize'))).toBe(PDFBool.True)
    expect(doc.getTitle()).toBe('Lock-keeper’s pocket stove: drilling templates')
    expect(doc.getProducer()).toBe('Tinwright 0.1.0')
    expect(doc.getCreationDate()?.toISOString()).toBe('2031-05-17T00:00:00.000Z')
    expect(doc.getModificationDate()?.toISOString()).toBe('2031-05-17T00:00:00.000Z')
    expect(doc.getPageCount()).toBe(pages)
  })

  it('prints a letter that no font has as a question mark, and says so', async () => {
    const stove = { ...bareShell(90, { intake: row(round(6), 8, 20) }), name: 'Žďár 鍋 θ' }
    const { missingLetters } = await templatesPdf(stove, OPTIONS)
    expect(missingLetters).toEqual(['鍋'])
  })

  it('refuses a day that is none', async () => {
    for (const date of ['17 May 2031', '2031-02-30', '2031-13-01', '']) {
      const error = await templatesPdf(pocketStove(), { ...OPTIONS, date }).catch((caught: unknown) => caught)
      expect(error).toBeInstanceOf(BadInput)
      expect((error as BadInput).problems[0]?.field).toBe('date')
    }
  })

  it('refuses a stove with nothing to drill or cut', async () => {
    const whole = bareShell(90, {}, { top: { kind: 'drawn' }, bottom: { kind: 'drawn' } })
    const error = await templatesPdf(whole, OPTIONS).catch((caught: unknown) => caught)
    expect((error as BadInput).problems[0]?.code).toBe('templates.nothing')
  })

  it('refuses a band that goes round no can', async () => {
    const stove = pocketStove()
    const loose = { ...stove, assembly: stove.assembly.filter(({ part }) => part !== 'damper') }
    const error = await templatesPdf(loose, OPTIONS).catch((caught: unknown) => caught)
    expect((error as BadInput).problems[0]?.code).toBe('band.no-can')
  })
})

describe('the words of the template document, read by pdftotext', () => {
  it('are embedded as text: cautions, printing and issue on every page, lengths in both units', async (context) => {
    needs(context, 'pdftotext')
    for (const paper of ['A4', 'Letter'] as const) {
      const { pdf, pages } = await templatesPdf(pocketStove(), { ...OPTIONS, paper })
      const path = onDisk(`words-${paper}.pdf`, pdf)
      const read = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' })
        .split('\f')
        .slice(0, -1)
        .map((page) => page.replaceAll(/\s+/g, ' '))
      expect(read).toHaveLength(pages)
      for (const [index, page] of read.entries()) {
        for (const caution of MAKING_CAUTIONS) expect(page).toContain(caution)
        expect(page).toContain(`2031-05-17 · Tinwright 0.1.0 · page ${index + 1} of ${pages}`)
        expect(page).toContain('100 mm')
        expect(page).toContain('4 in')
      }
      expect(read.join(' ')).toContain('intake: 11 × Ø 12.7 mm (1/2 in)')
      expect(read.join(' ')).toContain('π times body and one paper thickness')
    }
  })
})
