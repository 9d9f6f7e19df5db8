import { formatQuantity } from '#basis/text/format.ts'
import type { CanToFind } from '#craft/shop/cans.ts'
import type { Cut } from '#craft/shop/cuts.ts'
import type { DrillHoles, DrillJob } from '#craft/shop/drilling.ts'
import type { BitToFind, ShopList, SwapOutlook } from '#craft/shop/list.ts'
import { bitText, toolText } from '#craft/shop/making.ts'
import type { Outlook } from '#craft/shop/outlook.ts'
import type { TimeEstimate } from '#craft/shop/time.ts'
import { called, list, plural } from '#stove/check/phrase.ts'
import { moves } from './outlook.ts'
import { labelled, wrap } from './text.ts'

const canBlock = (can: CanToFind, shelved: boolean, width: number): string => {
  const none = shelved ? '; none on your shelf is this can' : ''
  const found = can.fromShelf === null ? none : `; on your shelf: ${called(can.fromShelf)}`
  return [
    wrap(`${can.part} (${can.role})${can.code === null ? '' : `, ${can.code}`}${found}`, width, '  ', '    '),
    ...[...can.measure, ...can.ends].map((line) => wrap(line, width, '    ', '      ')),
  ].join('\n')
}

const cansBlock = ({ cans, sizes, missing }: ShopList, width: number): string =>
  [
    'Cans to find',
    ...sizes.map(({ count, size }) => wrap(`${count} × ${size}`, width, '  ', '      ')),
    '',
    ...cans.map((can) => canBlock(can, missing !== null, width)),
  ].join('\n')

/** Holes drilled alike, told once: by what holds the tin up. */
const byHold = (holes: readonly DrillHoles[]): readonly (readonly [rows: string, held: string])[] => {
  const groups = new Map<string, string[]>()
  for (const { part, opening, count, from, held } of holes) {
    const row = `${plural(count, 'hole')} of ${called(opening)} on ${called(part)}, from ${from}`
    groups.set(held, [...(groups.get(held) ?? []), row])
  }
  return [...groups].map(([held, rows]) => [list(rows), held])
}

const ownedText = ({ owned }: DrillJob): string => (owned === false ? ', NOT ON YOUR SHELF' : '')

const jobBlock = (job: DrillJob, number: number, width: number): string =>
  [
    wrap(
      `${number}. ${toolText({ name: job.bit, diameter: job.diameter }, job.tool)}${ownedText(job)}: ${plural(job.count, job.purpose === 'pilot' ? 'pilot hole' : 'hole')}`,
      width,
      '  ',
      '     ',
    ),
    wrap(job.manner, width, '     '),
    ...byHold(job.holes).flatMap(([rows, held]) => [
      wrap(`${rows}.`, width, '     - ', '       '),
      wrap(held, width, '       '),
    ]),
  ].join('\n')

const drillBlock = ({ drilling }: ShopList, width: number): string | null =>
  drilling.length === 0
    ? null
    : [
        'Drill schedule: each bit goes in once, the smallest first; mark out and punch everything before',
        ...drilling.map((job, index) => jobBlock(job, index + 1, width)),
      ]
        .map((block, index) => (index === 0 ? wrap(block, width) : block))
        .join('\n')

const percent = (share: number): string => {
  const size = Math.abs(share * 100)
  const text = size < 9.95 ? size.toFixed(1) : size.toFixed(0)
  return Number(text) === 0 ? 'the same area' : `${text} % ${share < 0 ? 'less' : 'more'} area`
}

const effectText = (planned: Outlook | null, { outlook }: SwapOutlook): string => {
  const [before, after] = [planned?.figures ?? null, outlook.figures]
  const regime =
    planned !== null && planned.course === outlook.course
      ? `it stays ${outlook.course}`
      : `regime ${planned?.course ?? 'unknown'} becomes ${outlook.course}`
  const reason = outlook.reason === null ? '' : ` ${outlook.reason}`
  return before === null || after === null
    ? `${regime}.${reason}`
    : `${moves(before, after).join(', ')}; ${regime}.${reason}`
}

