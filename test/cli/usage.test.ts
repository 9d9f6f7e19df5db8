import { describe, expect, it } from 'vitest'
import type { Problem } from '#basis/problem.ts'
import { exampleFiles, flat, tinwright } from './memory.ts'
import { spoiltStoves, unknownFuel } from './spoilt.ts'

const files = { ...exampleFiles, ...spoiltStoves, 'a folder/': '' }
const STOVE = 'redshank.stove.json'
const LOG = 'heron.logger.csv'

/** Words of a command that will not do, with what has to be said of them. */
const faults: readonly (readonly [args: readonly string[], code: string, said: readonly string[]])[] = [
  [['chek', STOVE], 'usage.command', ['chek', 'check, predict,', 'Was check meant?']],
  [['check', STOVE, '--shef', 'x'], 'usage.option', ['--shef', '--shelf', 'Was --shelf meant?']],
  [['check', STOVE, '--paper', 'A4'], 'usage.option', ['--paper', '--help']],
  [['check'], 'usage.missing', ['stove', 'tinwright check FILE']],
  [['predict'], 'usage.missing', ['stove', 'tinwright predict FILE']],
  [['check', STOVE, '--shelf'], 'usage.option-value', ['--shelf: --shelf alone', 'Write it after --shelf']],
  [['check', STOVE, 'heron.stove.json'], 'usage.excess', ['heron.stove.json']],
  [['check', 'nowhere.json'], 'file.unreadable', ['nowhere.json', 'There is no such file']],
  [['predict', 'a folder'], 'file.unreadable', ['a folder', 'That is a folder']],
  [['templates', 'nowhere.json'], 'file.unreadable', ['nowhere.json', 'There is no such file']],
  [['fit', 'nowhere.json'], 'file.unreadable', ['nowhere.json', 'There is no such file']],
  [['check', STOVE, '--shelf', 'nowhere.json'], 'file.unreadable', ['--shelf', 'nowhere.json']],
  [['check', STOVE, '--shelf', STOVE], 'format.other-kind', ['stove file; a shelf file']],
  [['check', 'shelf.json'], 'format.other-kind', ['shelf file; a stove file']],
  [['predict', STOVE, '--fuel', 'coal'], 'fuel.unknown', ['--fuel', 'coal', 'pellets-6mm']],
  [['predict', STOVE, '--moisture', '0.12'], 'share.no-unit', ['--moisture', '0.12 %', '12 %']],
  [['predict', STOVE, '--moisture', '99 %'], 'share.range', ['--moisture', '60 %']],
  [['predict', STOVE, '--temperature', '20'], 'temperature.no-unit', ['20 °C', '20 °F']],
  [['predict', STOVE, '--wind', '3'], 'velocity.no-unit', ['3 m/s', '3 mph']],
  [
    ['predict', STOVE, '--wind', '2 m/s', '--wind-from', 'north'],
    'angle.not-a-number',
    ['--wind-from', 'north'],
  ],
  [['predict', STOVE, '--wind-from', '90 deg'], 'site.no-wind', ['--wind-from', '--wind "2 m/s"']],
  [
    ['predict', STOVE, '--altitude', '1 m', '--pressure', '900 hPa'],
    'site.twice',
    ['--altitude', '--pressure'],
  ],
  [['burn'], 'usage.missing', ['stove', 'tinwright burn FILE']],
  [['burn', STOVE, '--damper', '12 deg'], 'damper.form', ['--damper', '"10 min: 12 deg"']],
  [['burn', STOVE, '--damper', '10: 12 deg'], 'time.no-unit', ['--damper', '10 min']],
  [['burn', STOVE, '--damper', '10 min: 12'], 'angle.no-unit', ['--damper', '12°']],
  [['burn', STOVE, '--damper', '10 min: 400 deg'], 'angle.range', ['--damper', '360°']],
  [
    ['burn', STOVE, '--damper', 'boil: 5 deg', '--damper', 'boil: 7 deg'],
    'damper.twice',
    ['--damper', 'boil: 5 deg, boil: 7 deg', 'Give each time once.'],
  ],
  [['burn', 'heron.stove.json', '--damper', 'boil: 5 deg'], 'damper.none', ['--damper', 'Heron has none']],
  [['burn', STOVE, '--skirt', '8 mm'], 'skirt.form', ['--skirt', '8 mm x 60 mm']],
  [['burn', STOVE, '--skirt', '8 x 60 mm'], 'length.no-unit', ['--skirt', '8 mm']],
  [['burn', STOVE, '--skirt', '0 mm x 60 mm'], 'length.range', ['--skirt', 'skirt gap', '1 mm']],
  [['burn', STOVE, '--pot', '150'], 'length.no-unit', ['--pot', '150 mm']],
  [['burn', STOVE, '--trip', 'a week'], 'trip.form', ['--trip', '3 days, 2 boils, 0.5 L']],
  [['burn', STOVE, '--trip', '2.5 days, 2 boils, 0.5 L'], 'count.not-whole', ['--trip', '2 or 3']],
  [['burn', STOVE, '--trip', '3 days, 2 boils, 0.5'], 'volume.no-unit', ['--trip', '0.5 L']],
  [['burn', STOVE, '--bands', 'many'], 'count.not-a-number', ['--bands', 'number of sets']],
  [['predict', STOVE, '--bands', '1.5'], 'count.not-whole', ['--bands', '1 or 2']],
  [['burn', STOVE, '--fuel', 'coal'], 'fuel.unknown', ['--fuel', 'coal', 'pellets-6mm']],
  [['templates', STOVE, '--paper', 'A5'], 'paper.unknown', ['--paper', 'A5', 'A4, Letter or A3']],
  [['templates', STOVE, '--as', 'step'], 'format.unknown', ['--as', 'step', 'pdf, svg, dxf or all']],
  [['solids', STOVE, '--as', 'obj'], 'solids.format', ['--as', 'obj', 'stl or 3mf']],
  [['solids', STOVE, '--arrangement', 'sideways'], 'solids.arrangement', ['--arrangement', 'exploded']],
  [['solids', STOVE, '--chord', '0.02'], 'length.no-unit', ['--chord', '0.02']],
  [['solids', STOVE, '--chord', '0 mm'], 'length.range', ['--chord', '0 mm']],
  [['guides', STOVE, '--bit', 'big'], 'guides.bit', ['--bit', 'pilot or full']],
  [['guides', STOVE, '--pilot', '30 mm'], 'length.range', ['--pilot', '30 mm']],
  [['guides', STOVE, '--bed', '220 mm'], 'guides.bed', ['--bed', '220 mm x 220 mm']],
  [['guides', STOVE, '--part', 'lid'], 'guides.part', ['--part', 'shell']],
  [['guides', STOVE, '--bed', '45 mm x 45 mm'], 'guide.bed', ['larger printer']],
  [['templates', STOVE, '--date', 'tomorrow'], 'date.form', ['--date', 'tomorrow', '2031-05-17']],
  [['templates', STOVE, '--date', '2031-02-29'], 'date.form', ['--date', '2031-02-29']],
  [['cards', STOVE, '--date', '2031-02-29'], 'date.form', ['--date', '2031-02-29']],
  [['cards', STOVE, '--shape', 'round'], 'shape.unknown', ['--shape', 'round', 'wide, square or both']],
  [['cards', STOVE, '--as', 'jpeg'], 'as.unknown', ['--as', 'jpeg', 'svg, png or both']],
  [['cards', STOVE, '--theme', 'blue'], 'theme.unknown', ['--theme', 'blue', 'light or dark']],
  [['shop'], 'usage.missing', ['stove', 'tinwright shop FILE']],
  [['shop', STOVE, '--shelf', STOVE], 'format.other-kind', ['stove file; a shelf file']],
  [['steps', 'shelf.json'], 'format.other-kind', ['shelf file; a stove file']],
  [['sheets', STOVE, '--paper', 'A5'], 'paper.unknown', ['--paper', 'A5', 'A4, Letter or A3']],
  [['sheets', STOVE, '--date', '2031-02-29'], 'date.form', ['--date', '2031-02-29']],
  [['built', STOVE], 'built.what', ['--blank', 'as-built file']],
  [['built', STOVE, 'redshank.built.json', '--blank'], 'built.what', ['--blank beside redshank.built.json']],
  [['built', STOVE, 'nowhere.json'], 'file.unreadable', ['as-built file', 'There is no such file']],
  [['built', STOVE, 'shelf.json'], 'format.other-kind', ['shelf file; a built file']],
  [['built', 'heron.stove.json', 'redshank.built.json'], 'built.other-stove', ['"Redshank"', '"Heron"']],
  [['built', STOVE, 'redshank.built.json', '--wind', '3'], 'velocity.no-unit', ['3 m/s', '3 mph']],
  [['cans', 'No. 99'], 'can.unknown', ['No. 99', '404x700']],
  [['cans', '4x4'], 'size-code.form', ['4x4', '603x700']],
  [['fit', '404x700'], 'fit.what', ['404x700', 'two cans, one stove file']],
  [['fit'], 'fit.what', ['two cans, one stove file']],
  [['fit', STOVE, '--shelf', 'shelf.json'], 'fit.what', ['--shelf FILE alone']],
  [['logger'], 'usage.missing', ['file', 'tinwright logger FILE']],
  [['logger', 'nowhere.csv'], 'file.unreadable', ['logger file', 'There is no such file']],
  [['logger', STOVE], 'logger.no-table', [STOVE, 'at least three lines of readings']],
  [['logger', LOG, '--mapping', 'nowhere.json'], 'file.unreadable', ['--mapping', 'There is no such file']],
  [['logger', LOG, '--mapping', STOVE], 'format.other-kind', ['stove file; a logger file']],
  [['logger', LOG, '--trial', 'shelf.json'], 'format.other-kind', ['shelf file; a trial file']],
  [['logger', LOG, '--answer', 'decimal'], 'logger.answer-form', ['--answer', '"decimal=decimals"']],
  [
    ['logger', LOG, '--answer', 'decimal=decimals'],
    'logger.answer-unasked',
    ['decimal=decimals', 'nothing is asked'],
  ],
  [
    ['logger', LOG, '--answer', 'a=b', '--answer', 'a=c'],
    'logger.answer-twice',
    ['a=b and a=c', 'one answer'],
  ],
  [['logger', LOG, '--match', 'lit=1 s'], 'logger.options', ['without --trial']],
  [['logger', LOG, '--boiling-point', '98'], 'temperature.no-unit', ['98 °C', '98 °F']],
  [['--json'], 'usage.option', ['--json']],
]

