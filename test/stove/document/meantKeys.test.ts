import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { meantKeys } from '#stove/document/meantKeys.ts'
import { readStove } from '#stove/document/read.ts'

const ROW = ['kind', 'duty', 'hole', 'count', 'leftOut', 'height', 'from', 'bearing', 'stagger']
const CAN = [
  'code',
  'seamDiameter',
  'bodyDiameter',
  'height',
  'bodyWall',
  'endWall',
  'seamHeight',
  'sideSeam',
]

describe('leads an unknown key to the one that was meant', () => {
  test.each([
    ['dia', ['bit', 'diameter'], ['diameter']],
    ['Dia', ['diameter'], ['diameter']],
    ['dia', CAN, ['seamDiameter', 'bodyDiameter']],
    ['diameter', CAN, ['seamDiameter', 'bodyDiameter']],
    ['ht', ROW, ['height']],
    ['heightMm', ROW, ['height']],
    ['height_in', ROW, ['height']],
    ['heigth', ROW, ['height']],
    ['qty', ROW, ['count']],
    ['number', ROW, ['count']],
    ['brg', ROW, ['bearing']],
    ['bear', ROW, ['bearing']],
    ['stag', ROW, ['stagger']],
    ['left_out', ROW, ['leftOut']],
    ['notes', ['format', 'name', 'about', 'fuel'], ['about']],
  ])('%s among %j', (key, known, meant) => expect(meantKeys(key, known)).toEqual(meant))

  test.each([
    ['dia', ['bit']],
    ['qty', ['bit', 'diameter']],
    ['colour', ROW],
    ['countersink', ROW],
    ['he', ['height', 'heat']],
    ['bod', ['bodyWall', 'bodyDiameter']],
    ['', ROW],
    ['constructor', ROW],
  ])('and to none where none is near: %s among %j', (key, known) => expect(meantKeys(key, known)).toEqual([]))
})

const told = (from: string, to: string): readonly string[] => {
  const text = readFileSync(new URL('../../../examples/heron.stove.json', import.meta.url), 'utf8')
  if (!text.includes(from)) throw new Error(`${from} is not in the example`)
  const outcome = readStove(text.replace(from, to))
  return outcome.ok ? [] : outcome.problems.map(({ field, fix }) => `${field}: ${fix}`)
}

describe('a stove file with a key written otherwise is told once, by the right key', () => {
  test('in one of several shapes of a hole', () => {
    const [only, ...more] = told('"bit": ', '"dia": ')
    expect(only).toMatch(/\.hole\.dia: Was "diameter" meant\?$/)
    expect(more).toEqual([])
  })
  test('in a row', () => {
    const [only, ...more] = told('"count": ', '"qty": ')
    expect(only).toMatch(/\.qty: Was "count" meant\?$/)
    expect(more).toEqual([])
  })
})
