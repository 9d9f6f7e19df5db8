import { describe, expect, it } from 'vitest'
import { exampleFiles, exampleStoves, flat, isTableRow, tinwright } from './memory.ts'

const QUICK = ['--bands', '6'] as const
const NONE = ['--bands', '0'] as const

/** What a test reads of the JSON; `output.test.ts` holds it against the schema. */
interface Answer {
  readonly kind: 'burn' | 'no burn'
  readonly noBurn?: { readonly sentence: string }
  readonly fuel: { readonly charge: number }
  readonly asked: {
    readonly damper: readonly { readonly at: number; readonly turned: number }[]
    readonly boilNeverCame: boolean
  }
  readonly events: readonly { readonly time: number; readonly kind: string }[]
  readonly figures: Readonly<Record<string, number>>
  readonly boils: readonly {
    readonly litres: number
    readonly time: number | null
    readonly boilsAt: number | null
  }[]
  readonly trip: { readonly fuel: number | null } | null
  readonly bands: {
    readonly samples: number
    readonly figures: Readonly<Record<string, { readonly low: number; readonly high: number } | null>>
    readonly outcomes: Readonly<Record<string, number>>
    readonly firepowerOverTime: { readonly low: readonly number[]; readonly high: readonly number[] }
  } | null
  readonly series: readonly {
    readonly time: number
    readonly duration: number
    readonly phase: string
    readonly firepower: number
    readonly hottestOuterWall: number
    readonly fuelRate: number
  }[]
}

const answer = async (...args: readonly string[]): Promise<Answer & { readonly code: number }> => {
  const { code, out, err } = await tinwright(['burn', ...args, '--json'], exampleFiles)
  expect(err).toBe('')
  return { ...(JSON.parse(out) as Answer), code }
}

const boil = ({ boils }: Answer, litres: number): number =>
  boils.find((one) => one.litres === litres)?.time ?? Number.POSITIVE_INFINITY

