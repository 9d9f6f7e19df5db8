import { formatLength, formatQuantity } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import type { Block } from '../page/block.ts'
import type { DrillJob } from '../shop/drilling.ts'
import type { BitToFind, ShopList, SwapOutlook } from '../shop/list.ts'
import { bitText, toolText } from '../shop/making.ts'
import { figureText, figureTwice } from '../told/band.ts'

const both = (length: number): string => formatLength(length as Metres, { units: 'both' })

const percentMore = (share: number): string =>
  Math.abs(share) < 0.005
    ? 'the same area'
    : `${Math.abs(Math.round(100 * share))} % ${share > 0 ? 'more' : 'less'} area`

const holes = (count: number): string => `${count} ${count === 1 ? 'hole' : 'holes'}`

const swapText = ({ swap, outlook }: SwapOutlook): string => {
  const rows = swap.rows
    .map(
      ({ part, opening, from, to }) =>
        `${opening} in ${part}: ${to === from ? `${holes(to)} as planned` : `${holes(to)} in place of ${from}`}`,
    )
    .join('; ')
  const { figures, course } = outlook
  const then =
    figures === null
      ? `then it ${course}`
      : `then ${course}, ${figureTwice(figures.firepower, 'firepower', 'Btu/h')} for ${figureText(figures.duration, 'burnTime')}`
  return `${bitText(swap.instead)}: ${rows}; ${percentMore(swap.areaChange)}; ${then}.${swap.troubles.length === 0 ? '' : ` But: ${swap.troubles.join(' ')}`}`
}

const missingBlocks = (missing: readonly BitToFind[]): readonly Block[] =>
  missing.length === 0
    ? [{ kind: 'text', text: 'Every bit is on the shelf that was given.' }]
    : [
        { kind: 'subheading', text: 'Bits that are not on the shelf' },
        ...missing.flatMap(({ name, diameter, instead }): readonly Block[] => [
          {
            kind: 'text',
            text: `${name}, ${both(diameter)}. ${instead.length === 0 ? 'No owned bit comes near: buy or borrow it.' : 'Buy or borrow it, or take:'}`,
          },
          ...(instead.length === 0 ? [] : [{ kind: 'list' as const, items: instead.map(swapText) }]),
        ]),
      ]

const minutes = (seconds: number): string => formatQuantity(Math.round(seconds / 300) * 300, 'burnTime')

/** What to find: cans, tin, screws, tools, bits. */
export const findBlocks = (shop: ShopList): readonly Block[] => [
  {
    kind: 'table',
    head: ['can', 'look for', 'so measured', 'its ends'],
    widths: [2, 4, 6, 6],
    rows: shop.cans.map(({ part, code, seamDiameter, bodyDiameter, boughtHeight, measure, ends }) => [
      part,
      `${code === null ? '' : `${code}: `}body ${both(bodyDiameter)}, over the seam ${both(seamDiameter)}, ${both(boughtHeight)} high or more`,
      measure.join(' '),
      ends.join(' '),
    ]),
  },
  ...(shop.tin.length === 0
    ? []
    : [
        { kind: 'subheading' as const, text: 'Flat tin' },
        {
          kind: 'table' as const,
          head: ['for', 'at least', 'from'],
          widths: [2, 5, 6],
          rows: shop.tin.map(({ part, size, source }) => [part, size, source]),
        },
      ]),
  ...(shop.fasteners.length === 0
    ? []
    : [
        { kind: 'subheading' as const, text: 'Screws and wire' },
        {
          kind: 'list' as const,
          items: shop.fasteners.map(({ count, what, where }) => `${count} × ${what}: ${where}`),
        },
      ]),
  { kind: 'subheading', text: 'Tools' },
  { kind: 'text', text: `${shop.tools.join(', ')}.` },
  ...(shop.missing === null ? [] : missingBlocks(shop.missing)),
]

/** Which holes, and how the tin is held; a pilot is held as its hole is, further down. */
const whereText = (holes: DrillJob['holes'], isPilot: boolean): string => {
  const places = holes.map(
    ({ count, part, opening, from }) => `${count} in ${part}, ${opening}, from the ${from}`,
  )
  const held = isPilot ? ['Held as for the bit that follows.'] : [...new Set(holes.map((one) => one.held))]
  return `${places.join('; ')}. ${held.join(' ')}`
}

/** What is cut and drilled, and in which order. */
export const scheduleBlocks = (shop: ShopList): readonly Block[] => [
  { kind: 'heading', text: 'Cutting and drilling' },
  {
    kind: 'text',
    text: `A practised hand takes about ${minutes(shop.time.least)}, a first stove about ${minutes(shop.time.most)}. ${shop.time.basis}`,
  },
  { kind: 'subheading', text: 'Burn off first' },
  { kind: 'list', items: shop.burnOff },
  { kind: 'subheading', text: 'Drilling, bit by bit' },
  {
    kind: 'table',
    head: ['bit', 'holes', 'where', 'manner'],
    widths: [3, 1.2, 7, 6],
    align: ['left', 'right', 'left', 'left'],
    rows: shop.drilling.map(({ bit, diameter, purpose, tool, count, holes, manner }) => [
      `${toolText({ name: bit, diameter }, tool)}${purpose === 'pilot' ? ', pilot' : ''}`,
      String(count),
      whereText(holes, purpose === 'pilot'),
      manner,
    ]),
  },
  { kind: 'subheading', text: 'Cuts, in this order' },
  {
    kind: 'table',
    head: ['', 'part', 'cut', 'why here'],
    widths: [0.7, 2.2, 6.5, 6],
    rows: shop.cuts.map(({ part, what, why }, i) => [String(i + 1), part, what, why]),
  },
  { kind: 'subheading', text: 'Deburr' },
  { kind: 'list', items: shop.deburr },
]
