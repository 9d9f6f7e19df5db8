import { BadInput } from '#basis/problem.ts'
import { formatLength, formatQuantity } from '#basis/text/format.ts'
import { canCapacity } from '#stove/can/capacity.ts'
import { findFoodCan, NAMED_CANS, type NamedCan } from '#stove/can/foodCans.ts'
import { canFromCode } from '#stove/can/fromCode.ts'
import { canMass } from '#stove/can/mass.ts'
import { readSizeCode } from '#stove/can/sizeCode.ts'
import type { Can } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf } from '../input.ts'
import { columns, page, wrap } from '../page/text.ts'

const both = (value: Parameters<typeof formatLength>[0]): string => formatLength(value, { units: 'both' })

/** A can by size code or by the name the trade gives it. */
export const canNamed = (text: string): { readonly can: Can; readonly named: NamedCan | null } => {
  const named = findFoodCan(text)
  if (named !== null) return { can: canFromCode(named.code), named }
  const code = readSizeCode(text, 'can')
  if (code.ok) return { can: canFromCode(code.value.code), named: null }
  const looksLikeCode = /\d\s*[x×]\s*\d/i.test(text)
  throw new BadInput(
    looksLikeCode
      ? code.problems
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

const tableRow = ({ name, code, capacity, source, fromMemory }: NamedCan): readonly string[] => {
  const can = canFromCode(code)
  return [
    name,
    code,
    both(can.seamDiameter.value),
    both(can.height.value),
    capacity === null ? '' : formatQuantity(capacity, 'capacity'),
    fromMemory ? 'from memory' : source,
  ]
}

const detail = (can: Can, named: NamedCan | null): readonly (readonly string[])[] => [
  [
    'over the seam',
    both(can.seamDiameter.value),
    `± ${formatLength(can.seamDiameter.tolerance, { units: 'mm' })}`,
  ],
  ['body', both(can.bodyDiameter.value), `± ${formatLength(can.bodyDiameter.tolerance, { units: 'mm' })}`],
  ['height', both(can.height.value), `± ${formatLength(can.height.tolerance, { units: 'mm' })}`],
  ['body sheet', formatLength(can.bodyWall, { units: 'mm', digits: 2 }), ''],
  ['end sheet', formatLength(can.endWall, { units: 'mm', digits: 2 }), ''],
  ['weight, both ends on', formatQuantity(canMass(can), 'mass'), formatQuantity(canMass(can), 'mass', 'oz')],
  ['holds, worked out', formatQuantity(canCapacity(can), 'capacity'), ''],
  [
    'holds, published',
    named?.capacity == null ? 'not known' : formatQuantity(named.capacity, 'capacity'),
    named?.capacity == null ? '' : named.source,
  ],
]

export const cans = (
  env: Environment,
  names: readonly string[],
  options: { readonly json?: boolean },
): ExitCode => {
  if (names.length === 0) {
    if (options.json) env.out(`${JSON.stringify({ cans: NAMED_CANS }, null, 2)}\n`)
    else
      env.out(
        page(
          wrap(
            'A size code is the diameter over the seam by the height, each in inches and sixteenths: 404x700 is 4 4/16 in by 7 in.',
            env.width,
          ),
          columns(
            [['name', 'code', 'over the seam', 'height', 'holds', 'source'], ...NAMED_CANS.map(tableRow)],
            ['left', 'left', 'left', 'left', 'right', 'left'],
          ),
          wrap(
            '`tinwright cans CODE` shows one of them with what to expect of its body, sheet and weight.',
            env.width,
          ),
        ),
      )
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
          columns(detail(can, named), ['left', 'right', 'left']),
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
