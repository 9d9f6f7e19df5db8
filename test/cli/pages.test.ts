import { describe, expect, it } from 'vitest'
import { changed, type Ended, exampleFiles, exampleStoves, flat, isTableRow, tinwright } from './memory.ts'

const onStove = (file: string): readonly (readonly string[])[] => [
  ['check', file, '--shelf', 'shelf.json'],
  ['check', file],
  ['predict', file],
  [
    'predict',
    file,
    '--wind',
    '2 m/s',
    '--wind-from',
    '90 deg',
    '--altitude',
    '3000 ft',
    '--bands',
    '0',
    '--temperature',
    '40 °F',
  ],
  ['templates', file],
  ['solids', file, '--arrangement', 'exploded'],
  ['guides', file],
  ['fit', file],
  ['shop', file, '--shelf', 'shelf.json'],
  ['steps', file],
  ['sheets', file],
  ['cards', file, '--bands', '0', '--as', 'svg'],
]
const commands: readonly (readonly string[])[] = [
  ...exampleStoves.flatMap(onStove),
  ['fit', '--shelf', 'shelf.json'],
  ['built', 'redshank.stove.json', 'redshank.built.json'],
  ['built', 'heron.stove.json', '--blank', '--out', 'out/heron.built.json'],
  ['fit', '307x409', '404x700'],
  ['cans'],
  ['cans', '404x700', 'No. 10'],
]
const rows = commands.map((args) => [args.join(' '), args] as const)

const kept = new Map<string, Promise<Ended>>()

/** One command, run once for all that is asked of its page. */
const once = (args: readonly string[], width = 80): Promise<Ended> => {
  const key = JSON.stringify([args, width])
  const ended = kept.get(key) ?? tinwright(args, exampleFiles, { width })
  kept.set(key, ended)
  return ended
}

it('there are examples to try', () => {
  expect(exampleStoves.length).toBeGreaterThanOrEqual(3)
})

describe.each(rows)('%s', (_, args) => {
  it('answers in text, and ends with 0 or, where it has found something, with 1', async () => {
    const { code, out, err } = await once(args)
    expect(err).toBe('')
    expect(out).not.toMatch(/undefined|NaN|Infinity|\[object|-0(?:\.0+)?[ )]/)
    expect(out).toMatch(/\S\n$/)
    // A wind or thin air may spoil a good stove; on a mild day the examples are good ones.
    expect(args.includes('--wind') ? [0, 1] : [0]).toContain(code)
  })

  it('answers in JSON with --json, the same on every run', async () => {
    const { code, out, err } = await once([...args, '--json'])
    const again = await tinwright([...args, '--json'], exampleFiles)
    expect(err).toBe('')
    expect(JSON.parse(out)).toBeTypeOf('object')
    expect({ code: again.code, out: again.out }).toEqual({ code, out })
  })

  it.each([50, 80, 100])('keeps its text within %i columns', async (width) => {
    const { out } = await once(args, width)
    const wide = out
      .split('\n')
      .filter((line) => line.length > width && !isTableRow(line))
      // A single word, such as a path, is never broken.
      .filter((line) => line.trim().includes(' '))
    expect(wide).toEqual([])
  })

  it('keeps even its tables within the 80 columns of a plain terminal', async () => {
    const { out } = await once(args)
    expect(out.split('\n').filter((line) => line.length > 80)).toEqual([])
  })

  // Sizes of cards stand on the cards.
  if (args[0] !== 'cards')
    it('speaks both in millimetres and in inches', async () => {
      const { out } = await once(args)
      expect(out).toMatch(/\d mm\b|Ø mm/)
      expect(out).toMatch(/\d in\b|Ø in/)
    })
})

