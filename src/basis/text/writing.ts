import { type QuantityKey, quantity } from '../quantities.ts'
import { fromInches, type Metres } from '../units.ts'
import { fromSi } from '../unitTable.ts'
import { halvesAgree } from './dual.ts'
import { inchFraction } from './inchFraction.ts'
import { readSingle, type Written } from './single.ts'
import { plainlyWritten } from './written.ts'

/** The hand a length was written in: whoever changes the length goes on writing in it. */
export interface Writing {
  /** What the text says [m]. */
  readonly value: Metres
  /** A length as the maker would write it next to the old one: same unit, same form, both halves, same tolerance. */
  readonly write: (value: Metres) => string
  /** The nearest length that is written without rounding: whole millimetres, sixty-fourths of an inch [m]. */
  readonly snap: (value: Metres) => Metres
  /** A small step and a large one, about 1 and 5 mm [m]. */
  readonly step: Metres
  readonly stride: Metres
}

const BRACKETED = /^([^(=]+)\(([^()=]+)\)$/
const EQUATED = /^([^(=]+)=([^()=]+)$/

/** Drill sets run in sixty-fourths; a hand that moves something by eye wants coarser steps. */
const SIXTY_FOURTH = fromInches(1 / 64)

interface Hand {
  readonly grain: Metres
  readonly step: Metres
  readonly stride: Metres
  /** A length on the grain, or as near as the form comes. */
  readonly text: (value: Metres) => string
}

const decimalHand = (symbol: string, grain: number, step: number, stride: number, over: number): Hand => ({
  grain: grain as Metres,
  step: step as Metres,
  stride: stride as Metres,
  // A bit of 6.5 mm is no whole millimetre and yet is written so.
  text: (value) => `${Number((value / over).toFixed(over === 1 ? 5 : 3))} ${symbol}`,
})

const handOf = ({ unit, number }: Written): Hand => {
  switch (unit.symbol) {
    case 'in':
      if (number.form === 'decimal') return decimalHand('in', 0.000254, 0.00127, 0.00508, 0.0254)
      return {
        grain: SIXTY_FOURTH,
        step: fromInches(1 / 32),
        stride: fromInches(3 / 16),
        text: (value) => inchFraction(value, 64).text,
      }
    case 'cm':
      return decimalHand('cm', 0.001, 0.001, 0.005, 0.01)
    case 'm':
      return decimalHand('m', 0.001, 0.001, 0.005, 1)
    case 'ft':
      return decimalHand('ft', 0.001524, 0.001524, 0.006096, 0.3048)
    default:
      return decimalHand('mm', 0.001, 0.001, 0.005, 0.001)
  }
}

/** The other half, as coarse as it may be and still name the same length. */
const secondText = (first: string, second: Written, key: QuantityKey): string | null => {
  const row = quantity(key)
  const read = readSingle(first, row)
  if (!read.ok) return null
  const { value } = read.value
  const { symbol } = second.unit
  const texts =
    symbol === 'in' && second.number.form !== 'decimal'
      ? ([16, 32, 64] as const).map((denominator) => inchFraction(value as Metres, denominator).text)
      : [0, 1, 2, 3].map((decimals) => `${fromSi(value, second.unit).toFixed(decimals)} ${symbol}`)
  return (
    texts.find((text) => {
      const half = readSingle(text, row)
      return half.ok && halvesAgree(read.value, half.value)
    }) ?? null
  )
}

/**
 * The hand in which a length of a file is written; one in millimetres where there is no text, or none that reads. A text
 * with a tolerance keeps it.
 */
export const writingOf = (text: string | undefined, key: QuantityKey): Writing => {
  const [main = '', tolerance] = plainlyWritten(text ?? '')
    .split('±')
    .map((half) => half.trim())
  const halves = BRACKETED.exec(main) ?? EQUATED.exec(main)
  const row = quantity(key)
  const first = readSingle((halves?.[1] ?? main).trim(), row)
  const written: Written = first.ok
    ? first.value
    : {
        value: 0,
        digits: '0',
        number: { value: 0, form: 'whole', decimals: 0, denominator: 1 } as Written['number'],
        unit: { symbol: 'mm', spellings: [], times: 1, over: 1000, shift: 0 },
      }
  const second = halves === null ? null : readSingle((halves[2] as string).trim(), row)
  const hand = handOf(written)
  return {
    value: written.value as Metres,
    step: hand.step,
    stride: hand.stride,
    snap: (value) => (Math.round(value / hand.grain) * hand.grain) as Metres,
    write: (value) => {
      const one = hand.text(value)
      const other = second?.ok === true ? secondText(one, second.value, key) : null
      const both = other === null ? one : `${one} (${other})`
      return tolerance === undefined ? both : `${both} ± ${tolerance}`
    },
  }
}

/** The next length on the grain of steps in a direction, strictly beyond where it is [m]. */
export const nextStep = (writing: Writing, from: Metres, by: 1 | -1, large = false): Metres => {
  const step = large ? writing.stride : writing.step
  const grid = Math.round(from / writing.step)
  // Off the marks, the first step goes to the next mark.
  if (!large && Math.abs(from - grid * writing.step) > 1e-7)
    return writing.snap((Math.floor(from / writing.step + (by > 0 ? 1 : 0)) * writing.step) as Metres)
  return writing.snap((from + by * step) as Metres)
}
