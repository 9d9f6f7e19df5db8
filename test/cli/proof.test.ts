import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { seriesTexts } from '../proof/compare/seriesTrials.ts'
import { waterBoilingTrial } from '../proof/trial/waterBoiling.ts'
import { exampleFiles, type Files, flat, isTableRow, tinwright } from './memory.ts'

const files: Files = {
  ...exampleFiles,
  ...Object.fromEntries(Object.entries(seriesTexts).map(([name, text]) => [`series/${name}`, text])),
  'worked.trial.json': JSON.stringify(waterBoilingTrial()),
}
const series = Object.keys(files).filter((name) => name.startsWith('series/') && name.endsWith('.trial.json'))
const few = series.slice(0, 6)

const ajv = new Ajv2020({ strict: true, strictRequired: false, allErrors: true })
const schemaOf = (name: string) =>
  ajv.compile(JSON.parse(readFileSync(new URL(`../../schema/${name}.schema.json`, import.meta.url), 'utf8')))

/** 80 columns, save for rows of figures, which are as wide as they are. */
const fits = (out: string): void => {
  for (const line of out.split('\n')) if (!isTableRow(line)) expect(line.length, line).toBeLessThanOrEqual(80)
}

describe('tinwright trial', () => {
  it('metrics with their uncertainty, and how each was worked out with numbers in the formula', async () => {
    const { code, out, err } = await tinwright(['trial', 'worked.trial.json'], files)
    expect({ code, err }).toEqual({ code: 0, err: '' })
    fits(out)
    const text = flat(out)
    // Constructed example: test/reference/waterBoilingExamples.json.
    expect(text).toContain('thermal efficiency, char counted as left: 19.3 % ±')
    expect(text).toContain('h_c = 1000·Q_c / (f_cd·LHV)')
    expect(text).toContain('= 1000·1010.88 / (283.592·18500) = 0.192678')
    expect(text).toMatch(/firepower: 4370 W \(149\d0 Btu\/h\) ± \d+ W/)
    expect(text).toContain('Turndown: 1.98')
  })

  it('shows what the fixed factors say beside the energy form, and claims neither conformity nor a tier', async () => {
    const text = flat((await tinwright(['trial', 'worked.trial.json'], files)).out)
    expect(text).toMatch(
      /Dry-fuel equivalent: 284 g .* by the energy form, .* fixed factors says 294 g .*, 10 g .* more\./,
    )
    expect(text).toContain('from memory: no conformity is claimed')
    expect(text).toContain('no performance tier follows from a garage test')
    expect(text.replace('no performance tier follows from a garage test', '')).not.toMatch(
      /\btiers?\b|rating/i,
    )
  })

  it('several at once, without workings', async () => {
    const { code, out } = await tinwright(['trial', ...few, '--brief'], files)
    expect(code).toBe(0)
    fits(out)
    expect(out).not.toContain('How this was worked out')
    expect(out.match(/^Full power$/gm)).toHaveLength(few.length)
  })

  it('a burn with a mishap ends with 1 and says it', async () => {
    const mishap = JSON.stringify({ ...waterBoilingTrial(), wentWrong: ['The pot was knocked off.'] })
    const { code, out } = await tinwright(['trial', 'm.json'], { 'm.json': mishap })
    expect(code).toBe(1)
    expect(out).toContain('It went wrong: The pot was knocked off.')
  })

  it('goes out as CSV and as JSON, and is read again from both', async () => {
    for (const name of ['out/all.csv', 'out/all.json']) {
      const { code, written } = await tinwright(['trial', ...few, '--brief', '--export', name], files)
      expect(code).toBe(0)
      const text = new TextDecoder().decode(written.get(name))
      const again = await tinwright(['trial', 'again', '--brief'], { again: text })
      const before = await tinwright(['trial', ...few, '--brief'], files)
      expect(again.out).toBe(before.out)
    }
  })

  it('a table of numbers for a spreadsheet', async () => {
    const { written } = await tinwright(['trial', ...few, '--brief', '--table', 'out/t.csv'], files)
    const lines = new TextDecoder().decode(written.get('out/t.csv')).trimEnd().split('\r\n')
    expect(lines).toHaveLength(few.length + 1)
    expect(lines[0]).toContain('high power: firepower [W]')
  })

  it('JSON as its schema says', async () => {
    const check = schemaOf('metrics')
    const { out } = await tinwright(['trial', 'worked.trial.json', ...few, '--json'], files)
    check(JSON.parse(out))
    expect(check.errors).toBeNull()
  })

  it.each(['A4', 'Letter'])('an empty sheet on %s: two pages', async (paper) => {
    const { code, out, written } = await tinwright(
      ['trial', '--sheet', '--paper', paper, '--name', 'Heron'],
      files,
    )
    expect(code).toBe(0)
    expect(flat(out)).toContain(`2 pages of ${paper}`)
    const name = `out/heron-trial-sheet-${paper.toLowerCase()}.pdf`
    expect(new TextDecoder('latin1').decode(written.get(name)?.slice(0, 5))).toBe('%PDF-')
  })

  it.each([
    ['no file', ['trial'], 'trial.none'],
    ['no such file', ['trial', 'none.json'], 'file.unreadable'],
    ['a file and the sheet', ['trial', 'worked.trial.json', '--sheet'], 'trial.sheet'],
    ['a stove', ['trial', 'heron.stove.json'], 'format.other'],
    ['one burn twice', ['trial', few[0] as string, few[0] as string], 'trial.twice'],
    ['another ending', ['trial', few[0] as string, '--export', 'x.xlsx'], 'export.ending'],
    ['no such paper', ['trial', '--sheet', '--paper', 'A3'], 'paper.unknown'],
    ['no such day', ['trial', '--sheet', '--date', '2031-02-31'], 'date.'],
    ['a long name', ['trial', '--sheet', '--name', 'x'.repeat(70)], 'name.long'],
  ])('%s ends with 2', async (_, args, problem) => {
    const { code, out, written } = await tinwright([...args, '--json'], files)
    expect(code).toBe(2)
    expect(written.size).toBe(0)
    expect(JSON.parse(out).problems[0].code).toContain(problem)
  })
})

