import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import type { Answers } from '#proof/logger/mapping.ts'
import { proposeMapping } from '#proof/logger/propose.ts'
import { readLog } from '#proof/logger/readLog.ts'
import { exampleText, mappingFor } from './kept.ts'

/** One damaged line each, as they were found to be read wrongly without a word. */
const damaged = (name: string, from: string, to: string): string => {
  const text = exampleText(name)
  if (!text.includes(from)) throw new Error(`${name} has no ${from}`)
  return text.replace(from, to)
}

const asked = (text: string, answers: Answers = {}): readonly string[] => {
  const proposal = orThrow(proposeMapping(text, answers))
  return proposal.kind === 'questions' ? proposal.questions.map(({ key }) => key) : []
}

const readAs = (text: string, answers: Answers = {}) => {
  const mapping = mappingFor(text, answers)
  if (mapping === null) throw new Error('Something is asked')
  const log = readLog(text, mapping)
  return { mapping, log, said: log.findings.map(({ sentence }) => sentence).join('\n') }
}

describe('one damaged line', () => {
  it('a broken date does not make a time of day of date and time: the line is told', () => {
    const { mapping, log, said } = readAs(
      damaged('04-preamble.csv', '2031-05-17,09:12:06', '2031-0x-17,09:12:06'),
    )
    expect(mapping.time.form).toBe('date beside time')
    expect(log.parts[0]?.channels[0]?.time[0]).toBe(Date.UTC(2031, 4, 17, 9, 12, 4) / 1000)
    expect(said).toContain('Line 7: its time cannot be read')
  })

  it('two broken dates of three: whether they count is asked', () => {
    const text = damaged('04-preamble.csv', '2031-05-17', '17 May').replace('2031-05-17', '17 May')
    expect(asked(text)).toEqual(['date column'])
    expect(readAs(text, { 'date column': 'without it' }).mapping.time.form).toBe('time of day')
    const dated = readAs(text, { 'date column': 'with it' })
    expect([dated.log.read, dated.mapping.time.form]).toEqual([1, 'date beside time'])
  })

  it.each(['1,30', '1,3061', '13,06', ',306'])('%s settles nothing about decimals', (field) => {
    const text = damaged('07-three-digits.csv', '1,306', field)
    expect(asked(text)).toEqual(['decimal'])
    expect(readAs(text, { decimal: 'thousands' }).said).toContain(`Line 3: "${field}"`)
  })

  it('many lines that can only be decimals settle it', () => {
    const text = `Zeit [s];Waage [kg]\n${['1,312', '1,30', '1,29', '1,2'].map((kg, i) => `${i};${kg}`).join('\n')}\n`
    expect(asked(text)).toEqual([])
  })

  it('a day above 12 in one line settles nothing about day and month', () => {
    const text = damaged('05-which-day.csv', '03/04/2031 9:12:14', '13/04/2031 9:12:14')
    expect(asked(text)).toEqual(['date'])
    expect(readAs(text, { date: 'month day year' }).said).toContain('Line 3: its time cannot be read')
  })

  it.each(['823:59:58', '24:00:00', '23:60:58', '23:59'])('%s is no time of day', (clock) => {
    const { mapping, said } = readAs(damaged('12-past-midnight.csv', '23:59:58', clock))
    expect(mapping.time.form).toBe('time of day')
    expect(said).toContain('Line 2: its time cannot be read')
  })

  it('a clock that goes on past the day is one since the start', () => {
    const { mapping, log } = readAs(exampleText('23-past-a-day.csv'))
    expect(mapping.time).toEqual({ form: 'elapsed clock', column: 0, clock: 'hours:minutes:seconds' })
    expect(log.parts.map((part) => [part.time[0], part.time.at(-1)])).toEqual([[86_390, 86_415]])
    expect(log.findings).toEqual([])
  })

  it('minutes and seconds do not become hours on the way', () => {
    const { log, said } = readAs(`${exampleText('20-short-clock.csv')}1:00:00,30.0\n`, {
      'time form': 'minutes:seconds',
    })
    expect([log.read, said]).toEqual([4, 'Line 6: its time cannot be read; not read.'])
  })

  it('a time out of order among its neighbours is left out with its name', () => {
    const { log, said } = readAs(damaged('01-plain.csv', '2,24.5', '92,24.5'))
    expect([log.parts.length, log.read]).toEqual([1, 4])
    expect(said).toContain('Line 4: its time, 92 s, fits neither the line before nor the one after')
  })

  it('the first line of readings does not pass for headings', () => {
    const { log, said } = readAs(damaged('02-comma-decimals.csv', '0,0;18,2;14,1', '0,0;18,2x14,1'))
    expect(log.read).toBe(3)
    expect(said).toContain('Line 2: stands above the first line of readings')
  })

  it('a file that ends in the middle of a number says so', () => {
    const { said } = readAs(exampleText('01-plain.csv').trimEnd().replace(/\.3$/, ''))
    expect(said).toContain('Line 6: the file ends in "14" without an end of the line')
  })
})

describe('a mapping that was kept', () => {
  const { mapping } = readAs(exampleText('01-plain.csv'))

  it('is not used in silence for a file with other units or columns', () => {
    const log = readLog(damaged('01-plain.csv', 'Pot (°C)', 'Pot (°F)'), mapping)
    expect(log.findings.map(({ kind, line }) => [kind, line])).toEqual([['other headings', 1]])
  })
})

describe('what is no unit', () => {
  it.each([
    ['Thermocouple K', ['unit 2']],
    ['TC1 (K)', ['unit 2']],
    ['Temp C', ['unit 2']],
    ['Temp [K]', []],
    ['pot_C', []],
    ['Pot °C', []],
  ])('a letter by itself: %s', (heading, keys) => {
    expect(asked(`Time (s),${heading}\n0,290\n1,291\n2,292\n`)).toEqual(keys)
  })
})
