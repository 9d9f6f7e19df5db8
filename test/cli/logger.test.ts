import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { loggerSchemas } from '#proof/logger/jsonSchema.ts'
import { loggerTrial } from './loggerTrial.ts'
import { exampleFiles, flat, loggerFiles, tinwright } from './memory.ts'

const WHOLE = 'heron.logger.csv'
const files = { ...exampleFiles, ...loggerFiles, 'heron.trial.json': JSON.stringify(loggerTrial) }
const run = (...args: readonly string[]) => tinwright(['logger', ...args], files)
const json = async (...args: readonly string[]) => JSON.parse((await run(...args, '--json')).out)
const text = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes)

/** What is asked of the files that do not tell everything, round by round, with an answer to each. */
const asking: Readonly<Record<string, readonly (readonly string[])[]>> = {
  '05-which-day.csv': [['date=day month year']],
  '07-three-digits.csv': [['decimal=decimals']],
  '17-no-header.csv': [
    ['time column=1'],
    ['time unit=s', 'column 2=temperature', 'column 3=mass'],
    ['unit 2=°C', 'unit 3=g'],
  ],
  '20-short-clock.csv': [['time form=minutes:seconds']],
  '22-no-units.csv': [['time unit=s', 'unit 2=°F', 'unit 3=g']],
}
const refused = '21-two-commas.csv'
const names = [...Object.keys(loggerFiles), WHOLE].filter((name) => name !== refused)
const answersTo = (name: string): readonly string[] =>
  (asking[name] ?? []).flat().flatMap((one) => ['--answer', one])

describe.each(names)('the page of %s', (name) => {
  it.each([50, 80, 100])(
    'keeps within %i columns but for its tables, which keep within 80',
    async (width) => {
      const { code, out, err } = await tinwright(['logger', name, ...answersTo(name)], files, { width })
      expect({ code, err }).toEqual({ code: 0, err: '' })
      expect(out).not.toMatch(/undefined|NaN|Infinity|\[object|-0(?:\.0+)?[ )]/)
      expect(out.split('\n').filter((line) => line.length > Math.max(width, 80))).toEqual([])
      // Tables are those of the preview, of the clocks and of the rates.
      const prose = out.split('\n').filter((line) => !/^ {2,}\S.* {2,}\S/.test(line) && line.length > width)
      expect(prose).toEqual([])
    },
  )

  it('says the same as JSON, and the same on every run', async () => {
    const args = [name, ...answersTo(name)]
    const [page, one, other] = [
      await run(...args),
      await run(...args, '--json'),
      await run(...args, '--json'),
    ]
    expect(one).toEqual(other)
    const answer = JSON.parse(one.out)
    expect(one.code).toBe(0)
    expect(flat(page.out)).toContain(`${answer.read} lines of readings`)
    for (const { sentence } of answer.findings) expect(flat(page.out)).toContain(flat(sentence))
    for (const { name: channel } of answer.channels) expect(page.out).toContain(channel.slice(0, 17))
  })
})

describe('what the file does not tell', () => {
  it.each(Object.entries(asking))(
    '%s: is asked in sentences, each with the option that answers it',
    async (name, rounds) => {
      const given: string[] = []
      for (const round of rounds) {
        const { code, out, err } = await run(
          name,
          ...given,
          '--save-mapping',
          'out/m.json',
          '--csv',
          'out/r.csv',
        )
        expect({ code, err }).toEqual({ code: 1, err: '' })
        expect(out).toContain('is not read yet')
        for (const answer of round) expect(out).toContain(`→ --answer "${answer}"`)
        const asked = await json(name, ...given)
        expect(asked.questions.map(({ key }: { key: string }) => key)).toEqual(
          round.map((answer) => answer.split('=')[0]),
        )
        expect(asked.mapping).toBeNull()
        given.push(...round.flatMap((answer) => ['--answer', answer]))
      }
      const { code, written } = await run(name, ...given, '--save-mapping', 'out/m.json')
      expect([code, [...written.keys()]]).toEqual([0, ['out/m.json']])
    },
  )

  it('an open question writes nothing', async () => {
    const { code, written } = await run(
      '07-three-digits.csv',
      '--save-mapping',
      'out/m.json',
      '--csv',
      'out/r.csv',
    )
    expect([code, written.size]).toEqual([1, 0])
  })

  it('an answer counts: decimals or thousands', async () => {
    const high = async (choice: string) =>
      (await json('07-three-digits.csv', '--answer', `decimal=${choice}`)).channels[0].high
    expect(await high('decimals')).toBeCloseTo(1.312, 9)
    expect(await high('thousands')).toBeCloseTo(1312, 9)
  })

  it.each([
    [['07-three-digits.csv', '--answer', 'decimal=comma'], '"decimal=decimals" or "decimal=thousands"'],
    [['07-three-digits.csv', '--answer', 'date=day month year'], 'an answer to what is asked: decimal'],
    [[refused], 'Export it again with semicolons or tabs'],
  ])('%j is refused', async (args, words) => {
    const { code, out, err } = await run(...args)
    expect([code, out]).toEqual([2, ''])
    expect(flat(err)).toContain(words)
  })
})