const swapText = (planned: Outlook | null, one: SwapOutlook): string => {
  const { instead, manner, rows, areaChange, troubles } = one.swap
  const counts = rows.map(({ part, opening, from, to }) =>
    manner === 'same count' || from === to
      ? `${called(opening)} on ${called(part)}`
      : `${to} instead of ${from} in ${called(opening)} on ${called(part)}`,
  )
  const what = manner === 'same count' ? `as many holes in ${list(counts)}` : list(counts)
  const more = troubles.length === 0 ? '' : ` The checks then say: ${troubles.join(' ')}`
  return `${bitText(instead)}, ${what}: ${percent(areaChange)}; ${effectText(planned, one)}${more}`
}

const missingOne = (
  { name, diameter, uses, instead }: BitToFind,
  planned: Outlook | null,
  width: number,
): string =>
  [
    wrap(
      `${bitText({ name, diameter })}, for ${list(uses.map(({ part, opening, count }) => `${plural(count, 'hole')} of ${called(opening)} on ${called(part)}`))}`,
      width,
      '  ',
      '    ',
    ),
    ...(instead.length === 0
      ? [wrap('No owned bit comes near: buy or borrow this one.', width, '    ')]
      : instead.map((one) => wrap(`or ${swapText(planned, one)}`, width, '    ', '      '))),
  ].join('\n')

const missingBlock = ({ missing, outlook }: ShopList, width: number): string => {
  if (missing === null)
    return wrap('No shelf was given (--shelf FILE), so nobody looked which bits and cans you own.', width)
  if (missing.length === 0) return wrap('Every bit is on your shelf.', width)
  const counted = missing.some(({ instead }) => instead.some(({ swap }) => swap.manner === 'same area'))
  return [
    wrap('Bits to buy or borrow, and what the nearest owned one does instead, solved anew', width),
    ...missing.map((one) => missingOne(one, outlook, width)),
    ...(counted
      ? [
          wrap(
            'Another number of holes wants another template: change the count in the stove file (a floor pattern becomes a sunflower) and print anew.',
            width,
            '  ',
          ),
        ]
      : []),
  ].join('\n')
}

const cutsBlock = ({ cuts }: ShopList, width: number): string => {
  const parts = new Map<string, Cut[]>()
  for (const cut of cuts) parts.set(cut.part, [...(parts.get(cut.part) ?? []), cut])
  const line = ({ opening, what }: Cut): string => (opening === null ? what : `${what} (${opening})`)
  const reason = (why: string, before: string | undefined): string => (why === before ? '' : ` ${why}`)
  return [
    wrap('Cuts in their order (common practice, no source)', width),
    ...[...parts].map(([part, some]) =>
      [
        wrap(part, width, '  '),
        ...some.map((cut, index) =>
          wrap(
            `${index + 1}. ${line(cut)}.${reason(cut.why, some[index - 1]?.why)}`,
            width,
            '    ',
            '       ',
          ),
        ),
      ].join('\n'),
    ),
  ].join('\n')
}

const timeBlock = ({ lines, least, most, basis }: TimeEstimate, width: number): string => {
  const spoken = (seconds: number): string => formatQuantity(seconds, 'burnTime')
  return [
    wrap(`Time: ${spoken(least)} to ${spoken(most)}`, width),
    labelled(
      lines.map((line) => [line.what, `${line.count}, ${spoken(line.least)} to ${spoken(line.most)}`]),
      width,
    ),
    wrap(basis, width, '  '),
  ].join('\n')
}

const bullets = (title: string, lines: readonly string[], width: number): string =>
  [wrap(title, width), ...lines.map((line) => wrap(line, width, '  - ', '    '))].join('\n')

/** The page of a shop list, block by block. */
export const shopBlocks = (shop: ShopList, width: number): readonly (string | null)[] => [
  cansBlock(shop, width),
  shop.tin.length === 0
    ? null
    : [
        'Flat tin',
        labelled(
          shop.tin.map(({ part, size }) => [part, size]),
          width,
        ),
        ...[...new Set(shop.tin.map(({ source }) => source.replace(/^For [^:]*: /, '')))].map((text) =>
          wrap(`From ${text}`, width, '  '),
        ),
      ].join('\n'),
  shop.fasteners.length === 0
    ? null
    : bullets(
        'Fasteners',
        shop.fasteners.map(({ count, what, where }) => `${count} × ${what}: ${where}`),
        width,
      ),
  bullets('Tools', shop.tools, width),
  missingBlock(shop, width),
  bullets('Burn off, before anything else', shop.burnOff, width),
  cutsBlock(shop, width),
  drillBlock(shop, width),
  bullets('Deburr, after every cut', shop.deburr, width),
  timeBlock(shop.time, width),
]
