import { quantity } from '#basis/quantities.ts'
import { formatQuantity, inchFraction } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import type { Measure } from './measure.ts'
import { measureText, offPlan } from './plausible.ts'

/** Plan, built and how far apart, as they stand beside each other: the third is the difference of the first two as written. */
export interface DifferenceText {
  readonly planned: string
  readonly built: string
  /** Without a sign: `1 mm (3/64 in)`. */
  readonly off: string
}

const INCH = 0.0254
/** Marks of the finest inch rule in an inch. */
const MARKS = 64

type Written = Readonly<Record<keyof DifferenceText, string>>

/** Both with as many digits as the finer has, and their difference in them. */
const apart = (planned: string, built: string, unit: string): Written => {
  const decimals = (text: string): number => text.split('.')[1]?.length ?? 0
  const most = Math.max(decimals(planned), decimals(built))
  const off = Math.abs(Number(built) - Number(planned)).toFixed(most)
  return { planned: `${planned} ${unit}`, built: `${built} ${unit}`, off: `${String(Number(off))} ${unit}` }
}

/** To a tenth, or to a hundredth where readings have a mean between tenths. */
const millimetres = (length: number): string => {
  const fine = Math.abs(length * 1e4 - Math.round(length * 1e4)) > 0.01
  return String(Number((length * 1000).toFixed(fine ? 2 : 1)))
}

const thousandths = (length: number): string => (length / INCH).toFixed(3)

const marks = (length: number): number => Math.round((length / INCH) * MARKS)
const fraction = (count: number): string => inchFraction(((count / MARKS) * INCH) as Metres, MARKS).text

/** In marks of a rule where their difference is the true one to half a mark; in thousandths of an inch where it is finer. */
const inches = (planned: number, built: number): Written => {
  const [from, to] = [marks(planned), marks(built)]
  const off = Math.abs(to - from)
  const error = (off / MARKS) * INCH - Math.abs(built - planned)
  return off > 1 && Math.abs(error) <= INCH / MARKS / 2 + 1e-9
    ? { planned: fraction(from), built: fraction(to), off: fraction(off) }
    : apart(thousandths(planned), thousandths(built), 'in')
}

const together = (one: Written, other: Written): DifferenceText => ({
  planned: `${one.planned} (${other.planned})`,
  built: `${one.built} (${other.built})`,
  off: `${one.off} (${other.off})`,
})

/** How a measure came out beside its plan, finely enough for the difference to be seen in both systems of units. */
export const differenceText = (measure: Measure, planned: number, built: number): DifferenceText => {
  const { quantity: key } = measure
  const { kind, displayUnits } = quantity(key)
  if (kind === 'length')
    return together(apart(millimetres(planned), millimetres(built), 'mm'), inches(planned, built))
  const [first, second] = displayUnits
  if (kind === 'mass' && first !== undefined && second !== undefined) {
    const inUnit = (unit: string): Written => {
      const [one, other] = [planned, built].map((value) => formatQuantity(value, key, unit).split(' ')[0])
      return apart(one as string, other as string, unit)
    }
    return together(inUnit(first), inUnit(second))
  }
  return {
    planned: measureText(measure, planned),
    built: measureText(measure, built, true),
    off: measureText(measure, Math.abs(offPlan(measure, built)), true),
  }
}
