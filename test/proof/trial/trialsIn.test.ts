import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { trialsJson } from '#proof/trial/exchange/bundle.ts'
import { trialsCsv } from '#proof/trial/exchange/records.ts'
import { isTrialsTable, trialsIn } from '#proof/trial/exchange/trialsIn.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { readTrialDocument } from '#proof/trial/read.ts'

const series = join(import.meta.dirname, '..', '..', '..', 'examples', 'series')
const files = readdirSync(series)
  .filter((name) => name.endsWith('.trial.json'))
  .slice(0, 3)
  .map((name) => orThrow(readTrialDocument(readFileSync(join(series, name), 'utf8'))).file)

describe('trials that come in', () => {
  it.each([
    ['one file', () => formatTrialFile(files[0] as (typeof files)[0]), 1],
    ['a bundle', () => trialsJson(files), 3],
    ['a table', () => trialsCsv(files), 3],
  ] as const)('are told by what %s says, and come whole', (_, text, count) => {
    const read = orThrow(trialsIn(text()))
    expect(read.map(({ file }) => file)).toEqual(files.slice(0, count))
    expect(isTrialsTable(text())).toBe(_ === 'a table')
  })

  it('are refused with what is wrong', () => {
    const read = trialsIn('{"format":"tinwright/stove@1"}')
    expect(read.ok ? [] : read.problems.map(({ field }) => field)).toContain('format')
  })
})
