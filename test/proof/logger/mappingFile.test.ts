import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { orThrow, problemSentence } from '#basis/problem.ts'
import { loggerSchemas } from '#proof/logger/jsonSchema.ts'
import type { Mapping } from '#proof/logger/mapping.ts'
import { mappingText, readMapping } from '#proof/logger/mappingFile.ts'
import { kept } from './kept.ts'
import { truths } from './truths.ts'

const mapping: Mapping = {
  format: 'tinwright/logger@1',
  delimiter: ';',
  decimal: ',',
  thousands: '.',
  skip: 1,
  width: 3,
  headings: ['Datum', 'Zeit', 'Waage'],
  units: ['', '', 'g'],
  time: {
    form: 'date beside time',
    date: 0,
    column: 1,
    order: 'day month year',
    clock: 'hours:minutes:seconds',
  },
  channels: [{ column: 2, name: 'Waage', quantity: 'mass', unit: 'g' }],
}

const said = (text: string): string => {
  const outcome = readMapping(text)
  return outcome.ok ? '' : outcome.problems.map(problemSentence).join('\n')
}
const changed = (change: object): string => JSON.stringify({ ...mapping, ...change })

describe('a mapping that was kept', () => {
  it.each(truths.map((truth) => [truth.name, truth] as const))(
    'for %s is read back as it was',
    (_, truth) => {
      const own = kept(truth)
      expect(orThrow(readMapping(mappingText(own)))).toEqual(own)
    },
  )

  it.each<[object, readonly string[]]>([
    [{ delimiter: 'comma' }, ['delimiter: ', 'one of ",", ";"']],
    [{ decimal: ';' }, ['decimal: ', 'one of ".", ","']],
    [{ decimal: '.', thousands: '.' }, ['thousands: "." will not do', 'one mark cannot mean two things']],
    [{ delimiter: ',' }, ['decimal: "," will not do', 'does not stand between fields']],
    [{ skip: -1 }, ['skip: -1', 'a whole number from 0 to 10000']],
    [{ skip: '1' }, ['skip: ', 'without quotation marks']],
    [{ width: 2, headings: ['a', 'b'], units: ['', ''] }, ['channels[0].column: 2', 'a column from 0 to 1']],
    [{ headings: ['Datum'] }, ['headings: 1 entries', '3, one for each field']],
    [{ units: undefined }, ['units is missing']],
    [{ channels: [] }, ['channels: 0 entries', 'at least 1 entry']],
    [
      { channels: [{ column: 1, name: 'Waage', quantity: 'mass', unit: 'g' }] },
      ['channels[0].column: 1', 'a column that is not read as time.column already'],
    ],
    [{ channels: [{ column: 2, name: 'W', quantity: 'mass', unit: '°C' }] }, ['channels[0].unit', '"kg"']],
    [
      { channels: [{ column: 2, name: 'W', quantity: 'force', unit: 'N' }] },
      ['channels[0].quantity', '"mass"'],
    ],
    [{ time: { form: 'elapsed', column: 0 } }, ['time.unit is missing', '"min"']],
    [{ time: { form: 'sundial', column: 0 } }, ['time.form: sundial', '"date beside time"']],
    [{ colour: 'red' }, ['colour', 'Take it out']],
    [{ format: 'tinwright/logger@2' }, ['from a newer Tinwright']],
    [{ format: 'tinwright/stove@1' }, ['This is a stove file; a logger file was asked for']],
  ])('%j is refused in a sentence', (change, words) => {
    const text = said(changed(change))
    for (const word of words) expect(text).toContain(word)
    expect(text).not.toMatch(/undefined|NaN|\[object/)
  })

  it('what is no JSON is refused', () => expect(said('{ "format": ')).not.toBe(''))
})

describe('the published schema', () => {
  const committed = JSON.parse(
    readFileSync(new URL('../../../schema/logMapping.schema.json', import.meta.url), 'utf8'),
  )

  it('is current; else run node scripts/schema.ts', () => {
    expect(committed).toEqual(JSON.parse(JSON.stringify(loggerSchemas['logMapping.schema.json']?.())))
  })

  it('takes every mapping of the examples and refuses others, in an independent validator', () => {
    const valid = new Ajv2020({ strict: true, strictRequired: false }).compile(committed)
    for (const truth of truths) expect(valid(kept(truth))).toBe(true)
    expect(valid(JSON.parse(changed({ delimiter: 'comma' })))).toBe(false)
    expect(valid(JSON.parse(changed({ skip: '1' })))).toBe(false)
    expect(valid(JSON.parse(changed({ time: { form: 'elapsed', column: 0 } })))).toBe(false)
    expect(valid(JSON.parse(changed({ colour: 'red' })))).toBe(false)
  })
})