describe.each(exampleStoves)('both systems of units in the pages of %s', (file) => {
  it.each([['check', file] as const, ['predict', file] as const])(
    '%s: no length, area or weight in one alone',
    async (...args) => {
      const { out } = await once(args)
      const [title = '', ...lines] = out.split('\n')
      const said = flat(lines.filter((line) => !isTableRow(line)).join('\n'))
      expect(title).not.toBe('')
      const alone = [...said.matchAll(/[\d.]+ (?:mm²?|g|°C|hPa|kW|m\/s|g\/s|g\/min)(?![\w²/])(?! \()/gu)]
        .map((match) => said.slice(Math.max(0, match.index - 30), match.index + match[0].length + 12))
        // The names of spaces are the maker's parts and how high in them; ranges name the other unit with their mean.
        .filter((text) => !/ mm up|from [\d.]+ kW to|to [\d.]+ kW as/.test(text))
      expect(alone).toEqual([])
    },
  )

  it('predict: a table shows both', async () => {
    const { out } = await once(['predict', file])
    for (const unit of ['kW', 'Btu/h', 'g/min', 'lb/h', 'oz']) expect(out).toContain(` ${unit}`)
    expect(out).toMatch(/ mm² +in² /)
    expect(out).toMatch(/ °C +°F\n/)
  })
})

describe('what a prediction holds', () => {
  it.each(exampleStoves)('%s: every row, the air split, the balances, in text and JSON', async (file) => {
    const text = await once(['predict', file])
    const json = await once(['predict', file, '--json'])
    const { prediction } = JSON.parse(json.out) as {
      prediction: {
        woodGas: { duration: number; firepower: number }
        halfway: {
          regime: string
          air: { primary: number; secondary: number; tertiary: number }
          passages: { name: string; kind: string; massFlow: number; velocity: number }[]
          spaces: { name: string; pressure: number }[]
          balance: { mass: number; energy: number }
        }
      }
    }
    const { halfway, woodGas } = prediction
    expect(text.out).toContain(halfway.regime.toUpperCase())
    for (const { name, kind } of halfway.passages)
      if (kind === 'opening') expect(text.out).toContain(`  ${name} `)
    for (const { name } of halfway.spaces) expect(text.out).toContain(`  ${name} `)
    // The bars of docs/decisions/0008-steady-state.md, 5.
    expect(halfway.balance.mass).toBeLessThanOrEqual(1e-9)
    expect(Math.abs(halfway.balance.energy)).toBeLessThanOrEqual(1e-6)
    expect(woodGas.duration).toBeGreaterThan(0)
    expect(woodGas.firepower).toBeGreaterThan(0)
    const { primary, secondary, tertiary } = halfway.air
    const share = (flow: number): string =>
      `${Math.round((100 * flow) / (primary + secondary + tertiary))} % of all air`
    expect(flat(text.out)).toContain(share(primary))
    expect(flat(text.out)).toContain(share(secondary))
  })

  it('takes another fuel, its moisture and the weather, and says so', async () => {
    const { out } = await tinwright(
      [
        'predict',
        'redshank.stove.json',
        '--fuel',
        'twigs',
        '--moisture',
        '20 %',
        '--wind',
        '2 m/s',
        '--temperature',
        '5 °C',
      ],
      exampleFiles,
    )
    expect(out).toContain('Redshank: twigs')
    expect(out).toContain('at 20 % moisture')
    expect(flat(out)).toContain('5 °C (41 °F), 1013 hPa (29.9 inHg), wind 2 m/s (4.47 mph) from 0°')
  })

  it('puts another fuel in the place of the maker’s own, nothing of which is left', async () => {
    const own = changed('redshank.stove.json', (stove) => {
      Object.assign(stove, {
        fuel: {
          own: { name: 'hedge clippings', like: 'twigs', filling: { weight: '60 g' } },
          level: '82 mm',
          fines: '15 %',
        },
      })
    })
    const files = { ...exampleFiles, 'own.json': own }
    const mine = await tinwright(['predict', 'own.json', '--bands', '0', '--json'], files)
    const pellets = ['--fuel', 'pellets-8mm', '--bands', '0', '--json']
    const instead = await tinwright(['predict', 'own.json', ...pellets], files)
    const plain = await tinwright(['predict', 'redshank.stove.json', ...pellets], files)
    expect(mine.out).toContain('hedge clippings')
    expect(JSON.parse(instead.out)).toEqual(JSON.parse(plain.out))
  })

  it('feels the height above the sea', async () => {
    const at = async (height: string): Promise<number> => {
      const { out } = await tinwright(
        ['predict', 'greylag.stove.json', '--altitude', height, '--bands', '0', '--json'],
        exampleFiles,
      )
      return (JSON.parse(out) as { prediction: { site: { pressure: number } } }).prediction.site.pressure
    }
    const heights = await Promise.all(['0 m', '1000 m', '3000 m'].map(at))
    expect(heights).toEqual([...heights].sort((one, other) => other - one))
    expect(new Set(heights).size).toBe(3)
    expect(await at('3280.84 ft')).toBeCloseTo(heights[1] as number, 0)
  })
})

describe('cans', () => {
  it('shows a can by its code or by its name, with or without capitals', async () => {
    const [byCode, byName] = await Promise.all([
      tinwright(['cans', '603x700', '--json'], {}),
      tinwright(['cans', 'no. 10', '--json'], {}),
    ])
    const canIn = ({ out }: { out: string }): unknown =>
      (JSON.parse(out) as { cans: { can: unknown }[] }).cans[0]?.can
    expect(canIn(byCode)).toEqual(canIn(byName))
  })

  it('names the source of every row', async () => {
    const { out } = await tinwright(['cans'], {})
    const table = out.split('\n').filter((line) => /\d{3}x\d{3}/.test(line) && isTableRow(line))
    expect(table.length).toBeGreaterThan(20)
    for (const line of table) {
      const [, number] = /\[(\d+)\]$/.exec(line) ?? []
      expect(out).toMatch(new RegExp(`^  \\[${number}\\] \\S`, 'm'))
    }
  })
})
