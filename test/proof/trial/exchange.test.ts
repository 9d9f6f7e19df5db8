import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { metricsCsv } from '#proof/metrics/metricsCsv.ts'
import { readTrialsJson, trialsJson } from '#proof/trial/exchange/bundle.ts'
import { formatCsv, readCsv } from '#proof/trial/exchange/csv.ts'
import { readTrialsCsv, trialsCsv } from '#proof/trial/exchange/records.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { trialSchemas } from '#proof/trial/jsonSchema.ts'
import { readTrialDocument } from '#proof/trial/read.ts'
import { type TrialFile, trialSchema } from '#proof/trial/schema.ts'
import { seriesTexts, seriesTrials } from '../compare/seriesTrials.ts'
import { waterBoilingTrial } from './waterBoiling.ts'

const series = Object.entries(seriesTexts)
  .filter(([name]) => name.endsWith('.trial.json'))
  .map(([, text]) => orThrow(readTrialDocument(text)).file)

/** Everything a trial file can hold, with texts that a table might trip over. */
const full = (): TrialFile => ({
  ...(waterBoilingTrial() as unknown as TrialFile),
  $schema: '../schema/trial.schema.json',
  about: 'One, and a "quoted" word; 5 g',
  block: '=SUM(A1:A9)',
  stove: { name: '-4 °C stove', variant: '+more air', asBuilt: '@home', revision: 'ab12' },
  kindling: { what: "'twas bark", weight: '2 g' },
  lit: '2031-05-17T09:00:00Z',
  photos: ['one.jpg', 'two, of the flame.jpg'],
  wentWrong: ['Wind, "a lot" of it.'],
  events: [
    { id: 'a-0001', at: '2031-05-17T09:00:00Z', event: 'lit', edit: 2 },
    { id: 'a-0002', at: '2031-05-17T09:20:00Z', event: 'boil' },
    { id: 'a-0003', at: '2031-05-17T09:21:00Z', event: 'damper to', turned: '12 deg' },
    { id: 'a-0004', at: '2031-05-17T09:22:00Z', event: 'note', text: 'true', withdrawn: true },
  ],
  masses: [{ id: 'm-0001', at: '2031-05-17T09:25:00Z', of: 'stove', mass: '912 g', text: '7' }],
})

const texts = (files: readonly TrialFile[]): readonly string[] => files.map(formatTrialFile)
const back = (csv: string): readonly string[] => texts(orThrow(readTrialsCsv(csv)).map(({ file }) => file))

describe('trials go out and come back', () => {
  it('the full one is a trial', () => {
    expect(trialSchema.safeParse(full()).success).toBe(true)
  })

  it.each([
    ['the series', series],
    ['everything a trial can hold', [full(), ...series.slice(0, 2)]],
  ])('as CSV: %s', (_, files) => {
    expect(back(trialsCsv(files))).toEqual(texts(files))
  })

  it('as a spreadsheet saves it again: semicolons, a mark at the beginning, line ends, shouting', () => {
    const files = [full(), ...series.slice(0, 3)]
    const rows = orThrow(readCsv(trialsCsv(files)))
    const again = (cell: string): string => {
      const shouted = /^(true|false)$/.test(cell) ? cell.toUpperCase() : cell
      const kept = /^['=+\-@]/.test(shouted) ? `'${shouted}` : shouted
      return `"${kept.replaceAll('"', '""')}"`
    }
    const saved = rows.map((row) => row.map(again).join(';')).join('\n')
    // The note that says “true” shouts now too: it is a text.
    expect(back(`\ufeff${saved}\n`).map((text) => text.replace('"TRUE"', '"true"'))).toEqual(texts(files))
  })

  it('as JSON', () => {
    const files = [full(), ...series]
    const json = trialsJson(files)
    expect(texts(orThrow(readTrialsJson(json)).map(({ file }) => file))).toEqual(texts(files))
    expect(trialsJson(orThrow(readTrialsJson(json)).map(({ file }) => file))).toBe(json)
  })

  it('whatever the texts are', () => {
    const text = fc
      .string({ minLength: 1, maxLength: 30, unit: 'grapheme' })
      .filter((one) => one.trim() !== '')
    fc.assert(
      fc.property(text, text, text, (about, variant, what) => {
        const file = { ...full(), about, stove: { name: 'x', variant }, wentWrong: [what] }
        const parsed = readTrialDocument(JSON.stringify(file))
        if (!parsed.ok) return
        expect(back(trialsCsv([parsed.value.file]))).toEqual(texts([parsed.value.file]))
      }),
      { numRuns: 200 },
    )
  })

  it('any cells at all survive the table', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string(), { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 4 }),
        (rows) => {
          const clean = rows.map((row) => row.map((cell) => cell.replace(/[\r\ufeff]/g, '')))
          const firstSays = [['a', 'b'], ...clean]
          expect(readCsv(formatCsv(firstSays))).toEqual({ ok: true, value: firstSays })
        },
      ),
    )
  })
})