describe.each(exampleStoves)('the page of %s', (file) => {
  const asked = ['burn', file, ...QUICK, '--trip', '3 days, 2 boils, 0.5 L'] as const

  it('says all that is asked of a burn, and what is never said', async () => {
    const { code, out, err } = await tinwright(asked, exampleFiles)
    expect({ code, err }).toEqual({ code: 0, err: '' })
    for (const words of [
      'Time line',
      'whole top alight, pot goes on',
      'front at the floor',
      'last char goes cold',
      '5 to 95 %',
      'wood gas for',
      'hottest wall',
      'Touch: ',
      'to the boil',
      'fuel for a litre',
      'char counted as left',
      'With the front half way down',
      'chokes ',
      'wind it stands',
      'Outdoors only',
      'trip ',
      'No CO or smoke figure is predicted, no tier',
    ])
      expect(flat(out)).toContain(words)
    expect(out).not.toMatch(/\bsafe|undefined|NaN|Infinity|\[object/i)
  })

  it.each([50, 80, 100])('keeps within %i columns', async (width) => {
    const { out } = await tinwright(asked, exampleFiles, { width })
    const wide = out.split('\n').filter((line) => line.length > width)
    const table = (line: string): boolean => isTableRow(line) || /^ {20,}\d/.test(line)
    expect(width < 80 ? wide.filter((line) => !table(line)) : wide).toEqual([])
  })

  it('has no length, weight, power or speed in one system of units alone', async () => {
    const { out } = await tinwright([...asked, ...NONE], exampleFiles)
    const said = flat(
      out
        .split('\n')
        // Rows of the damper's table have a column of each.
        .filter((line) => !/ Btu\/h {2}/.test(line))
        .join('\n'),
    )
    const alone = [...said.matchAll(/[\d.]+ (?:mm|g|kg|°C|hPa|kW|m\/s|MJ|L)(?![\w²/])(?! \()/gu)]
      .map((match) => said.slice(Math.max(0, match.index - 30), match.index + match[0].length + 12))
      // Pots are named by their litres; every pot's heading has both.
      .filter((text) => !/1 L (boils|does not)|L left|at most/.test(text))
    expect(alone).toEqual([])
  })
})

it('shows a table of the damper where there is one, and only there', async () => {
  const [with_, without] = await Promise.all(
    ['redshank.stove.json', 'heron.stove.json'].map((file) =>
      tinwright(['burn', file, ...NONE], exampleFiles),
    ),
  )
  expect(with_?.out).toMatch(/Turning down with the damper[\s\S]*front mark at[\s\S]* 0° +100 %/)
  expect(without?.out).not.toContain('Turning down')
})

describe('bands', () => {
  it('count every set once and hold firepower between them at any moment', async () => {
    const { bands } = await answer('redshank.stove.json', ...QUICK)
    expect(bands?.samples).toBe(6)
    const shares = Object.values(bands?.outcomes ?? {})
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9)
    const { low = [], high = [] } = bands?.firepowerOverTime ?? {}
    expect(low.length).toBeGreaterThan(100)
    for (const [i, watts] of low.entries()) expect(watts).toBeLessThanOrEqual(high[i] as number)
    for (const band of Object.values(bands?.figures ?? {}))
      if (band !== null) expect(band.low).toBeLessThanOrEqual(band.high)
  })

  it('are the same on every run, and none with --bands 0', async () => {
    const args = ['burn', 'heron.stove.json', ...QUICK]
    const [one, two] = await Promise.all([tinwright(args, exampleFiles), tinwright(args, exampleFiles)])
    expect(one?.out).toBe(two?.out)
    expect((await answer('heron.stove.json', ...NONE)).bands).toBeNull()
    expect((await tinwright(['burn', 'heron.stove.json', ...NONE], exampleFiles)).out).not.toContain(
      '5 to 95 %',
    )
  })

  it.each(['burn', 'predict'])(
    'of %s tell how far they are, and take it away at the end',
    async (command) => {
      const lines: (string | null)[] = []
      const own = { progress: (line: string | null) => void lines.push(line) }
      await tinwright([command, 'heron.stove.json', '--bands', '3'], exampleFiles, own)
      expect(lines).toEqual([
        'bands: 0 of 3 sets',
        'bands: 1 of 3 sets',
        'bands: 2 of 3 sets',
        'bands: 3 of 3 sets',
        null,
      ])
    },
  )
})

describe('what is asked for', () => {
  const STOVE = 'redshank.stove.json'

  it('turns the damper when told, and firepower falls from then on', async () => {
    const { asked, series, events } = await answer(STOVE, '--damper', '5 min: 10 deg', ...NONE)
    expect(asked.damper).toEqual([{ at: 300, turned: 10 }])
    expect(events).toContainEqual(expect.objectContaining({ kind: 'changed', time: 300 }))
    const before = series.filter(({ time }) => time < 300).at(-1)
    const after = series.find(({ time }) => time >= 300)
    expect(after?.firepower).toBeLessThan(0.95 * (before?.firepower ?? 0))
  })

  it('turns it when one litre boils, at the time a burn without a turn boils it', async () => {
    const narrow = ['--pot', '110 mm', '--skirt', '6 mm x 60 mm']
    const plain = await answer(STOVE, ...narrow, ...NONE)
    const at = plain.boils.find(({ litres }) => litres === 1)?.boilsAt ?? null
    const turned = await answer(STOVE, ...narrow, '--damper', 'boil: 9 deg', ...NONE)
    expect(turned.asked.boilNeverCame).toBe(at === null)
    expect(turned.asked.damper).toEqual(at === null ? [] : [{ at, turned: 9 }])
  })

  it('boils later without a lid and sooner with a skirt', async () => {
    const plain = await answer('greylag.stove.json', ...NONE)
    const open = await answer('greylag.stove.json', '--no-lid', ...NONE)
    const skirted = await answer('greylag.stove.json', '--skirt', '8 mm x 60 mm', ...NONE)
    expect(boil(open, 2)).toBeGreaterThan(boil(plain, 2))
    expect(boil(skirted, 2)).toBeLessThan(boil(plain, 2))
  })

  it('lights a second batch between walls that are still hot', async () => {
    const [cold, hot] = await Promise.all([answer(STOVE, ...NONE), answer(STOVE, '--hot', ...NONE)])
    const first = ({ series }: Answer): number => series[0]?.hottestOuterWall ?? Number.NaN
    expect(first(hot as Answer)).toBeGreaterThan(first(cold as Answer) + 50)
  })

  it('keeps bright tin hotter than burnt-off tin: it radiates less', async () => {
    const old = await answer('greylag.stove.json', ...NONE)
    const bright = await answer('greylag.stove.json', '--new-tin', ...NONE)
    expect(bright.figures.hottestOuterWall).toBeGreaterThan(old.figures.hottestOuterWall as number)
  })

  it('asks twice the fuel for twice the days, and any amount of water', async () => {
    const trip = async (plan: string): Promise<number | null | undefined> =>
      (await answer('greylag.stove.json', '--trip', plan, ...NONE)).trip?.fuel
    const three = await trip('3 days, 2 boils, 1.5 L')
    expect(await trip('6 days, 2 boils a day, 1.5 L')).toBeCloseTo(2 * (three as number), 9)
    expect(await trip('1 day, 1 boil, 40 L')).toBeNull()
  })
})

describe('a stove that does not burn', () => {
  it('says why, and ends with 1', async () => {
    const shut = ['redshank.stove.json', '--damper', '1 min: 15 deg', ...NONE]
    const { code, kind, noBurn } = await answer(...shut)
    expect({ code, kind }).toEqual({ code: 1, kind: 'no burn' })
    expect(noBurn?.sentence).toMatch(/^With the damper turned as asked: /)
    const text = await tinwright(['burn', ...shut], exampleFiles)
    expect(text.code).toBe(1)
    expect(flat(text.out)).toContain(`Redshank does not burn: ${noBurn?.sentence}`)
  })

  it('ends with 1 where it smoulders', async () => {
    const { code, out } = await tinwright(
      ['burn', 'redshank.stove.json', '--fuel', 'pellets-6mm', ...NONE],
      exampleFiles,
    )
    // The examples' README says so of this stove.
    expect(out).toMatch(/smoulders|does not burn/)
    expect(code).toBe(1)
  })
})

describe('files', () => {
  it('are written where asked, and named', async () => {
    const { out, written } = await tinwright(
      ['burn', 'heron.stove.json', '--figure', 'plan/heron.svg', '--series', 'heron.csv', ...QUICK],
      exampleFiles,
    )
    expect([...written.keys()]).toEqual(['plan/heron.svg', './heron.csv'])
    for (const path of written.keys()) expect(out).toContain(path)
    expect(new TextDecoder().decode(written.get('plan/heron.svg'))).toMatch(
      /^<svg [\s\S]*Heron[\s\S]*<\/svg>\n$/,
    )
  })

  it('of the series add up to the fuel that was in the can and end dry of raw fuel', async () => {
    const args = ['heron.stove.json', ...NONE] as const
    const { written } = await tinwright(['burn', ...args, '--series', 'x.csv'], exampleFiles)
    const { fuel } = await answer(...args)
    const [head = '', ...rows] = new TextDecoder().decode(written.get('./x.csv')).trimEnd().split('\r\n')
    const heads = head.split(',')
    const at = (row: string, name: string): string => row.split(',')[heads.indexOf(name)] ?? 'no such column'
    const number = (row: string, name: string): number => Number(at(row, name))
    expect(new Set(rows.map((row) => row.split(',').length))).toEqual(new Set([heads.length]))
    const burnt = rows
      .filter((row) => at(row, 'phase') !== 'char')
      .reduce((sum, row) => sum + (number(row, 'fuel g/min') * number(row, 'lasts s')) / 60, 0)
    // Six figures of some hundred rows.
    expect(burnt).toBeCloseTo(fuel.charge * 1000, 2)
    for (const [i, row] of rows.entries()) {
      const next = rows[i + 1]
      if (next !== undefined)
        expect(number(next, 'time s')).toBeCloseTo(number(row, 'time s') + number(row, 'lasts s'), 1)
      expect(number(row, 'water 1 L °C')).toBeGreaterThanOrEqual(19.99)
    }
    expect(number(rows.at(-1) ?? '', 'raw fuel g')).toBeCloseTo(0, 3)
  })

  it('that cannot be written are a fault of the option', async () => {
    const own = {
      write: () => {
        throw Object.assign(new Error('EACCES'), { code: 'EACCES' })
      },
    }
    const { code, err } = await tinwright(
      ['burn', 'heron.stove.json', '--figure', 'x/y.svg', ...NONE],
      exampleFiles,
      own,
    )
    expect(code).toBe(2)
    expect(flat(err)).toContain('--figure: x will not do')
  })
})
