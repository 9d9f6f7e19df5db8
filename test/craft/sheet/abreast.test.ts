import { expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { liesIn, shapeBox } from '#craft/box.ts'
import { pageSize } from '#craft/sheet/paper.ts'
import { NO_PREDICTION } from '#craft/trial/sheet.ts'
import { blankSheets } from '#craft/trial/sheetsPdf.ts'
import { readStove } from '#stove/document/read.ts'
import { stoveExamples } from '../../stove/document/examples.ts'
import { textsOf } from '../shapes.ts'

test.each(stoveExamples)('blanks of $name on A3 are those of A4, two abreast and in order', ({ text }) => {
  const stove = orThrow(readStove(text))
  const issue = { date: '2031-05-17', version: '0.1.0', prediction: NO_PREDICTION }
  const [singles, pairs] = [
    blankSheets(stove, { ...issue, paper: 'A4' }),
    blankSheets(stove, { ...issue, paper: 'A3' }),
  ]
  expect(pairs.length).toBe(Math.ceil(singles.length / 2))
  const wordsOn = (sheet: (typeof singles)[number], from: number, to: number): readonly string[] =>
    textsOf([
      ...sheet.furniture,
      ...sheet.pieces.flatMap(({ shapes, at }) => (at.x >= from && at.x < to ? shapes : [])),
    ])
      .filter((one) => !sheet.furniture.includes(one) || (one.at.x >= from && one.at.x < to))
      .map((one) => one.text)
  for (const [i, sheet] of pairs.entries()) {
    expect(sheet.size).toEqual(pageSize('A3', 'landscape'))
    const page = { left: 0, bottom: 0, right: sheet.size.width, top: sheet.size.height }
    expect(sheet.furniture.every((shape) => liesIn(shapeBox(shape), page))).toBe(true)
    const middle = sheet.size.width / 2
    for (const [k, from] of [0, middle].entries()) {
      const single = singles[2 * i + k]
      expect(wordsOn(sheet, from, from + middle)).toEqual(
        single === undefined ? [] : wordsOn(single, 0, middle),
      )
    }
  }
})
