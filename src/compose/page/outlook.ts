import { formatQuantity } from '#basis/text/format.ts'
import type { Outlook, OutlookFigures } from '#craft/shop/outlook.ts'
import { columns, wrap } from './text.ts'
import { percent, twice } from './units.ts'

type Row = readonly [label: string, text: (figures: OutlookFigures) => string, key: keyof OutlookFigures]

const ROWS: readonly Row[] = [
  ['firepower', ({ firepower }) => twice(firepower, 'firepower', 'Btu/h'), 'firepower'],
  ['burns for', ({ duration }) => formatQuantity(duration, 'burnTime'), 'duration'],
  ['fuel rate', ({ fuelRate }) => twice(fuelRate, 'fuelRate', 'lb/h'), 'fuelRate'],
  ['primary air', ({ primaryAirShare }) => percent(primaryAirShare), 'primaryAirShare'],
  ['secondary air', ({ secondaryAirShare }) => percent(secondaryAirShare), 'secondaryAirShare'],
  ['tertiary air', ({ tertiaryAirShare }) => percent(tertiaryAirShare), 'tertiaryAirShare'],
  [
    'secondary/primary',
    ({ secondaryToPrimary }) => `${secondaryToPrimary.toFixed(2)} : 1`,
    'secondaryToPrimary',
  ],
]

/** `+3 %`, `−12 %`, `same`; of shares, points of a hundred (pts). */
const change = (before: number, after: number, isShare: boolean): string => {
  const by = isShare ? (after - before) * 100 : before === 0 ? 0 : (after / before - 1) * 100
  const size = Math.abs(by) < 9.95 ? Math.abs(by).toFixed(1) : Math.abs(by).toFixed(0)
  if (Number(size) === 0) return 'same'
  return `${by < 0 ? '−' : '+'}${size} ${isShare ? 'pts' : '%'}`
}

/** How one figure moves, for a sentence: `firepower +3.1 %`. */
export const moves = (before: OutlookFigures, after: OutlookFigures): readonly string[] =>
  ROWS.filter(([, , key]) => !key.endsWith('Share') && key !== 'fuelRate').map(
    ([label, , key]) => `${label} ${change(before[key], after[key], false)}`,
  )

const reasonOf = (name: string, { reason }: Outlook): string | null =>
  reason === null ? null : `${name}: ${reason}`

/** Two predictions side by side. */
export const outlookTable = (
  one: readonly [name: string, outlook: Outlook],
  other: readonly [name: string, outlook: Outlook],
  width: number,
): string => {
  const [before, after] = [one[1].figures, other[1].figures]
  const cell = (figures: OutlookFigures | null, text: Row[1]): string =>
    figures === null ? 'none' : text(figures)
  const rows = ROWS.map(([label, text, key]) => [
    label,
    cell(before, text),
    cell(after, text),
    before === null || after === null ? '' : change(before[key], after[key], key.endsWith('Share')),
  ])
  const reasons = [reasonOf(...one), reasonOf(...other)].flatMap((text) =>
    text === null ? [] : [wrap(text, width)],
  )
  return [
    columns(
      [['', one[0], other[0], 'change'], ...rows, ['regime', one[1].course, other[1].course, '']],
      ['left', 'left', 'left', 'right'],
      width,
    ),
    ...reasons,
  ].join('\n')
}