describe.each(faults.map(([args, code, said]) => [args.join(' '), args, code, said] as const))(
  'tinwright %s',
  (_, args, code, said) => {
    it('says on stderr what is wrong, allowed and to be done, and ends with 2', async () => {
      if (args.includes('--json')) return
      const ended = await tinwright(args, files)
      expect({ code: ended.code, out: ended.out, written: ended.written.size }).toEqual({
        code: 2,
        out: '',
        written: 0,
      })
      for (const words of said) expect(flat(ended.err)).toContain(words)
      expect(flat(ended.err)).toMatch(/: .* will not do; allowed is | is missing; allowed is /)
      expect(ended.err).not.toMatch(/\n {4}at |undefined/)
    })

    it('says it as JSON on stdout with --json', async () => {
      const ended = await tinwright([...args.slice(0, 1), '--json', ...args.slice(1)], files)
      expect({ code: ended.code, err: ended.err, written: ended.written.size }).toEqual({
        code: 2,
        err: '',
        written: 0,
      })
      const { problems } = JSON.parse(ended.out) as { readonly problems: readonly Problem[] }
      expect(problems.map((problem) => problem.code)).toContain(code)
      for (const { field, allowed, fix } of problems)
        for (const part of [field, allowed, fix]) expect(part).toMatch(/\S/)
    })
  },
)

