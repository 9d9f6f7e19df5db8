import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import type { Answers, Mapping } from '#proof/logger/mapping.ts'
import { proposeMapping } from '#proof/logger/propose.ts'
import { type Log, readLog } from '#proof/logger/readLog.ts'
import { exampleText, mappingFor } from './kept.ts'

// Every file is made by us in the shape of what loggers write.
const text = exampleText
const mappingOf = (written: string, answers: Answers = {}): Mapping | null => mappingFor(written, answers)

/** Times, and values in kelvin or kilograms, channel by channel and part by part. */
const readings = (log: Log) =>
  log.parts.map(({ channels }) =>
    channels.map(({ time, value }) => [[...time], [...value].map((v) => Number(v.toFixed(4)))]),
  )
const C = (...values: number[]) => values.map((v) => Number((v + 273.15).toFixed(4)))

describe('what is read of each file', () => {
  it.each<[string, Answers, (number[][] | null)[][], string[]]>([
    [
      '01-plain.csv',
      {},
      [
        [
          [[0, 1, 2, 3, 4], C(18.2, 19, 24.5, 31.7, 40.2)],
          [[0, 1, 2, 3, 4], C(14.1, 14.1, 14.2, 14.2, 14.3)],
        ],
      ] as never,
      [],
    ],
    [
      '02-comma-decimals.csv',
      {},
      [
        [
          [[0, 0.5, 1, 1.5], C(18.2, 19, 24.55, 31.7)],
          [[0, 0.5, 1, 1.5], C(14.1, 14.1, 14.2, 14.2)],
        ],
      ] as never,
      [],
    ],
    [
      '03-units-row.txt',
      {},
      [
        [
          [
            [0, 30, 60, 90, 120],
            [1.312, 1.306, 1.299, 1.293, 1.288],
          ],
        ],
      ] as never,
      [],
    ],
    [
      '08-apostrophes.csv',
      {},
      [
        [
          [
            [0, 10, 20, 30],
            [1.3124, 1.3061, 1.299, 0.9987],
          ],
        ],
      ] as never,
      [],
    ],
    [
      '09-both-marks.csv',
      {},
      [
        [
          [
            [0, 10, 20, 30],
            [1.3124, 1.3061, 1.299, 0.9987],
          ],
        ],
      ] as never,
      [],
    ],
    [
      '07-three-digits.csv',
      { decimal: 'decimals' },
      [
        [
          [
            [0, 10, 20, 30],
            [1.312, 1.306, 1.299, 1.293],
          ],
        ],
      ] as never,
      [],
    ],
    [
      '07-three-digits.csv',
      { decimal: 'thousands' },
      [
        [
          [
            [0, 10, 20, 30],
            [1312, 1306, 1299, 1293],
          ],
        ],
      ] as never,
      [],
    ],
    [
      '10-open-thermocouple.csv',
      {},
      [
        [
          [[0, 1, 2, 4, 5], C(18.2, 19, 24.5, 40.2, 41)],
          [[2, 3, 4], C(15.2, 15.2, 15.3)],
        ],
      ] as never,
      ['field not read', 'field not read', 'field not read', 'field not read'],
    ],
    [
      '11-several-rates.csv',
      {},
      [
        [
          [
            [0, 1],
            [1.312, 1.311],
          ],
          [[0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4], C(14.1, 14.1, 14.2, 14.2, 14.3, 14.4, 14.5, 14.6)],
        ],
      ] as never,
      [],
    ],
    [
      '12-past-midnight.csv',
      {},
      [[[[86398, 86399, 86400, 86401], C(61, 61.2, 61.4, 61.6)]]] as never,
      ['past midnight'],
    ],
    [
      '13-reset.csv',
      {},
      [[[[0, 1, 2], C(14, 14.1, 14.3)]], [[[0, 1, 2], C(20.5, 20.6, 20.8)]]] as never,
      ['clock went back'],
    ],
    [
      '14-gap.csv',
      {},
      [[[[0, 1, 2, 3, 4, 95, 96, 97], C(14, 14.1, 14.3, 14.4, 14.6, 41, 41.2, 41.5)]]] as never,
      ['gap'],
    ],
    [
      '16-blanks.txt',
      {},
      [
        [
          [[0, 1, 2, 3], C(18.2, 19, 24.5, 31.7)],
          [[0, 1, 2, 3], C(14.1, 14.1, 14.2, 14.2)],
        ],
      ] as never,
      [],
    ],
    [
      '17-no-header.csv',
      {
        'time column': '1',
        'time unit': 's',
        'column 2': 'temperature',
        'unit 2': '°C',
        'column 3': 'mass',
        'unit 3': 'g',
      },
      [
        [
          [[0, 1, 2, 3], C(18.2, 19, 24.5, 31.7)],
          [
            [0, 1, 2, 3],
            [1.312, 1.311, 1.311, 1.31],
          ],
        ],
      ] as never,
      [],
    ],
    [
      '18-cut-line.csv',
      {},
      [
        [
          [[0, 1, 3, 4, 5, 6], C(18.2, 19, 31.7, 40.2, 41.1, 42)],
          [[0, 1, 3, 4, 5, 6], C(14.1, 14.1, 14.2, 14.3, 14.3, 14.4)],
        ],
      ] as never,
      ['line not read', 'line not read'],
    ],
    [
      '20-short-clock.csv',
      { 'time form': 'minutes:seconds' },
      [[[[0, 30, 60, 90], C(14, 15.2, 17.9, 21.3)]]] as never,
      [],
    ],
  ])('%s %o', (name, answers, expected, findings) => {
    const mapping = mappingOf(text(name), answers)
    const log = readLog(text(name), mapping as Mapping)
    expect(readings(log)).toEqual(expected)
    expect(log.findings.map(({ kind }) => kind)).toEqual(findings)
  })

  const day = Date.UTC(2031, 4, 17) / 1000
  it.each([
    ['04-preamble.csv', {}, day + 9 * 3600 + 724, 3],
    ['05-which-day.csv', { date: 'day month year' }, Date.UTC(2031, 3, 3, 9, 12, 4) / 1000, 3],
    ['05-which-day.csv', { date: 'month day year' }, Date.UTC(2031, 2, 4, 9, 12, 4) / 1000, 3],
    ['06-afternoon.csv', {}, day + 11 * 3600 + 3590, 3],
    ['15-milliseconds.csv', {}, 1936775524, 4],
    ['19-quoted.csv', {}, day + 9 * 3600 + 724, 5],
  ] as const)('%s %o begins at its moment', (name, answers, start, read) => {
    const log = readLog(text(name), mappingOf(text(name), answers) as Mapping)
    expect([log.parts[0]?.channels[0]?.time[0], log.read, log.findings]).toEqual([start, read, []])
  })

  it.each([
    ['05-which-day.csv', ['date']],
    ['07-three-digits.csv', ['decimal']],
    ['17-no-header.csv', ['time column']],
    ['20-short-clock.csv', ['time form']],
    ['22-no-units.csv', ['time unit', 'unit 2', 'unit 3']],
  ])('%s is asked about, not guessed: %o', (name, keys) => {
    const proposal = orThrow(proposeMapping(text(name)))
    expect(proposal.kind === 'questions' ? proposal.questions.map(({ key }) => key) : []).toEqual(keys)
  })

  it('a comma between fields and in numbers is refused', () => {
    const refused = proposeMapping(text('21-two-commas.csv'))
    expect(refused.ok ? '' : refused.problems[0]?.code).toBe('logger.two-commas')
  })
})