describe('what cannot be read says why', () => {
  const good = trialsCsv([full()])
  it.each([
    ['another table', 'time,T1\n0,20\n', 'csv.head'],
    ['an open quotation mark', 'record,trial,name\ntrial,1,"oh\n', 'csv.open-quote'],
    ['a column twice', 'record,trial,name,name\ntrial,1,a,b\n', 'csv.column-twice'],
    ['a column that reaches behind', 'record,trial,__proto__.x\ntrial,1,a\n', 'csv.column'],
    ['no such record', good.replace('\r\nphase,', '\r\nstage,'), 'csv.row'],
    ['no number', good.replace('\r\nphase,1', '\r\nphase,one'), 'csv.row'],
    ['no row of the trial itself', good.replace('\r\ntrial,1', '\r\nphase,1'), 'csv.trial-rows'],
    ['nothing but a head', 'record,trial,name\n', 'csv.empty'],
    ['a value and a group at once', 'record,trial,fuel,fuel.kind\ntrial,1,a,b\n', 'csv.group'],
    ['an unknown key', 'record,trial,format,soot\ntrial,1,tinwright/trial@1,much\n', 'key.unknown'],
  ])('%s', (_, csv, code) => {
    const read = readTrialsCsv(csv)
    expect(read.ok ? [] : read.problems.map((one) => one.code)).toContain(code)
  })

  it('a measure without its unit, in which trial', () => {
    const read = readTrialsCsv(
      trialsCsv([series[0] as TrialFile, series[1] as TrialFile])
        .replace('"140 mm"', '140')
        .replace(/140 mm/, '140'),
    )
    expect(read.ok ? [] : read.problems[0]?.field).toMatch(/^trial 1: pot\.diameter/)
  })

  it.each([
    ['another format', '{ "format": "tinwright/trial@1" }'],
    ['no list', '{ "format": "tinwright/trials@1", "trials": [] }'],
    ['one key more', `{ "format": "tinwright/trials@1", "trials": [${JSON.stringify(full())}], "soot": 1 }`],
    [
      'a trial that is none',
      '{ "format": "tinwright/trials@1", "trials": [{ "format": "tinwright/trial@1" }] }',
    ],
  ])('%s', (_, json) => {
    expect(readTrialsJson(json).ok).toBe(false)
  })
})

it('schema/trials.schema.json is current, and an independent validator takes what is written', () => {
  const committed = JSON.parse(
    readFileSync(new URL('../../../schema/trials.schema.json', import.meta.url), 'utf8'),
  )
  expect(committed).toEqual(JSON.parse(JSON.stringify(trialSchemas['trials.schema.json']?.())))
  const check = new Ajv2020({ strict: true, strictRequired: false, allErrors: true }).compile(committed)
  check(JSON.parse(trialsJson([full(), ...series])))
  expect(check.errors).toBeNull()
  expect(check({ format: 'tinwright/trials@1', trials: [{}] })).toBe(false)
})

it('metrics as a table of numbers, a burn a row, units in the heads', () => {
  const [head = [], ...rows] = orThrow(readCsv(metricsCsv(seriesTrials)))
  expect(rows).toHaveLength(seriesTrials.length)
  const time = head.indexOf('high power: time to boil [min]')
  // burn-07: on at 2 min 6 s, boils at 10 min 28 s.
  const at = rows.find(([name]) => name === 'Heron, burn 7')
  const phase = seriesTrials[6]?.phases[0]
  expect(Number(at?.[time])).toBeCloseTo(((phase?.boil as number) - (phase?.from.at as number)) / 60, 6)
  expect(Number(at?.[head.indexOf('high power: time to boil, u [min]')])).toBeGreaterThan(0)
  for (const name of head.slice(8, -1)) expect(name).toMatch(/\[.+\]$/)
  // Wherever a row goes, it claims nothing.
  for (const row of rows)
    expect(row[head.indexOf('formulas')]).toMatch(/from memory: no conformity .* no performance tier/)
})