describe('a fuel that is not in the table', () => {
  it.each([
    'check',
    'predict',
    'burn',
    'templates',
    'cards',
    'solids',
    'guides',
    'fit',
    'shop',
    'steps',
    'sheets',
  ])('is refused by %s, where it is written', async (command) => {
    const { code, out, err } = await tinwright([command, 'coal.json'], { 'coal.json': unknownFuel })
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(flat(err)).toContain('coal.json: fuel.kind: coal will not do; allowed is pellets-6mm')
  })
})

/** Every command there is. */
const COMMANDS = [
  'check',
  'predict',
  'burn',
  'templates',
  'solids',
  'guides',
  'plan',
  'cards',
  'cans',
  'fit',
  'shop',
  'steps',
  'built',
  'sheets',
  'logger',
  'workshop',
] as const

describe('without a command', () => {
  it('shows the help on stderr and ends with 2', async () => {
    const { code, out, err } = await tinwright([], {})
    expect({ code, out }).toEqual({ code: 2, out: '' })
    for (const command of COMMANDS) expect(err).toContain(`  ${command} `)
  })
})

describe('help and version', () => {
  const asked = COMMANDS.map((command) => [command, '--help'])
  it.each([['--help'], ['help'], ...asked, ['help', 'check']])(
    '%s %s ends with 0, within a narrow page',
    async (...args) => {
      const { code, out, err } = await tinwright(
        args.filter((word) => word !== undefined),
        {},
        { width: 50 },
      )
      expect({ code, err }).toEqual({ code: 0, err: '' })
      expect(out).toMatch(/^Usage: tinwright/)
      expect(out.split('\n').filter((line) => line.length > 50)).toEqual([])
    },
  )

  it('names the exit codes and the fuels', async () => {
    const { out } = await tinwright(['--help'], {})
    for (const code of ['0 when', '1 when', '2 when', '3 when']) expect(flat(out)).toContain(code)
    expect((await tinwright(['predict', '--help'], {})).out).toContain('pellets-6mm')
  })

  it('says the version', async () => {
    expect((await tinwright(['--version'], {}, { version: '7.8.9' })).out).toBe('7.8.9\n')
  })
})

