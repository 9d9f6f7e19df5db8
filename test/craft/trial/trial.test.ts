import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { boxesMeet, liesIn, shapeBox } from '#craft/box.ts'
import type { Drawing } from '#craft/drawing.ts'
import { laySheets } from '#craft/sheet/layout.ts'
import type { PaperName } from '#craft/sheet/paper.ts'
import { builtSheets } from '#craft/trial/builtSheets.ts'
import { drawTrial } from '#craft/trial/drawTrial.ts'
import { type TrialPrediction, trialSheet } from '#craft/trial/sheet.ts'
import { blankSheets } from '#craft/trial/sheetsPdf.ts'
import { measureText } from '#stove/built/plausible.ts'
import { builtSheet } from '#stove/built/sheet.ts'
import { readStove } from '#stove/document/read.ts'
import { stoveExamples } from '../../stove/document/examples.ts'
import { textsOf } from '../shapes.ts'

const predicted: TrialPrediction = {
  fuel: '88.4 g (3.12 oz)',
  boil: '6 to 9 min after lighting (1 L)',
  flameOut: '19 min after lighting',
  charTime: '40 min after lighting',
  char: '17.2 g (0.607 oz)',
  firepower: '0.71 kW (2420 Btu/h)',
  regime: 'goes out before the floor',
}
const legible = (drawing: Drawing): void => {
  const words = textsOf(drawing.shapes)
  expect(words.filter(({ text }) => text.includes('…'))).toEqual([])
  const page = { left: 0, bottom: 0, right: drawing.width, top: drawing.height }
  const lines = drawing.shapes.filter(({ kind, layer }) => kind === 'line' && layer === 'paper')
  const met = words.flatMap((one, index) => [
    ...(liesIn(shapeBox(one), page) ? [] : [`off the sheet: ${one.text}`]),
    ...words
      .slice(index + 1)
      .flatMap((other) => (boxesMeet(shapeBox(one), shapeBox(other)) ? [`${one.text} / ${other.text}`] : [])),
    ...lines.flatMap((line) => (boxesMeet(shapeBox(one), shapeBox(line)) ? [`${one.text} on a line`] : [])),
  ])
  expect(met).toEqual([])
}

const sheet = trialSheet('Redshank', predicted)
const drawing = drawTrial(sheet)

test('asks for everything a burn is judged by', () => {
  const keys = sheet.groups.flatMap(({ fields }) => fields.map(({ key }) => key))
  expect(new Set(keys).size).toBe(keys.length)
  for (const key of [
    'fuel',
    'moisture',
    'temperature',
    'wind',
    'potEmpty',
    'water',
    'lit',
    'flameOn',
    'boil',
    'flameOut',
    'char',
  ])
    expect(keys).toContain(key)
})

test('every figure has its unit, every clock time says so, and weights stand in both systems', () => {
  for (const { key, unit, label } of sheet.groups.flatMap(({ fields }) => fields)) {
    if (/weigh|fuel filled|pot with|char and ash/.test(label)) expect(unit, key).toBe('g or oz')
    if (/water at|^water$|^air$/.test(label)) expect(unit, key).toBe('°C or °F')
  }
})

test('what was predicted stands beside its blank, and nothing where nothing was', () => {
  const words = textsOf(drawing.shapes).map(({ text }) => text)
  for (const one of Object.values(predicted)) expect(words).toContain(one)
  expect(textsOf(drawTrial(trialSheet('Redshank')).shapes).map(({ text }) => text)).not.toContain('predicted')
})

test('no word is cut short, none meets another or a line to write on, all lie on the sheet', () =>
  legible(drawing))

describe.each(stoveExamples)('the as-built sheets of $name', ({ text }) => {
  const stove = orThrow(readStove(text))
  const sheets = builtSheets(stove)

  test('hold every line of the as-built sheet once, with what is planned', () => {
    const fields = sheets.flatMap(({ groups }) => groups.flatMap((group) => group.fields))
    const lines = builtSheet(stove)
    expect(fields.map(({ key }) => key)).toEqual(lines.map(({ path }) => path.join('.')))
    for (const [index, { planned, quantity }] of lines.entries())
      expect(fields[index]?.predicted).toBe(planned === null ? null : measureText({ quantity }, planned))
  })

  test('are legible, and say how each measure is taken', () => {
    for (const one of sheets) {
      legible(drawTrial(one))
      expect(one.notes.join(' ')).toMatch(/: \w/)
    }
  })

  test.each<PaperName>(['A4', 'Letter'])('take a page of %s each', (paper) => {
    const pages = blankSheets(stove, { paper, date: '2031-05-17', version: '0.1.0', prediction: predicted })
    expect(pages).toHaveLength(1 + sheets.length)
  })
})

describe.each<PaperName>(['A4', 'Letter'])('%s', (paper) => {
  test('is one page, with the cautions at its foot', () => {
    const sheets = laySheets([drawing], { paper, stove: 'Redshank', date: '2031-05-17', version: '0.1.0' })
    expect(sheets).toHaveLength(1)
    const said = textsOf(sheets[0]?.furniture ?? [])
      .map(({ text }) => text)
      .join(' ')
    for (const caution of sheet.cautions) expect(said).toContain(caution)
  })
})
