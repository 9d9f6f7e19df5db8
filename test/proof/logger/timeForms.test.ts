import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import type { Answers } from '#proof/logger/mapping.ts'
import { momentText } from '#proof/logger/moment.ts'
import { proposeMapping } from '#proof/logger/propose.ts'
import { readLog } from '#proof/logger/readLog.ts'
import { mappingFor } from './kept.ts'

const file = (times: readonly string[], heading = 'Time'): string =>
  `${heading};Pot (°C)\n${times.map((time, i) => `${time};${14 + i}`).join('\n')}\n`

const timesOf = (times: readonly string[], answers: Answers = {}, heading = 'Time'): readonly number[] => {
  const text = file(times, heading)
  const mapping = mappingFor(text, answers)
  if (mapping === null) throw new Error('Something is asked')
  const log = readLog(text, mapping)
  expect(log.findings).toEqual([])
  return [...(log.parts[0]?.time ?? [])]
}

const keysOf = (times: readonly string[], heading = 'Time'): readonly string[] => {
  const proposal = orThrow(proposeMapping(file(times, heading)))
  return proposal.kind === 'questions' ? proposal.questions.map(({ key }) => key) : []
}

const at = (...parts: [number, number, number, number, number, number?]) => Date.UTC(...parts) / 1000

describe('forms of the time', () => {
  it.each<[readonly string[], number]>([
    [['2031-05-17T09:12:04', '2031-05-17T09:12:06', '2031-05-17T09:12:08'], at(2031, 4, 17, 9, 12, 4)],
    [
      ['2031-05-17 09:12:04.5', '2031-05-17 09:12:06', '2031-05-17 09:12:08'],
      at(2031, 4, 17, 9, 12, 4) + 0.5,
    ],
    [['2031/05/17 09:12', '2031/05/17 09:13', '2031/05/17 09:14'], at(2031, 4, 17, 9, 12)],
    // Days come first where there are points.
    [['03.04.2031 09:12:04', '03.04.2031 09:12:06', '03.04.2031 09:12:08'], at(2031, 3, 3, 9, 12, 4)],
    [['05/17/2031 12:00 AM', '05/17/2031 12:01 AM', '05/17/2031 12:02 AM'], at(2031, 4, 17, 0, 0)],
    [['05/17/2031 12:30 pm', '05/17/2031 12:31 pm', '05/17/2031 1:00 pm'], at(2031, 4, 17, 12, 30)],
    [['9:12:04', '9:12:06', '9:12:08'], 9 * 3600 + 724],
    [['1936775524', '1936775525', '1936775526'], 1936775524],
    [['1936775524000', '1936775524100', '1936775524200'], 1936775524],
  ])('%j', (times, first) => expect(timesOf(times)[0]).toBeCloseTo(first, 6))

  it.each([
    [['03/04/2031 09:12:04', '03/04/2031 09:12:06', '03/04/2031 09:12:08'], ['date']],
    [['03/04/05 09:12:04', '03/04/05 09:12:06', '03/04/05 09:12:08'], ['date']],
    // 2017 or 2031.
    [['17.05.31 09:12:04', '17.05.31 09:12:06', '17.05.31 09:12:08'], ['date']],
    // The same day whichever way it is read.
    [['04/04/2031 09:12:04', '04/04/2031 09:12:06', '04/04/2031 09:12:08'], []],
    [['0:12', '0:13', '0:14'], ['time form']],
    [['0', '1', '2'], ['time unit']],
  ])('%j: asked is %j', (times, keys) => expect(keysOf(times)).toEqual(keys))

  it('what is over the column tells a clock since the start from a time of day', () => {
    const mappings = ['Laufzeit', 'Elapsed time', 'Time'].map((heading) =>
      mappingFor(file(['0:00:00', '0:00:05', '0:00:10'], heading), {}),
    )
    expect(mappings.map((one) => one?.time.form)).toEqual(['elapsed clock', 'elapsed clock', 'time of day'])
  })

  it('minutes and seconds go on past the hour', () =>
    expect(timesOf(['59:30', '60:00', '60:30'], { 'time form': 'minutes:seconds' })).toEqual([
      3570, 3600, 3630,
    ]))

  it('a unit over the column holds even where the numbers look like seconds since 1970', () =>
    expect(timesOf(['1936775524', '1936775525', '1936775526'], {}, 'Time (ms)')[0]).toBeCloseTo(
      1936775.524,
      6,
    ))
})

it.each([
  ['03/04/2031 09:12:04', 'Which is the day in 03/04/2031, which the month?'],
  ['17.05.31 09:12:04', 'Which is the year in 17.05.31, which the month, which the day?'],
])('%s: the question names what is open', (time, ask) => {
  const proposal = orThrow(proposeMapping(file([time, time, time])))
  expect(proposal.kind === 'questions' ? proposal.questions[0]?.ask : '').toBe(ask)
})

describe('a moment as the logger shows it', () => {
  it.each([
    [{ form: 'elapsed', column: 0, unit: 's' }, 724.04, '724 s'],
    [{ form: 'elapsed clock', column: 0, clock: 'hours:minutes:seconds' }, 90_000.5, '25:00:00.5'],
    [{ form: 'time of day', column: 0, clock: 'hours:minutes:seconds' }, 33_124, '09:12:04'],
    [{ form: 'time of day', column: 0, clock: 'hours:minutes:seconds' }, 86_401, '00:00:01 of day 2'],
    [{ form: 'seconds since 1970', column: 0 }, 1936775524.5, '2031-05-17 09:12:04.5'],
    // A figure too many in it.
    [{ form: 'seconds since 1970', column: 0 }, 1e14, '100000000000000 s'],
  ] as const)('%j, %d: %s', (time, seconds, text) => expect(momentText(time, seconds)).toBe(text))
})