describe('tinwright compare', () => {
  it('tells what helps, what harms and what may be luck', async () => {
    const { code, out, err } = await tinwright(['compare', ...series], files)
    expect({ code, err }).toEqual({ code: 0, err: '' })
    fits(out)
    const text = flat(out)
    expect(text).toContain('“B, wider bore” helps. “B, wider bore” boils 0.5 L (0.528 US qt)')
    expect(text).toContain('“D, narrow windows” harms.')
    expect(text).toContain('“C, taller riser”: not told yet. It looks as if')
    expect(text).toMatch(/14 burns of each, 10 more, would show it four times out of five/)
    expect(text).toContain('Pair by pair (within day and fuel batch, Tukey–Kramer)')
    expect(text).toContain('from memory: no conformity is claimed')
  })

  it('one metric asked about, one variant held against, another method; every metric', async () => {
    const { out } = await tinwright(
      [
        'compare',
        ...series,
        '--question',
        'efficiency',
        '--against',
        'B, wider bore',
        '--method',
        'tukey',
        '--all',
      ],
      files,
    )
    fits(out)
    const text = flat(out)
    expect(text).toContain(
      'held against “B, wider bore”, asked about: thermal efficiency, char counted as left',
    )
    expect(text).toContain('As asked for.')
    expect(text).toContain('firepower (Tukey–Kramer)')
  })

  it('JSON as its schema says', async () => {
    const check = schemaOf('comparison')
    for (const args of [series, [...few, '--method', 'welch', '--no-mishaps']]) {
      const { out } = await tinwright(['compare', ...args, '--json'], files)
      check(JSON.parse(out))
      expect(check.errors).toBeNull()
    }
  })

  it('one burn of each tells nothing: 1', async () => {
    const { code, out } = await tinwright(['compare', ...few], files)
    expect(code).toBe(1)
    expect(flat(out)).toContain('one burn does not tell how far burns of one stove differ')
  })

  it.each([
    ['one variant', ['compare', few[0] as string], 'compare.variants'],
    ['no such variant', ['compare', ...few, '--against', 'Z'], 'compare.reference'],
    ['no such metric', ['compare', ...few, '--question', 'soot'], 'compare.question'],
    ['no such method', ['compare', ...few, '--method', 'guess'], 'compare.method'],
    ['a margin without a unit', ['compare', ...few, '--margin', '5'], 'share.range'],
    ['a confidence of all', ['compare', ...few, '--confidence', '100 %'], 'share.range'],
    ['one burn twice', ['compare', ...few, few[1] as string], 'trial.twice'],
  ])('%s ends with 2', async (_, args, problem) => {
    const { code, out } = await tinwright([...args, '--json'], files)
    expect(code).toBe(2)
    expect(JSON.parse(out).problems[0].code).toBe(problem)
  })
})