describe('a mapping that is kept', () => {
  const keep = async (name: string): Promise<string> =>
    text((await run(name, ...answersTo(name), '--save-mapping', 'out/m.json')).written.get('out/m.json'))

  it.each(names)(
    'for %s reads the file again to the same numbers, and fits the published schema',
    async (name) => {
      const mapping = await keep(name)
      const valid = new Ajv2020({ strict: true, strictRequired: false }).compile(
        loggerSchemas['logMapping.schema.json']?.() as object,
      )
      expect(valid(JSON.parse(mapping))).toBe(true)
      const again = await tinwright(['logger', name, '--mapping', 'm.json', '--json'], {
        ...files,
        'm.json': mapping,
      })
      expect(JSON.parse(again.out)).toEqual(await json(name, ...answersTo(name)))
    },
  )

  it('is refused for a file with other headings: nothing is guessed of its units', async () => {
    const mapping = await keep('01-plain.csv')
    const other = (loggerFiles['01-plain.csv'] as string).replace('Pot (°C)', 'Pot (°F)')
    const ended = await tinwright(['logger', 'other.csv', '--mapping', 'm.json'], {
      'm.json': mapping,
      'other.csv': other,
    })
    expect([ended.code, ended.out]).toEqual([2, ''])
    expect(flat(ended.err)).toContain('other columns or units?')
    expect(flat(ended.err)).toContain('Leave --mapping out')
  })

  it('leaves nothing to answer', async () => {
    const ended = await tinwright(['logger', WHOLE, '--mapping', 'm.json', '--answer', 'decimal=decimals'], {
      ...files,
      'm.json': await keep(WHOLE),
    })
    expect(ended.code).toBe(2)
    expect(flat(ended.err)).toContain('--mapping beside --answer')
  })

  it('that fits no line is refused', async () => {
    const mapping = JSON.parse(await keep('13-reset.csv'))
    const ended = await tinwright(['logger', '13-reset.csv', '--mapping', 'm.json'], {
      ...files,
      'm.json': JSON.stringify({ ...mapping, delimiter: ';', headings: ['', ''] }),
    })
    expect(ended.code).toBe(2)
    expect(flat(ended.err)).toContain('at least one line of readings that the mapping fits')
  })
})

