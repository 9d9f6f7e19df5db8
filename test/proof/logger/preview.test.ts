import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import type { Mapping } from '#proof/logger/mapping.ts'
import { type Preview, previewOf } from '#proof/logger/preview.ts'
import { proposeMapping } from '#proof/logger/propose.ts'
import { readLog } from '#proof/logger/readLog.ts'

const example = (name: string): string =>
  readFileSync(new URL(`../../../examples/loggers/${name}`, import.meta.url), 'utf8')

const mappingOf = (text: string): Mapping => {
  const proposal = orThrow(proposeMapping(text))
  if (proposal.kind === 'questions') throw new Error('Something is asked')
  return proposal.mapping
}

const preview = (text: string, most?: number): Preview => {
  const mapping = mappingOf(text)
  return previewOf(text, mapping, readLog(text, mapping), most)
}

const celsius = (rows: Preview['rows']) =>
  rows.map(({ line, part, time, values }) => [
    line,
    part,
    time,
    ...values.map((value) => (value === null ? null : Number((value - 273.15).toFixed(4)))),
  ])

describe('the preview of a file', () => {
  it('shows what was read after a reset as well, and where it begins', () => {
    const { rows, parts, channels } = preview(example('13-reset.csv'))
    expect(celsius(rows)).toEqual([
      [2, 1, 0, 14],
      [3, 1, 1, 14.1],
      [4, 1, 2, 14.3],
      [5, 2, 0, 20.5],
      [6, 2, 1, 20.6],
      [7, 2, 2, 20.8],
    ])
    expect(rows[3]?.said.join()).toContain('the clock went back from 2 s to 0 s')
    expect(parts).toEqual([
      { firstLine: 2, lastLine: 4, lines: 3, from: 0, to: 2 },
      { firstLine: 5, lastLine: 7, lines: 3, from: 0, to: 2 },
    ])
    expect(channels.map(({ readings, every }) => [readings, every])).toEqual([[6, 1]])
    expect(channels[0]?.high).toBeCloseTo(293.95, 9)
  })

  it('shows the first lines of every part, however long the one before', () => {
    const part = (from: number) => Array.from({ length: 40 }, (_, i) => `${i},${from + i}`).join('\n')
    const { rows } = preview(`Time (s),Pot (°C)\n${part(10)}\n${part(100)}\n`, 2)
    expect(celsius(rows)).toEqual([
      [2, 1, 0, 10],
      [3, 1, 1, 11],
      [42, 2, 0, 100],
      [43, 2, 1, 101],
    ])
  })

  it('keeps channels of several rates apart: an empty field is no reading, its time is read all the same', () => {
    const { rows, channels } = preview(example('11-several-rates.csv'), 3)
    expect(rows.map(({ time, values }) => [time, values.map((value) => value !== null)])).toEqual([
      [0, [true, true]],
      [0.2, [false, true]],
      [0.4, [false, true]],
    ])
    expect(channels.map(({ name, readings }) => [name, readings])).toEqual([
      ['scale [g]', 2],
      ['pot [°C]', 8],
    ])
    expect(channels[0]?.every).toBeCloseTo(1, 9)
    expect(channels[1]?.every).toBeCloseTo(0.2, 9)
  })

  it('shows a line that was not read as it stands, without a value, and says why', () => {
    const { rows } = preview(example('18-cut-line.csv'))
    const cut = rows.find(({ line }) => line === 4)
    expect(cut).toMatchObject({ fields: ['2', '24.'], part: null, time: null, values: [null, null] })
    expect(cut?.said.join()).toContain('2 fields where 3 were expected')
  })

  it('shows an open thermocouple as no reading in a line that was read', () => {
    const { rows } = preview(example('10-open-thermocouple.csv'), 1)
    expect(rows[0]?.fields).toEqual(['0', '18.2', 'OL'])
    expect(celsius(rows)).toEqual([[2, 1, 0, 18.2, null]])
    expect(rows[0]?.said.join()).toContain('TC2 (C) says "OL"')
  })
})
