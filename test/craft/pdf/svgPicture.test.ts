import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { initWasm, Resvg } from '@resvg/resvg-wasm'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { writePdf } from '#craft/pdf/write.ts'
import { needs } from '../../outsideProgram.ts'
import { fonts } from '../fonts.ts'

/** The same pictures drawn by two programs of others: once from the SVG, once from our PDF of it. */

const folder = mkdtempSync(join(tmpdir(), 'tinwright-picture-'))
afterAll(() => rmSync(folder, { recursive: true }))
beforeAll(async () => {
  await initWasm(readFileSync(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')))
})

const sized = (svg: string): readonly [number, number] => {
  const [, , width, height] = (/viewBox="([^"]+)"/.exec(svg)?.[1] ?? '').split(' ').map(Number)
  return [width as number, height as number]
}

/** Pixels to a unit, each way, before they are averaged: the two programs smooth thin lines in their own ways. */
const FINE = 3

/** One pixel a unit, red, green, blue. */
const averaged = (pixels: Uint8Array, channels: number, width: number): Float32Array => {
  const [wide, tall] = [width, pixels.length / channels / FINE / FINE / width]
  const out = new Float32Array(3 * wide * tall)
  for (let y = 0; y < tall * FINE; y += 1)
    for (let x = 0; x < wide * FINE; x += 1)
      for (let k = 0; k < 3; k += 1) {
        const at = 3 * (Math.floor(y / FINE) * wide + Math.floor(x / FINE)) + k
        out[at] = (out[at] as number) + (pixels[(y * wide * FINE + x) * channels + k] as number) / FINE / FINE
      }
  return out
}

const ofSvg = (svg: string): Float32Array => {
  const image = new Resvg(svg, { background: '#ffffff', fitTo: { mode: 'zoom', value: FINE } }).render()
  return averaged(image.pixels, 4, image.width / FINE)
}

const pdfOf = async (svg: string): Promise<Uint8Array> => {
  const [width, height] = sized(svg)
  const mm = 25.4 / 72
  const sheet = {
    size: { width: width * mm, height: height * mm },
    label: '',
    pieces: [],
    furniture: [],
    pictures: [{ svg, at: { x: 0, y: height * mm }, width: width * mm }],
  }
  const { bytes } = await writePdf([sheet], { title: 'picture', date: '2031-05-17', version: '0', fonts })
  return bytes
}

const ofPdf = async (svg: string): Promise<Float32Array> => {
  const [width, height] = sized(svg).map((side) => String(side * FINE)) as [string, string]
  const file = join(folder, 'picture.pdf')
  writeFileSync(file, await pdfOf(svg))
  const ppm = execFileSync('pdftoppm', ['-scale-to-x', width, '-scale-to-y', height, file], {
    maxBuffer: 1 << 27,
  })
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(ppm.subarray(0, 40).toString('latin1'))
  expect([head?.[1], head?.[2]]).toEqual([width, height])
  return averaged(ppm.subarray(head?.[0].length), 3, sized(svg)[0])
}

const mute = (svg: string): string => svg.replace(/<text[\s\S]*?<\/text>/g, '')

describe('a picture in a PDF', () => {
  for (const name of [
    'section',
    'section-dark',
    'section-greylag',
    'section-heron',
    'section-narrow',
    'physics-burn',
    'physics-wind',
    'physics-path',
  ])
    test(`${name} looks as its SVG does`, async (context) => {
      needs(context, 'pdftoppm')
      // Without words: the two programs have other fonts.
      const svg = mute(readFileSync(`docs/pictures/${name}.svg`, 'utf8').trim())
      const [one, other] = [ofSvg(svg), await ofPdf(svg)]
      expect(one.length).toBe(other.length)
      let [sum, far] = [0, 0]
      for (let i = 0; i < one.length; i += 3) {
        const off = Math.max(
          ...[0, 1, 2].map((k) => Math.abs((one[i + k] as number) - (other[i + k] as number))),
        )
        sum += off
        if (off > 70) far += 1
      }
      const pixels = one.length / 3
      // Edges are smoothed otherwise; a missing ribbon, gradient or half would be a hundred times as much.
      expect(sum / pixels).toBeLessThan(1.2)
      expect(far / pixels).toBeLessThan(0.003)
    })

  test('words are text, not lines, and say what the picture says', async (context) => {
    needs(context, 'pdftotext')
    const svg = readFileSync('docs/pictures/section.svg', 'utf8').trim()
    await ofPdf(svg)
    const text = execFileSync('pdftotext', ['-layout', join(folder, 'picture.pdf'), '-']).toString()
    for (const word of [
      'Redshank',
      'windows 6 of 18 × 22 mm',
      'Where the draught goes',
      'Wood gas contains carbon monoxide',
    ])
      expect(text.replaceAll(/\s+/g, ' ')).toContain(word)
  })

  test('the same picture gives the same bytes', async () => {
    const svg = readFileSync('docs/pictures/section.svg', 'utf8').trim()
    const [first, second] = [await pdfOf(svg), await pdfOf(svg)]
    expect(Buffer.compare(Buffer.from(first), Buffer.from(second))).toBe(0)
  })

  test.each([
    ['<image/>', 'no <image>'],
    ['<path d="M0 0Z" fill="red"/>', 'no colour of ours'],
    ['<g transform="skewX(3)"/>', 'no transform'],
    ['<use href="#gone"/>', 'no element “gone”'],
  ])('%s is refused: nothing is left out unsaid', async (inside, why) => {
    await expect(pdfOf(`<svg viewBox="0 0 9 9">${inside}</svg>`)).rejects.toThrow(why)
  })
})
