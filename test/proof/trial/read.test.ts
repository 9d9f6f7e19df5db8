import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { orThrow, problemSentence } from '#basis/problem.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { instantText, readInstant } from '#proof/trial/instant.ts'
import { trialSchemas } from '#proof/trial/jsonSchema.ts'
import { readTrial, readTrialDocument } from '#proof/trial/read.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { waterBoilingTrial } from './waterBoiling.ts'

const read = (file: unknown) => readTrial(JSON.stringify(file))

/** The example with one thing put in its place, or taken out. */
const changed = (path: readonly (string | number)[], value: unknown): unknown => {
  const file = waterBoilingTrial() as unknown as Record<string | number, JsonValue>
  let here = file as Record<string | number, unknown>
  for (const step of path.slice(0, -1)) {
    here[step] ??= {}
    here = here[step] as Record<string | number, unknown>
  }
  if (value === undefined) delete here[path.at(-1) as string]
  else here[path.at(-1) as string] = value
  return file
}

describe('reading a trial', () => {
  it('SI inside, times after lighting', () => {
    const trial = orThrow(read(waterBoilingTrial()))
    expect(trial.phases[0]?.from.fuel).toBe(1)
    expect(trial.phases[0]?.to.water).toBe(373.15)
    expect(trial.events[1]?.after).toBe(1200)
    expect(trial.block).toBe('2031-05-17')
    expect(orThrow(read(changed(['phases', 0, 'boil'], undefined))).phases[0]?.boil).toBe(1200)
  })

  it('what was withdrawn is not there; what was edited holds', () => {
    const file = waterBoilingTrial()
    const [, boil] = file.events
    const later = { ...boil, edit: 1, at: '2031-05-17T09:18:00Z' }
    const trial = orThrow(
      read({ ...file, phases: [{ ...file.phases[0], boil: undefined }], events: [...file.events, later] }),
    )
    expect(trial.phases[0]?.boil).toBe(1080)
    const gone = { ...later, edit: 2, withdrawn: true }
    expect(orThrow(read({ ...file, events: [gone, ...file.events, later] })).events).toHaveLength(1)
  })

  it('writes what it reads, the same every time', () => {
    const { file } = orThrow(readTrialDocument(JSON.stringify(waterBoilingTrial())))
    const text = formatTrialFile(file)
    const again = orThrow(readTrialDocument(text))
    expect(again.file).toEqual(file)
    expect(formatTrialFile(again.file)).toBe(text)
  })

  it.each<[string, readonly (string | number)[], unknown, string]>([
    ['a weight without a unit', ['phases', 0, 'from', 'fuel'], '1000', 'Which unit?'],
    ['a bare number', ['pot', 'weight'], 1000, 'Which unit?'],
    ['fuel that grows', ['phases', 0, 'to', 'fuel'], '1200 g', 'Fuel only gets less'],
    ['water that grows', ['phases', 0, 'to', 'pot'], '3600 g', 'Water only boils away'],
    ['a pot without its pot', ['phases', 1, 'to', 'pot'], '800 g', 'Weigh pot and water together'],
    ['time that runs back', ['phases', 0, 'to', 'at'], '0 min', 'ends after it began'],
    ['phases that overlap', ['phases', 1, 'from', 'at'], '10 min', 'order they were burnt in'],
    ['more char than fuel', ['phases', 0, 'char'], '600 g', 'Take vessel, ash'],
    ['a boil before the pot', ['phases', 0, 'boil'], '0 min', 'Times run from lighting'],
    ['a boil after the end', ['phases', 0, 'boil'], '30 min', 'Times run from lighting'],
    ['no pressure, no altitude', ['weather', 'boilingPoint'], undefined, 'how high the place lies'],
    ['two of them', ['weather', 'altitude'], '100 m', 'Keep the boiling point'],
    ['a meter nobody knows', ['instruments', 'moistureMeter'], undefined, 'Say how far the moisture meter'],
    [
      'a sample heavier when dry',
      ['fuel', 'moisture'],
      { before: '40 g', after: '45 g' },
      'Swap the two weights',
    ],
    ['an unknown fuel', ['fuel', 'kind'], 'coal', 'fuel'],
    ['a time without its zone', ['events', 0, 'at'], '2031-05-17T09:00:00', 'Add the time zone'],
    ['a day that is not', ['events', 0, 'at'], '2031-02-30T09:00:00Z', 'no such day'],
    ['a month that is not', ['day'], '2031-13-01', 'year, month and day'],
    ['a strange event', ['events', 0, 'event'], 'boom', 'one of'],
    ['a misspelt event', ['events', 1, 'event'], 'boil ', 'boil'],
    ['a damper turned nowhere', ['events', 0, 'event'], 'damper to', 'front mark'],
    ['a bearing that belongs to nothing', ['events', 0, 'turned'], '12 deg', 'Take it out'],
    ['an id nobody can find again', ['events', 0, 'id'], 'x', 'never use it again'],
    ['a place in no order', ['place'], 1.5, 'whole number'],
    ['an unknown key', ['stove', 'colour'], 'red', 'Take it out'],
    ['instruments left out', ['instruments'], undefined, 'Add "instruments"'],
    ['no phase at all', ['phases'], [], 'at least 1'],
    ['a newer format', ['format'], 'tinwright/trial@2', 'newer Tinwright'],
    ['another kind of file', ['format'], 'tinwright/stove@1', 'stove file'],
  ])('%s', (_, path, value, words) => {
    const outcome = read(changed(path, value))
    expect(outcome.ok).toBe(false)
    const said = outcome.ok ? '' : outcome.problems.map(problemSentence).join('\n')
    expect(said).toContain(words)
    expect(said).toContain(String(path[0]))
    expect(said).not.toMatch(/undefined|NaN|\[object/)
  })
})

describe('moments', () => {
  it.each([
    ['2031-05-17T09:12:04Z', '2031-05-17T09:12:04Z'],
    ['2031-05-17T11:12:04+02:00', '2031-05-17T09:12:04Z'],
    ['2031-05-17T09:12:04.25Z', '2031-05-17T09:12:04.250Z'],
    ['2032-02-29T00:00Z', '2032-02-29T00:00:00Z'],
  ])('%s', (written, universal) => expect(instantText(orThrow(readInstant(written)))).toBe(universal))
})

describe('the published schema', () => {
  const committed = JSON.parse(
    readFileSync(new URL('../../../schema/trial.schema.json', import.meta.url), 'utf8'),
  )

  it('is current; else run node scripts/schema.ts', () => {
    expect(committed).toEqual(JSON.parse(JSON.stringify(trialSchemas['trial.schema.json']?.())))
  })

  it('takes the example and refuses a bare number, in an independent validator', () => {
    const valid = new Ajv2020({ strict: true, strictRequired: false }).compile(committed)
    expect(valid(waterBoilingTrial())).toBe(true)
    expect(valid(changed(['pot', 'weight'], 1000))).toBe(false)
    expect(valid(changed(['colour'], 'red'))).toBe(false)
  })
})
