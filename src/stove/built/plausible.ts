import { quantity } from '#basis/quantities.ts'
import { formatLength, formatQuantity } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import type { Measure, MeasureKind } from './measure.ts'

/**
 * How far off the plan a measure may be before it is asked about: the wider of a length (or angle) and a share of
 * what was planned. Workshop judgement, no source: twice what a careful hand with drill and snips is off.
 */
interface Limit {
  /** [SI unit of the quantity; degrees] */
  readonly by: number
  /** [1] */
  readonly share: number
}

const limit = (by: number, share: number): Limit => ({ by, share })

const LIMITS: Readonly<Record<MeasureKind, Limit | null>> = {
  'seam diameter': limit(0.0015, 0.02),
  'body diameter': limit(0.0015, 0.02),
  'top body diameter': limit(0.0015, 0.02),
  'can height': limit(0.003, 0.03),
  'disc diameter': limit(0.002, 0.03),
  'band height': limit(0.002, 0.1),
  raised: limit(0.003, 0.2),
  'wall gap': limit(0.003, 0.5),
  'part weight': limit(0.01, 0.5),
  'row count': limit(2, 0.2),
  'pattern count': limit(2, 0.15),
  'vane count': limit(1, 0.15),
  'hole diameter': limit(0.0008, 0.15),
  'bore diameter': limit(0.0015, 0.08),
  'window width': limit(0.002, 0.15),
  'window height': limit(0.002, 0.15),
  'slit length': limit(0.002, 0.15),
  'slit width': limit(0.0008, 0.4),
  'opening height': limit(0.003, 0.03),
  'first bearing': limit(12, 0),
  'vane angle': limit(12, 0),
  'fuel level': limit(0.012, 0.25),
  'fuel weight': null,
  'fuel moisture': limit(0.08, 1),
  'stove weight': limit(0.02, 0.5),
}

/** Off the plan, the short way round for a bearing [SI unit of the quantity; degrees]. */
export const offPlan = ({ kind, planned }: Measure, built: number): number => {
  const off = built - (planned ?? built)
  return kind === 'first bearing' ? ((((off + 180) % 360) + 360) % 360) - 180 : off
}

/** How far this measure may lie off the plan unasked; null where the plan does not say. */
export const plausibleOff = (measure: Measure): number | null => {
  const allowed = LIMITS[measure.kind]
  if (allowed === null || measure.planned === null) return null
  return Math.max(allowed.by, allowed.share * Math.abs(measure.planned))
}

/**
 * A measure as text: lengths and weights in both systems; `fine` for what was worked out of readings and may lie
 * between the tenths that a rule shows.
 */
export const measureText = (
  { quantity: key }: Pick<Measure, 'quantity'>,
  value: number,
  fine = false,
): string => {
  const { kind, displayUnits } = quantity(key)
  if (kind === 'length') {
    const tenths = value * 1e4
    const between = fine && Math.abs(value) >= 0.001 && Math.abs(tenths - Math.round(tenths)) > 0.01
    return formatLength(value as Metres, { units: 'both', ...(between ? { digits: 2 } : {}) })
  }
  const [, second] = displayUnits
  return kind === 'mass' && second !== undefined
    ? `${formatQuantity(value, key)} (${formatQuantity(value, key, second)})`
    : formatQuantity(value, key)
}

const SLIPS: readonly (readonly [times: number, question: string])[] = [
  [10, 'did a decimal point slip? Did you mean'],
  [0.1, 'did a decimal point slip? Did you mean'],
  [25.4, 'were inches written as millimetres? Did you mean'],
  [1 / 25.4, 'were millimetres written as inches? Did you mean'],
  [2, 'is that the half of it? Did you mean'],
  [0.5, 'is that twice it? Did you mean'],
]

/**
 * What a measure that is far off was perhaps meant to be, as a question; null where no usual slip explains it.
 * `whole` is the height of the part, for a height that was taken from the other edge.
 */
export const likelySlip = (measure: Measure, built: number, whole: number | null): string | null => {
  const allowed = plausibleOff(measure)
  if (allowed === null) return null
  const near = (value: number): boolean => Math.abs(offPlan(measure, value)) <= allowed
  if (measure.kind === 'opening height' && whole !== null && near(whole - built))
    return 'Was it measured from the other edge? Say which with "from": "top" or "bottom".'
  if (quantity(measure.quantity).kind === 'count' || quantity(measure.quantity).kind === 'angle') return null
  const slip = SLIPS.find(([times]) => near(built * times))
  if (slip === undefined) return null
  const [times, question] = slip
  const asked = question.charAt(0).toUpperCase() + question.slice(1)
  return `${asked} ${measureText(measure, built * times)}?`
}
