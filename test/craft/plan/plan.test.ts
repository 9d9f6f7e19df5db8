import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import type { Block } from '#craft/page/block.ts'
import { disagreements, dualValues } from '#craft/page/dualValues.ts'
import { heightOfBlocks } from '#craft/page/flow.ts'
import { type LaidPage, pageRoom } from '#craft/page/lay.ts'
import { coverOf } from '#craft/plan/cover.ts'
import { planHtml, planPdf } from '#craft/plan/plan.ts'
import { closingSections, openingSections } from '#craft/plan/sections.ts'
import { readPlanCode } from '#stove/document/planCode.ts'
import { readStove } from '#stove/document/read.ts'
import type { Opening, Stove } from '#stove/model.ts'
import { needs } from '../../outsideProgram.ts'
import { meagreShelf, planOf, textsOf } from './plans.ts'

const folder = mkdtempSync(join(tmpdir(), 'tinwright-plan-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** A stove that is shut: it neither burns nor may be built. */
const withoutIntake = (stove: Stove): Stove => {
  const shell = stove.parts.get('shell')
  if (shell === undefined) throw new Error('no shell')
  return {
    ...stove,
    parts: new Map(stove.parts).set('shell', { ...shell, openings: new Map<string, Opening>() }),
  }
}

const plans = [
  ['redshank', () => planOf('redshank')],
  ['heron, no shelf', () => planOf('heron', undefined, null)],
  ['greylag, few bits', () => planOf('greylag', undefined, meagreShelf())],
  ['redshank without intake', () => planOf('redshank', withoutIntake)],
] as const

const overlap = (page: LaidPage): readonly string[] =>
  page.marks.flatMap((one, i) =>
    page.marks.slice(i + 1).flatMap((other) => {
      const across = Math.min(one.right, other.right) - Math.max(one.left, other.left)
      const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top)
      return across > 0.5 && down > 0.5 ? [`“${one.what}” and “${other.what}”`] : []
    }),
  )

const outside = ({ marks, width, height }: LaidPage): readonly string[] =>
  marks
    .filter(
      ({ left, right, top, bottom }) => left < 40 || right > width - 40 || top < 20 || bottom > height - 15,
    )
    .map(({ what }) => what)

describe.each(plans)('the plan of %s', (name, make) => {
  const input = make()

  test.each(['A4', 'Letter'] as const)(
    'on %s: nothing lies on anything else or runs off the page',
    async (paper) => {
      const { laid, pages, missingLetters } = await planPdf(await input, paper)
      expect(laid.flatMap(overlap)).toEqual([])
      expect(laid.flatMap(outside)).toEqual([])
      expect(missingLetters).toEqual([])
      expect(pages).toBeGreaterThan(laid.length)
    },
  )

  test('the same input gives the same bytes', async () => {
    const [one, other] = [await planPdf(await input, 'A4'), await planPdf(await make(), 'A4')]
    expect(Buffer.compare(Buffer.from(one.pdf), Buffer.from(other.pdf))).toBe(0)
    expect(planHtml(await input)).toBe(planHtml(await make()))
  })

  test('every length stands in both units, and the two agree', async () => {
    const texts = textsOf([...openingSections(await input), ...closingSections(await input)])
    expect(texts.flatMap(disagreements)).toEqual([])
    const single = texts.filter((text) =>
      dualValues(text).some(
        (stretch) =>
          stretch.kind === 'text' &&
          /\d ?(?:mm|cm)\b(?!²)/.test(stretch.text.replace(/\d+(?:\.\d+)? × [\d.× ]+mm(?! \()|“[^”]*”/g, '')),
      ),
    )
    // A bit has one name; the fuel's label is the trade's.
    expect(
      single.filter((text) => !/^[\d./ ]+ mm(?:,| \(pilot\)|$)/.test(text) && !text.includes('pellets')),
    ).toEqual([])
  })

  test('the cautions go with it, on paper and on a screen', async (context) => {
    needs(context, 'pdftotext')
    const file = join(folder, 'plan.pdf')
    writeFileSync(file, (await planPdf(await input, 'A4')).pdf)
    const pages = execFileSync('pdftotext', ['-layout', file, '-'], { maxBuffer: 1 << 26 })
      .toString()
      .split('\f')
      .slice(0, -1)
      .map((text) => text.replaceAll(/\s+/g, ' '))
    const html = planHtml(await input)
    for (const caution of MAKING_CAUTIONS) {
      expect(pages[0]).toContain(caution.split('. ')[0])
      expect(html).toContain(caution)
    }
    // Text pages say the worst in one line, template pages all of them.
    for (const [i, page] of pages.entries())
      expect(page, `page ${i + 1} of ${name}`).toMatch(/[Cc]arbon monoxide/)
    const said = html.replaceAll(/<(script|style)[^>]*>.*?<\/\1>/gs, '')
    expect(said).not.toMatch(/undefined|NaN|\[object/)
  })

  test('the code on its last page is the stove', async (context) => {
    needs(context, 'pdftoppm', 'zbarimg')
    const file = join(folder, 'code.pdf')
    const { pdf, pages } = await planPdf(await input, 'A4')
    writeFileSync(file, pdf)
    execFileSync('pdftoppm', [
      '-r',
      '200',
      '-f',
      String(pages),
      '-png',
      '-singlefile',
      file,
      join(folder, 'code'),
    ])
    const text = execFileSync('zbarimg', ['-q', '--raw', join(folder, 'code.png')], {
      stdio: ['ignore', 'pipe', 'ignore'],
    }).toString()
    const example = readFileSync(`examples/${name.split(/[ ,]/)[0]}.stove.json`, 'utf8')
    expect(orThrow(readStove(orThrow(readPlanCode(text))))).toEqual(orThrow(readStove(example)))
  })
})

/** Words of the pictures of a page for a screen, picture by picture: what the choice of units does not reach. */
const pictureWords = (html: string): readonly string[] =>
  [...html.matchAll(/<svg[\s\S]*?<\/svg>/g)].map(([svg]) =>
    [...svg.matchAll(/<(?:text|tspan)[^>]*>([^<]+)/g)]
      .map((match) => match[1])
      .join(' ')
      .replaceAll('\u00a0', ' '),
  )

/** Each unit and what has to stand near it. */
const PARTNERS: readonly (readonly [RegExp, RegExp])[] = [
  [/\d mm\b(?!²)/g, / in\b/],
  [/\d °C/g, /°F/],
  [/\d g\/s/g, /lb\/h/],
  [/\d m\/s/g, /ft\/s|mph/],
  [/\d g\b(?!\/)/g, / oz/],
  [/\d kW/g, /Btu\/h/],
]
const NEAR = 70

test('pictures of the page for a screen say every quantity in both systems', async () => {
  for (const name of ['redshank', 'heron', 'greylag']) {
    const words = pictureWords(planHtml(await planOf(name)))
    expect(words.filter((text) => text.includes('g/s')).length).toBeGreaterThan(0)
    const alone = words.flatMap((text) =>
      PARTNERS.flatMap(([unit, partner]) =>
        [...text.matchAll(unit)].flatMap(({ index }) => {
          const near = text.slice(index, index + NEAR)
          return partner.test(near) ? [] : [near]
        }),
      ),
    )
    expect(alone).toEqual([])
  }
})

test('the cover holds its cautions, and no lettering of the section under 7 pt, on A4 and Letter', async () => {
  for (const name of ['redshank', 'heron', 'greylag']) {
    const input = await planOf(name)
    for (const paper of ['A4', 'Letter'] as const) {
      const [cover] = (await planPdf(input, paper)).laid
      expect(cover?.marks.some(({ what }) => what.includes('Before anyone cuts or burns'))).toBe(true)
      // The section is the first picture on it.
      const [, section = ''] = (cover?.svg ?? '').split('<g transform="translate(')
      const scale = Number(/scale\(([\d.]+)\)/.exec(section)?.[1])
      const sizes = [...section.matchAll(/font-size="([\d.]+)"[^>]*>(?!<)/g)].map((match) => Number(match[1]))
      expect(sizes.length).toBeGreaterThan(40)
      // What follows the picture is set in points.
      expect(Math.min(...sizes.filter((size) => size > 12)) * scale).toBeGreaterThanOrEqual(7)
    }
  }
})

test('a cover with too little room keeps its cautions and gives its figures to the next page', async () => {
  const input = await planOf('heron')
  const titles = (blocks: readonly Block[]): readonly string[] => textsOf([{ id: '', title: '', blocks }])
  const wide = pageRoom('Letter')
  const whole = coverOf(input, [], wide)
  expect(titles(whole.first)).toContain('time to build')
  expect(whole.next).toEqual([])
  // Less by some lines: the section gives way. Much less: it cannot.
  const less = coverOf(input, [], { ...wide, height: 0.9 * wide.height })
  expect(titles(less.first)).toContain('time to build')
  expect(heightOfBlocks(less.first, wide.width)).toBeLessThanOrEqual(0.9 * wide.height)
  expect(heightOfBlocks(whole.first, wide.width)).toBeGreaterThan(0.9 * wide.height)
  const least = coverOf(input, [], { ...wide, height: 0.7 * wide.height })
  expect(titles(least.first)).toContain('Before anyone cuts or burns')
  expect(titles(least.first)).not.toContain('time to build')
  expect(titles(least.next)).toContain('time to build')
})

describe('what a plan cannot hide', () => {
  test('a stove that does not burn says so first, and why not to build it', async () => {
    const texts = textsOf(openingSections(await planOf('redshank', withoutIntake)))
    expect(texts[0]).toBe('Do not build it as drawn')
    expect(texts.some((text) => text.startsWith('As drawn it does not burn'))).toBe(true)
  })

  test('bits that are missing come with what would do instead, and what that does', async () => {
    const texts = textsOf(openingSections(await planOf('greylag', undefined, meagreShelf())))
    expect(texts).toContain('Bits that are not on the shelf')
    expect(texts.some((text) => /area; then (?:clean|smoulder|rich)/.test(text))).toBe(true)
  })
})