describe('an answer that is not a good one ends with 1', () => {
  it.each(['check', 'predict', 'templates', 'shop', 'steps'])(
    '%s of a stove that cannot be put together says so',
    async (command) => {
      const { code, out } = await tinwright([command, 'stop.json'], files)
      expect(code).toBe(1)
      expect(out).toContain('STOP (will not work, or is dangerous)')
      expect(flat(out)).toContain('has to pass the opening of “shell”')
    },
  )

  it.each(['predict', 'templates', 'shop', 'steps'])('%s says it in JSON too', async (command) => {
    const { code, out } = await tinwright([command, 'stop.json', '--json'], files)
    expect(code).toBe(1)
    const { stopFindings } = JSON.parse(out) as {
      readonly stopFindings: readonly { readonly severity: string }[]
    }
    expect(stopFindings.map(({ severity }) => severity)).toEqual(['stop'])
  })

  it.each(['starved.json', 'no-floor.json'])('predict of %s', async (file) => {
    const text = await tinwright(['predict', file], files)
    const json = await tinwright(['predict', file, '--json'], files)
    expect([text.code, json.code]).toEqual([1, 1])
    const answer = JSON.parse(json.out) as { kind: string; noBurn?: { sentence: string } }
    if (answer.kind === 'no burn') expect(flat(text.out)).toContain(answer.noBurn?.sentence)
    else
      expect(text.out).toMatch(/Regime: (SMOULDER|RICH AND SMOKY|QUENCHED LEAN)|does not burn to the floor/)
  })

  it('counts what it finds in proper plurals', async () => {
    const { out } = await tinwright(['check', 'stop.json'], files)
    const [title = ''] = out.split('\n')
    expect(title).toMatch(/^Redshank: 1 stop, (1 warning|\d+ warnings), (1 note|\d+ notes)$/)
    expect(title).not.toMatch(/\b1 \w+s\b|\b(?!1 )\d+ (stop|warning|note)\b/)
  })
})

describe('when Tinwright itself breaks', () => {
  it('ends with 3 and says so on stderr', async () => {
    const broken = {
      fonts: () => {
        throw new Error('no fonts here')
      },
    }
    const { code, out, err, written } = await tinwright(['templates', STOVE], files, broken)
    expect({ code, out, written: written.size }).toEqual({ code: 3, out: '', written: 0 })
    expect(err).toMatch(/^Tinwright broke: Error: no fonts here/)
  })
})
