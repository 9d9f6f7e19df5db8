import { BadInput } from '#basis/problem.ts'
import { long, slack } from '#basis/text/bothUnits.ts'
import { formatLength, formatQuantity } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import { columns, labelled, page, wrap } from '#compose/page/text.ts'
import { twice } from '#compose/page/units.ts'
import { canCapacity } from '#stove/can/capacity.ts'
import { findFoodCan, NAMED_CANS, type NamedCan } from '#stove/can/foodCans.ts'
import { canFromCode } from '#stove/can/fromCode.ts'
import { canMass } from '#stove/can/mass.ts'
import { readSizeCode } from '#stove/can/sizeCode.ts'
import type { Can, Measured } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf } from '../input.ts'

/** A can by size code or by the name the trade gives it. */
export const canNamed = (text: string): { readonly can: Can; readonly named: NamedCan | null } => {
  const named = findFoodCan(text)
  if (named !== null) return { can: canFromCode(named.code), named }
  const code = readSizeCode(text, 'can')
  if (code.ok) return { can: canFromCode(code.value.code), named: null }
  const looksLikeCode = /\d\s*[x×]\s*\d/i.test(text)
  throw new BadInput(
    looksLikeCode
      ? code.problems.map((problem) => ({ ...problem, value: text }))
      : [
          problemOf(
            'can.unknown',
            'can',
            text,
            'a size code such as 404x700, or a trade name such as "No. 10"',
            'Run `tinwright cans` to see the names, or measure the can over the seam.',
          ),
        ],
  )
}

const holds = (capacity: number): string => twice(capacity, 'capacity', 'US fl oz')

/** Each source once, numbered as the table names them. */
const SOURCES = [...new Set(NAMED_CANS.map(({ source }) => source))]

const millimetres = (value: Metres): string => formatLength(value, { units: 'mm' }).replace(' mm', '')
const inches = (value: Metres): string =>
  formatLength(value, { units: 'in', denominator: 16 }).replace(' in', '')
const capacityIn = (capacity: number | null, unit: 'mL' | 'US fl oz'): string =>
  capacity === null ? '' : formatQuantity(capacity, 'capacity', unit).replace(` ${unit}`, '')

const HEAD = ['name', 'code', 'Ø mm', 'Ø in', 'high mm', 'in', 'mL', 'US fl oz', 'from'] as const
const ALIGN = ['left', 'left', 'right', 'right', 'right', 'right', 'right', 'right', 'left'] as const

const tableRow = ({ name, code, capacity, source }: NamedCan): readonly string[] => {
  const { seamDiameter, height } = canFromCode(code)
  return [
    name,
    code,
    millimetres(seamDiameter.value),
    inches(seamDiameter.value),
    millimetres(height.value),
    inches(height.value),
    capacityIn(capacity, 'mL'),
    capacityIn(capacity, 'US fl oz'),
    `[${SOURCES.indexOf(source) + 1}]`,
  ]
}

const tablePage = (width: number): string =>
  page(
    wrap(
      'A size code is the diameter over the seam by the height, each in inches and sixteenths: 404x700 is 4 4/16 in by 7 in. Below, the diameter (Ø) over the seam, the height, and what it holds.',
      width,
    ),
    columns([HEAD, ...NAMED_CANS.map(tableRow)], ALIGN, width),
    SOURCES.map((source, i) => wrap(`[${i + 1}] ${source}`, width, '  ', '      ')).join('\n'),
    wrap('`tinwright cans CODE` shows one of them with what to expect of its body, sheet and weight.', width),
  )

const measuredText = ({ value, tolerance }: Measured): string => `${long(value)} ± ${slack(tolerance)}`

const sheet = (thickness: Metres): string => formatLength(thickness, { units: 'both', digits: 2 })

const detail = (can: Can, named: NamedCan | null): readonly (readonly [string, string])[] => [
  ['over the seam', measuredText(can.seamDiameter)],
  ['body', measuredText(can.bodyDiameter)],
  ['height', measuredText(can.height)],
  ['body sheet', sheet(can.bodyWall)],
  ['end sheet', sheet(can.endWall)],
  ['weight', `${twice(canMass(can), 'mass', 'oz')} with both ends on`],
  ['holds', `${holds(canCapacity(can))}, worked out`],
  ...(named?.capacity == null ? [] : [['published', `${holds(named.capacity)}: ${named.source}`] as const]),
]

export const cans = (
  env: Environment,
  names: readonly string[],
  options: { readonly json?: boolean },
): ExitCode => {
  if (names.length === 0) {
    if (options.json) env.out(`${JSON.stringify({ cans: NAMED_CANS }, null, 2)}\n`)
    else env.out(tablePage(env.width))
    return EXIT.fine
  }
  const found = names.map((name) => ({ name, ...canNamed(name) }))
  if (options.json) {
    env.out(`${JSON.stringify({ cans: found }, null, 2)}\n`)
    return EXIT.fine
  }
  env.out(
    page(
      ...found.map(({ can, named }) =>
        [
          `${can.code}${named === null ? '' : `, ${named.name}`}`,
          labelled(detail(can, named), env.width),
        ].join('\n'),
      ),
      wrap(
        'Only the code’s two figures are standard, and makers differ: the rest is what such cans usually measure (from memory). Measure yours before you cut.',
        env.width,
      ),
    ),
  )
  return EXIT.fine
}
