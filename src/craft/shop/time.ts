import type { Stove } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'
import { bitFor, makingOf, openingsIn } from './making.ts'

/** Minutes of one kind of work. */
export interface TimeLine {
  readonly what: string
  readonly count: number
  /** [s] */
  readonly least: number
  readonly most: number
}

export interface TimeEstimate {
  readonly lines: readonly TimeLine[]
  readonly least: number
  readonly most: number
  readonly basis: string
}

type Rate = readonly [what: string, least: number, most: number]

/** Minutes for one, a practised hand and a first stove. Common practice, no source. */
const RATES = {
  can: ['cans emptied, washed, measured', 4, 10],
  burnOff: ['firing to burn the coatings off', 20, 40],
  template: ['templates cut, taped on, checked', 4, 10],
  punch: ['marks punched', 0.1, 0.3],
  pilot: ['pilot holes', 0.2, 0.5],
  drill: ['holes drilled', 0.3, 0.8],
  step: ['holes by step drill', 0.7, 2],
  bitChange: ['bits put in', 0.5, 1.5],
  window: ['windows and slits cut', 2, 6],
  bore: ['bores cut', 6, 15],
  vane: ['vanes cut and bent', 1.5, 4],
  outline: ['discs and bands cut out', 5, 15],
  band: ['bands bent and closed', 5, 15],
  end: ['ends cut out', 2, 5],
  trim: ['cans cut down', 6, 15],
  deburr: ['edges deburred', 0.15, 0.4],
  screw: ['screws and feet', 2, 5],
  join: ['parts fitted to each other', 2, 6],
  sheet: ['as-built sheet filled in', 15, 30],
} as const satisfies Record<string, Rate>

type Work = keyof typeof RATES

const MINUTE = 60

/** How often each kind of work is done. */
const countsOf = (
  stove: Stove,
  bits: number,
  piloted: number,
  screws: number,
): Readonly<Record<Work, number>> => {
  const counts = Object.fromEntries(Object.keys(RATES).map((work) => [work, 0])) as Record<Work, number>
  for (const part of stove.parts.values()) {
    if (part.form === 'can') {
      counts.can += 1
      for (const { kind } of [part.can.bottom, part.can.top]) {
        if (kind === 'open') counts.end += 1
        if (kind === 'cut') counts.trim += 1
      }
    } else counts.outline += 1
    if (part.form === 'band') counts.band += 1
    if (part.openings.size > 0) counts.template += 1
    counts.deburr += part.form === 'can' ? 2 : 1
  }
  for (const { what } of openingsIn(stove)) {
    const count = holeCount(what)
    const bit = bitFor(what)
    counts.deburr += count
    counts.punch += bit === null ? 0 : count
    if (bit !== null) counts[bit.diameter > 0.013 ? 'step' : 'drill'] += count
    const making = makingOf(what)
    if (making === 'snips' || making === 'foot and snips') counts.window += count
    if (making === 'bore') counts.bore += 1
    if (making === 'vanes') counts.vane += count
  }
  counts.burnOff = 1
  counts.pilot = piloted
  counts.bitChange = bits
  counts.screw = screws
  counts.join = stove.assembly.length
  counts.sheet = 1
  return counts
}

/** How long the work takes, from how often each thing is done. */
export const timeEstimate = (
  stove: Stove,
  { bits, piloted, screws }: { readonly bits: number; readonly piloted: number; readonly screws: number },
): TimeEstimate => {
  const counts = countsOf(stove, bits, piloted, screws)
  const lines = (Object.keys(RATES) as Work[])
    .filter((work) => counts[work] > 0)
    .map((work): TimeLine => {
      const [what, least, most] = RATES[work]
      return {
        what,
        count: counts[work],
        least: counts[work] * least * MINUTE,
        most: counts[work] * most * MINUTE,
      }
    })
  const sum = (of: 'least' | 'most'): number => lines.reduce((total, line) => total + line[of], 0)
  return {
    lines,
    least: sum('least'),
    most: sum('most'),
    basis:
      'Counts times what one takes, from a practised hand to a first stove: common practice, no source. The stove cooling after a burn is not counted.',
  }
}