describe('what the readings of a whole burn show', () => {
  const withTrial = [WHOLE, '--trial', 'heron.trial.json', '--match', 'lit=09:12:00'] as const

  // The file was made with a knock of 231 g at 09:16:50 + 2 min, one open thermocouple, a gap and a boil at 98.4 °C.
  it('the knock on the scale, and no other outlier', async () => {
    const { fire } = await json(WHOLE)
    const outliers = fire[0].flatMap((one: { outliers: readonly object[] }) => one.outliers)
    expect(outliers).toMatchObject([{ channel: 'Scale (g)', line: 108, value: 1.665 }])
  })

  it('the boil, where the boiling point of the place is known', async () => {
    expect((await json(WHOLE)).fire[0].map(({ boil }: { boil: unknown }) => boil)).toEqual([null, null, null])
    const [, pot] = (await json(WHOLE, '--boiling-point', '98.4 °C')).fire[0]
    expect(pot.boil.time).toBeGreaterThan(9 * 3600 + 23 * 60)
    expect(pot.boil.time).toBeLessThan(9 * 3600 + 24 * 60)
  })

  it('says how boiling depends on the place where nobody said what it is there', async () => {
    const hint = 'give yours with --boiling-point'
    expect(flat((await run(WHOLE)).out)).toContain(hint)
    expect(flat((await run(WHOLE, '--boiling-point', '98.4 °C')).out)).not.toContain(hint)
    expect(flat((await run('01-plain.csv')).out)).not.toContain(hint)
  })

  it('how fast the scale gets lighter, with method and window', async () => {
    const { out } = await run(WHOLE)
    expect(flat(out)).toContain(
      'slope of straight lines through the readings within 60 s either way, tricube weights',
    )
    const { burnRate } = (await json(WHOLE)).fire[0][2]
    const middle = burnRate.rate.filter(
      (_: number, i: number) => Math.abs(burnRate.time[i] - (9 * 3600 + 20 * 60)) < 60,
    )
    // Made with 8.6 g/min, give or take half a gram.
    for (const rate of middle) expect(Math.abs(rate * 60_000 - 8.6)).toBeLessThan(0.9)
  })

  it('both clocks together: offset, drift and how well it is known', async () => {
    const { out } = await run(...withTrial)
    expect(flat(out)).toContain('The logger’s clock against the log of “Heron, first burn”')
    expect(flat(out)).toMatch(
      /Lit at 09:12:00 by the logger\. Its clock runs \d+ s an hour slow, ± \d+ s if each moment is good to 5 s/,
    )
    expect(out).toContain('boil, as the readings show it')
    const { clocks } = await json(...withTrial)
    expect(clocks.matches.map(({ what, log }: { what: string; log: number }) => [what, log])).toEqual([
      ['lit', 0],
      ['boil', 690],
    ])
  })

  it.each([
    [['--match', 'lit'], 'an event of the trial, =, and when it was'],
    [['--match', 'smoke=09:12:00'], 'an event that the trial has once: lit'],
    [['--match', 'note=09:14:00'], 'The trial has "note" 2 times'],
    [['--match', 'lit=noon'], 'a moment as the logger’s clock shows it'],
    [['--match', 'lit=09:30:00', '--match', 'flame out=09:12:00'], 'in the same order on both clocks'],
    [['--part', '2'], '1: the clock never began anew'],
    [['--water', 'kettle'], 'Flue (°C), Pot (°C)'],
  ])('%j is refused', async (args, words) => {
    const { code, out, err } = await run(WHOLE, '--trial', 'heron.trial.json', ...args)
    expect([code, out]).toEqual([2, ''])
    expect(flat(err)).toContain(words)
  })

  it('asks which part is the trial’s where the clock began anew, and writes nothing until it knows', async () => {
    const args = ['13-reset.csv', '--trial', 'heron.trial.json', '--csv', 'out/r.csv']
    const asked = await run(...args)
    expect([asked.code, asked.written.size]).toEqual([1, 0])
    expect(flat(asked.out)).toContain('which part is the burn of the trial?')
    for (const part of [1, 2]) expect(asked.out).toContain(`→ --part "${part}"`)
    const told = await run(...args, '--part', '2', '--match', 'lit=0 s')
    expect([told.code, told.written.size]).toEqual([0, 1])
  })

  it('CSV: the same numbers in one shape, outliers named and left, time after lighting where it is known', async () => {
    const { written } = await run(...withTrial, '--csv', 'out/r.csv')
    const [head, ...lines] = text(written.get('out/r.csv')).trimEnd().split('\n')
    expect(head).toBe(
      'part,line,time s,after lighting s,Flue (°C) in °C,Pot (°C) in °C,Scale (g) in g,outliers',
    )
    expect(lines.length).toBe(278)
    const of = (line: number) => lines.find((one) => one.startsWith(`1,${line},`))?.split(',') ?? []
    // As the file says: 09:18:50;552,3;66,2;1665
    expect([of(108)[2], ...of(108).slice(4)]).toEqual(['33530', '552.3', '66.2', '1665', 'Scale (g)'])
    // 09:15:20;OL;…
    expect(of(66)[4]).toBe('')
    const raw = (exampleFiles[WHOLE] as string).trimEnd().split('\n').slice(1)
    for (const [i, one] of raw.entries()) {
      const cells = one.split(';').map((cell) => cell.replace(',', '.'))
      const said = of(i + 2).slice(4, 7)
      expect(said.map((cell) => (cell === '' ? 'OL' : Number(cell)))).toEqual(
        cells.slice(1).map((cell) => (cell === 'OL' ? 'OL' : Number(cell))),
      )
    }
  })
})

describe('bytes that are no UTF-8', () => {
  const bytes = (encode: (text: string) => Uint8Array) => ({
    readBytes: (): Uint8Array => encode(loggerFiles['01-plain.csv'] as string),
  })
  it.each([
    ['Windows-1252', (one: string) => Uint8Array.from(one, (char) => char.charCodeAt(0))],
    ['UTF-16', (one: string) => new Uint8Array(Buffer.from(`\uFEFF${one}`, 'utf16le'))],
  ] as const)('%s is read, and said', async (name, encode) => {
    const { code, out } = await tinwright(['logger', 'old.csv'], files, bytes(encode))
    expect(code).toBe(0)
    expect(flat(out)).toContain(name)
    expect(out).toContain('column 3 “Pot (°C)” in °C')
  })
})
