import { coefficientTable } from '#science/coefficients.ts'
import { flameCoefficients } from '#science/flame/coefficients.ts'
import { potCoefficients } from '#science/pot/coefficients.ts'
import { windCoefficients } from '#science/weather/coefficients.ts'
import { shown } from './row.ts'
import { citedSources } from './sources.ts'

type Key = keyof typeof coefficientTable
const keysOf = (rows: object): readonly Key[] => Object.keys(rows) as Key[]

const flame = keysOf(flameCoefficients)
const pot = keysOf(potCoefficients)
const wind = keysOf(windCoefficients)
const elsewhere = new Set([...flame, ...pot, ...wind])

const rooms: readonly (readonly [name: string, keys: readonly Key[]])[] = [
  ['Front, char, bed and holes', keysOf(coefficientTable).filter((key) => !elsewhere.has(key))],
  ['Flame and jets', flame],
  ['Wind', wind],
  ['Pot', pot],
]

const cell = (text: string): string => text.replaceAll('|', '\\|')

const rowOf = (key: Key): string => {
  const { median, low, high, unit, meaning, source } = coefficientTable[key]
  const withUnit = (value: number): string => `${shown(value)}${unit === '1' ? '' : ` ${unit}`}`
  return `| \`${key}\` | ${cell(meaning)} | ${withUnit(median)} | ${shown(low)} to ${shown(high)} | ${cell(citedSources(source))} |`
}

const fromMemory = (): number =>
  Object.values(coefficientTable).filter(({ source }) => /^from memory/.test(source)).length

/** `docs/coefficients.md`: every uncertain number of the model, from the table that the code itself reads. */
export const coefficientsPage = (): string =>
  `${[
    '<!-- Made by scripts/validation.ts: do not edit. -->',
    '# Coefficients',
    `Every number of the model that is neither a law of nature nor a measured property of a part: ${Object.keys(coefficientTable).length} of them, ${fromMemory()} from memory alone. A prediction runs with the medians; its 5–95 % band comes from running it many times with values drawn from the ranges here, each on its own, lognormal where a coefficient cannot be below zero. Real burns narrow them. [How a stove works](physics.md) says where each one acts, [validation](validation.md) what comes of them.`,
    ...rooms.map(([name, keys]) =>
      [
        `## ${name}`,
        '',
        '| key | meaning | median | 5 to 95 % | source |',
        '| --- | --- | --- | --- | --- |',
        ...keys.map(rowOf),
      ].join('\n'),
    ),
  ].join('\n\n')}\n`
