import { readFileSync } from 'node:fs'
import { strFromU8, unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { loadPngPainter } from '#cli/png.ts'
import { solidKernel } from '#cli/solidKernel.ts'
import { ARTEFACTS, makingOf } from '#compose/artefact/artefacts.ts'
import { asOne, everything } from '#compose/artefact/everything.ts'
import type { MakingTools, MakingWish } from '#compose/artefact/wish.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import { readShelf } from '#stove/document/shelf.ts'
import { fonts } from '../craft/fonts.ts'

/** Solids, guides and cards of a whole stove, several times over, on a busy machine [ms]. */
const LONG = 240_000

const told: string[] = []
const tools: MakingTools = {
  fonts,
  script: readFileSync('src/page/plan.js', 'utf8'),
  version: '0.1.0',
  kernel: solidKernel,
  painter: loadPngPainter,
  tell: (doing) => told.push(doing),
}

const wishFor = (name: string): MakingWish => ({
  document: orThrow(readStoveDocument(readFileSync(`examples/${name}.stove.json`, 'utf8'))),
  shelf: orThrow(readShelf(readFileSync('examples/shelf.json', 'utf8'))),
  date: '2031-05-17',
  author: 'Saltings Bird Count, invented',
  licence: null,
  paper: 'Letter',
  solidFormat: 'stl',
  cardFormat: 'svg',
  cardTheme: 'dark',
  bandSets: 3,
})

const words = (bytes: Uint8Array): string => strFromU8(bytes).replace(/\s+/g, ' ')

describe('everything that can be taken away', () => {
  it.each(['redshank', 'heron'])(
    'makes each thing of %s, and all of them in one archive',
    async (name) => {
      const wish = wishFor(name)
      const making = makingOf(wish, tools)
      const archive = unzipSync((await everything(wish, making, tools)).bytes)
      const inside = Object.keys(archive)
      for (const artefact of ARTEFACTS) {
        const files = await making.make(artefact)
        expect(files.length, artefact).toBeGreaterThan(0)
        for (const { name: file, bytes } of files) {
          const there = inside.find((path) => path === file || path.endsWith(`/${file}`))
          expect(there, file).toBeDefined()
          expect(archive[there as string]?.length, file).toBe(bytes.length)
        }
      }
      expect(new Set(inside).size).toBe(inside.length)
      for (const caution of MAKING_CAUTIONS)
        for (const page of [
          archive['READ-ME.txt'],
          archive[`${name}-shop-list.txt`],
          archive[`steps/${name}-steps.txt`],
        ])
          expect(words(page as Uint8Array)).toContain(caution)
      expect(words(archive['READ-ME.txt'] as Uint8Array)).toContain(
        'By Saltings Bird Count, invented. No terms were named',
      )
      // Letter was asked for: nothing of it came out on another paper.
      expect(inside.filter((path) => /-a[34]\.pdf$/.test(path))).toEqual([])
      expect(inside.filter((path) => path.endsWith('-letter.pdf'))).toHaveLength(3)
      expect(told).toContain('Packing')
    },
    LONG,
  )

  it(
    'makes the same bytes of the same wish',
    async () => {
      const wish = wishFor('heron')
      const [one, other] = [
        await everything(wish, makingOf(wish, tools), tools),
        await everything(wish, makingOf(wish, tools), tools),
      ]
      expect(Buffer.compare(one.bytes, other.bytes)).toBe(0)
    },
    LONG,
  )

  it('hands out one file as it is and several as a zip', () => {
    const [a, b] = ['a.txt', 'b.txt'].map((name) => ({ name, bytes: new Uint8Array([65]) })) as [never, never]
    expect(asOne([], 'x', '2031-05-17')).toBeNull()
    expect(asOne([a], 'x', '2031-05-17')).toBe(a)
    const zip = asOne([a, b], 'x', '2031-05-17')
    expect(zip?.name).toBe('x.zip')
    expect(Object.keys(unzipSync((zip as { bytes: Uint8Array }).bytes))).toEqual(['a.txt', 'b.txt'])
  })
})
