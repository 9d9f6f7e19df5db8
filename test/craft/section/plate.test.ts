import { describe, expect, test } from 'vitest'
import { deskPlate } from '#craft/section/deskPlate.ts'
import { narrowPlate } from '#craft/section/narrowPlate.ts'
import { pagePlate } from '#craft/section/pagePlate.ts'
import type { Plate, PlateInput } from '#craft/section/plate.ts'
import { letteringBox } from '#craft/section/sheet.ts'
import { lightTheme } from '#craft/section/theme.ts'
import { meet, offPage, overlaps } from '../letteringBoxes.ts'
import { type Subject, subject, subjects } from './scenes.ts'

const pages: readonly (readonly [string, (input: PlateInput) => Plate])[] = [
  ['desk', deskPlate],
  ['paper', (input) => pagePlate(input)],
  ['phone', narrowPlate],
]
const NOTES = ['A first sentence that goes under the picture.', 'And a second one.']
const inputOf = ({ stove, burn }: Subject, cold = false): PlateInput => ({
  stove,
  burn: cold ? null : burn,
  theme: lightTheme,
  notes: NOTES,
})

/** Opening tags must close in order: enough of XML to know that a browser reads it. */
const isBalanced = (svg: string): boolean => {
  const open: string[] = []
  for (const [tag, closing, name, selfClosing] of svg.matchAll(/<(\/?)([a-zA-Z]+)(?:\s[^<>]*?)?(\/?)>/g)) {
    if (tag === undefined || name === undefined) return false
    if (closing === '/') {
      if (open.pop() !== name) return false
    } else if (selfClosing !== '/') open.push(name)
  }
  return open.length === 0
}

describe.each(pages)('the %s page', (_, draw) => {
  describe.each([
    ['burning', false],
    ['cold', true],
  ])('%s', (_, cold) => {
    test.each(subjects)('of $name has no word over another or over the stove', (one) => {
      const plate = draw(inputOf(one, cold))
      expect(overlaps(plate.letterings)).toEqual([])
      const onStove = plate.letterings.filter((lettering) => meet(letteringBox(lettering), plate.stove))
      expect(onStove.map(({ text }) => text)).toEqual([])
    })

    test.each(subjects)('of $name keeps its words on the page', (one) => {
      const { letterings, width, height } = draw(inputOf(one, cold))
      expect(offPage(letterings, width, height)).toEqual([])
    })
  })

  test.each(subjects)('of $name is one sound picture', (one) => {
    const { svg } = draw(inputOf(one))
    expect(isBalanced(svg)).toBe(true)
    expect(svg).not.toMatch(/NaN|Infinity|undefined|null/)
    const ids = [...svg.matchAll(/ id="([^"]+)"/g)].map((match) => match[1])
    expect(new Set(ids).size).toBe(ids.length)
    const used = [...svg.matchAll(/(?:url\(#|href="#)([^)"]+)/g)].map((match) => match[1])
    expect(used.length).toBeGreaterThan(0)
    expect(used.filter((id) => !ids.includes(id))).toEqual([])
    expect(svg).not.toMatch(/https?:(?!\/\/www\.w3\.org\/2000\/svg")/)
  })

  test('is the same every time', () => {
    const one = subject('redshank.stove.json')
    expect(draw(inputOf(one)).svg).toBe(draw(inputOf(one)).svg)
  })

  test('names every opening but fixings, and what flows through it', () => {
    const one = subject('redshank.stove.json')
    const words = draw(inputOf(one)).letterings.flatMap(({ text, then }) => [text, then?.text ?? ''])
    for (const { openings } of one.stove.parts.values())
      for (const [name, { duty }] of openings)
        if (duty !== 'fixing' && name !== 'windows') expect(words).toContain(name)
    expect(words.filter((text) => text.includes('m/s')).length).toBeGreaterThanOrEqual(6)
  })

  test('says nothing of a burn that nobody predicted', () => {
    const words = draw(inputOf(subject('redshank.stove.json'), true)).letterings.map(({ text }) => text)
    expect(words.filter((text) => /m\/s|kW|°C/.test(text))).toEqual([])
  })

  test('keeps names that look like markup as words', () => {
    const one = subject('heron.stove.json')
    const stove = { ...one.stove, name: '<b>&"', about: 'a < b & c' }
    const { svg } = draw({ ...inputOf(one), stove })
    expect(svg).toContain('&lt;b&gt;&amp;')
    expect(svg).not.toContain('<b>')
    expect(isBalanced(svg)).toBe(true)
  })

  test('says so when a damper covers part of a row', () => {
    const words = draw(inputOf(subject('with a damper half shut'))).letterings.map(({ text }) => text)
    expect(words.some((text) => /^damper leaves \d+/.test(text))).toBe(true)
  })
})

test('the test of overlaps can fail', () => {
  const { letterings } = deskPlate(inputOf(subject('heron.stove.json')))
  const [first] = letterings
  if (first === undefined) throw new Error('nothing lettered')
  expect(overlaps([...letterings, { ...first, x: first.x + 5 }])).not.toEqual([])
})