describe('tinwright burns', () => {
  it('an order by lot, its seed shown; the same seed, the same order', async () => {
    const args = ['burns', 'A', 'B, wider bore', 'C', '--rounds', '4', '--seed', '7']
    const { code, out } = await tinwright(args, {})
    expect(code).toBe(0)
    fits(out)
    expect(flat(out)).toContain('12 burns of 3 variants in 4 rounds, in an order drawn by lot with seed 7')
    expect((await tinwright(args, {})).out).toBe(out)
    expect(flat((await tinwright(['burns', 'A', 'B'], {})).out)).toContain('seed 20310517')
  })

  it('JSON as its schema says', async () => {
    const check = schemaOf('order')
    const { out } = await tinwright(['burns', 'A', 'B', '--rounds', '1', '--json'], {})
    check(JSON.parse(out))
    expect(check.errors).toBeNull()
  })

  it.each([
    ['one variant', ['burns', 'A'], 'order.variants'],
    ['one twice', ['burns', 'A', 'A'], 'order.twice'],
    ['rounds in words', ['burns', 'A', 'B', '--rounds', 'three'], 'order.rounds'],
    ['no seed', ['burns', 'A', 'B', '--seed', '-1'], 'order.seed'],
  ])('%s ends with 2', async (_, args, problem) => {
    const { code, out } = await tinwright([...args, '--json'], {})
    expect(code).toBe(2)
    expect(JSON.parse(out).problems[0].code).toBe(problem)
  })
})

it('readings of a logger are not taken for a trial, and it says which command reads them', async () => {
  const { code, err } = await tinwright(['trial', 'burn.csv'], { 'burn.csv': 'Time;Flue\n0;18,2\n' })
  expect(code).toBe(2)
  expect(flat(err)).toContain('beginning of the file: Time;Flue will not do')
  expect(flat(err)).toContain('tinwright logger')
})

it('an end of an interval that is not nothing does not read as nothing', async () => {
  const { out } = await tinwright(['compare', ...series, '--method', 'welch'], files)
  // SciPy’s Welch interval of C against A is −1.01 to −0.02 min: it leaves nothing out, so it may be called better.
  expect(out).toMatch(/3 − 1 +-0\.5 min +-1\.01 to -0\.02 min +better/)
})

describe('tinwright predicted', () => {
  it('says that the stove file is of another stove, and what was weighed as it was weighed', async () => {
    const { out } = await tinwright(
      ['predicted', few[0] as string, '--stove', 'greylag.stove.json', '--bands', '0'],
      files,
    )
    const text = flat(out)
    expect(text).toContain('The trial was burnt in “Heron”, and this is the prediction of “Greylag”.')
    expect(text).toContain('114 g of fuel were weighed for the start, about ')
  })

  it('one trial beside its burn, with bands, in both systems of units', async () => {
    const { code, out, err } = await tinwright(
      ['predicted', few[0] as string, '--stove', 'series/heron-d.stove.json', '--bands', '6'],
      files,
    )
    // One burn proves no claim wrong, wherever it lies.
    expect({ code, err }).toEqual({ code: 0, err: '' })
    fits(out)
    expect(out).toMatch(/measured +predicted +5 to 95 %/)
    expect(out).toMatch(/firepower +\d+ W/)
    expect(out).toMatch(/firepower +\d+ Btu\/h/)
    expect(flat(out)).toContain('from memory: no conformity is claimed, and no performance tier follows')
  })

  it('several, each with the stove it names: which claims are wrong, with numbers', async () => {
    const { code, out } = await tinwright(['predicted', ...few, '--bands', '5'], files)
    expect(code).toBe(1)
    fits(out)
    const text = flat(out)
    expect(text).toContain('Over 6 trials, claim by claim')
    expect(text).toMatch(
      /Char by weight of the fuel: the model is wrong for you\. Over 6 burns of 6 stoves .* \d of 6 burns lie outside/,
    )
    expect(text).toMatch(/Time to boil: .* \d+ % shorter/)
  })

  it('JSON as its schema says', async () => {
    const check = schemaOf('predicted')
    for (const bands of ['0', '4']) {
      const { out } = await tinwright(['predicted', ...few.slice(0, 3), '--bands', bands, '--json'], files)
      check(JSON.parse(out))
      expect(check.errors).toBeNull()
    }
  })

  it.each([
    ['no stove named', ['predicted', 'worked.trial.json'], 'predicted.stove'],
    ['no such stove', ['predicted', few[0] as string, '--stove', 'none'], 'file.unreadable'],
    ['bands in words', ['predicted', few[0] as string, '--bands', 'many'], 'count.not-a-number'],
  ])('%s ends with 2', async (_, args, problem) => {
    const { code, out } = await tinwright([...args, '--json'], files)
    expect(code).toBe(2)
    expect(JSON.parse(out).problems[0].code).toBe(problem)
  })
})

it.each([
  ['trial', few[0] as string],
  ['trial', '--sheet'],
  ['compare', ...few],
  ['burns', 'A', 'B'],
  ['predicted', few[0] as string, '--bands', '0'],
])('tinwright %s %s carries the cautions', async (...args) => {
  const { out } = await tinwright(args, files)
  for (const words of [
    /carbon monoxide/,
    /never in a tent, shelter or vehicle/,
    /drown it/,
    /not an approval/,
  ])
    expect(flat(out)).toMatch(words)
  const json = JSON.parse((await tinwright([...args, '--json'], files)).out)
  expect(json.cautions.join(' ')).toContain('carbon monoxide')
})
