import { clockText, clockTicks, multiples, roundStep, type Scale, scaleOf } from '#craft/figure/scale.ts'
import { lineWidth } from '#craft/section/sheet.ts'
import { px } from '#craft/svg/element.ts'
import type { PowerBand } from '#science/answers/burn/bands.ts'
import type { LiveBurn, LiveStep } from '#science/answers/live/liveBurn.ts'
import type { Units } from '../settings/settings.ts'

/** The burn over time as a strip [px]. */
export interface Strip {
  readonly width: number
  readonly height: number
  readonly time: Scale
  readonly power: Scale
  readonly water: Scale
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  /** Length of the burn [s]. */
  readonly until: number
}

const LEFT = 40
const RIGHT = 44
const TOP = 34
const FOOT = 22

export const endOfBurn = ({ steps }: Pick<LiveBurn, 'steps'>): number => {
  const last = steps.at(-1)
  return last === undefined ? 60 : last.time + last.duration
}

/** Lays a strip out. `before` and `band` want room too: nothing is cut off at the top or the end. */
export const stripOf = (
  width: number,
  height: number,
  burn: LiveBurn,
  others: { readonly before: LiveBurn | null; readonly band: PowerBand | null },
): Strip => {
  const until = Math.max(endOfBurn(burn), others.before === null ? 0 : endOfBurn(others.before))
  const highest = Math.max(
    500,
    ...burn.steps.map(({ firepower }) => firepower),
    ...(others.before?.steps.map(({ firepower }) => firepower) ?? []),
    ...(others.band?.high ?? []),
  )
  const step = roundStep(highest, 3)
  const top = Math.ceil(highest / step - 1e-9) * step
  const [left, right, bottom] = [LEFT, width - RIGHT, height - FOOT]
  return {
    width,
    height,
    left,
    right,
    top: TOP,
    bottom,
    until,
    time: scaleOf(0, until, left, right),
    power: scaleOf(0, top, bottom, TOP),
    water: scaleOf(273.15, 373.15, bottom, TOP),
  }
}

const stretches = (steps: readonly LiveStep[]): readonly (readonly LiveStep[])[] => {
  const parts: LiveStep[][] = []
  for (const step of steps) {
    const open = parts.at(-1)
    // Lighting grows into wood gas; from wood gas to char is a step.
    if (open === undefined || (open.at(-1)?.phase !== 'char' && step.phase === 'char')) parts.push([step])
    else open.push(step)
  }
  return parts
}

/** Firepower over time: what holds for a step stands in its middle. */
export const powerPath = ({ time, power }: Strip, { steps }: Pick<LiveBurn, 'steps'>): string => {
  const points = stretches(steps).flatMap((stretch) => {
    const [first, last] = [stretch[0] as LiveStep, stretch.at(-1) as LiveStep]
    return [
      [first.time, first.firepower],
      ...stretch.map(({ time: from, duration, firepower }) => [from + duration / 2, firepower]),
      [last.time + last.duration, last.firepower],
    ]
  })
  return `M${points.map(([at = 0, watts = 0]) => `${px(time.at(at))} ${px(power.at(watts))}`).join('L')}`
}

/** The band of firepower as one closed path. */
export const bandPath = ({ time, power }: Strip, { time: at, low, high }: PowerBand): string => {
  const edge = (watts: readonly number[]): readonly string[] =>
    at.map((moment, i) => `${px(time.at(moment))} ${px(power.at(watts[i] ?? 0))}`)
  return `M${edge(high).join('L')}L${edge(low).toReversed().join('L')}Z`
}

/** Water of one litre from when it is put on. */
export const waterPath = ({ time, water }: Strip, { steps, boil }: LiveBurn): string => {
  const points = [
    [boil.putOnAt, boil.waterStart] as const,
    ...steps
      .filter(({ time: from, duration }) => from + duration > boil.putOnAt)
      .map((step) => [step.time + step.duration, step.water] as const),
  ]
  return `M${points.map(([at, kelvin]) => `${px(time.at(at))} ${px(water.at(kelvin))}`).join('L')}`
}

/** A figure beside the field [px]. */
export interface StripTick {
  readonly y: number
  readonly text: string
}

/** International table Btu per hour in a watt, 3600/1055.06. */
const BTU_PER_HOUR = 3.412142
const THOUSAND = 1000

/** Of the unit in which firepower is drawn, how much a watt is: a watt, or a Btu an hour [1]. */
export const powerPer = (units: Units): number => (units === 'in' ? BTU_PER_HOUR : 1)

/** Firepower on the left, in kilowatts or in thousands of Btu an hour; its unit is said once, over it. */
export const powerTicks = ({ power }: Strip, units: Units): readonly StripTick[] => {
  const per = powerPer(units)
  const most = power.to * per
  return multiples(roundStep(most, 3), 0, most).map((value) => ({
    y: power.at(value / per),
    text: String(Number((value / THOUSAND).toPrecision(3))),
  }))
}

export const powerUnit = (units: Units): string => (units === 'in' ? 'kBtu/h' : 'kW')

/** Temperature of the water on the right. */
export const waterTicks = ({ water }: Strip, units: Units): readonly StripTick[] => {
  const fahrenheit = units === 'in'
  return (fahrenheit ? [70, 140, 212] : [20, 60, 100]).map((value, i) => ({
    y: water.at(fahrenheit ? (value - 32) / 1.8 + 273.15 : value + 273.15),
    text: i === 2 ? `${value} ${fahrenheit ? '°F' : '°C'}` : String(value),
  }))
}

export const timeTicks = ({ time }: Strip): readonly { readonly x: number; readonly text: string }[] =>
  clockTicks(time, 70).map((at) => ({ x: time.at(at), text: clockText(at) }))

const WORDS: Readonly<Record<string, string>> = {
  'whole bed alight': 'top alight, pot on',
  boil: '1 L boils',
  'front at the floor': 'front at the floor',
  'front out': 'front out',
  'flame out': 'flame out',
  'char out': 'char cold',
}

export interface StripMark {
  readonly x: number
  readonly time: number
  readonly text: string
  /** 0 is the upper line of words. */
  readonly line: 0 | 1
  readonly anchor: 'start' | 'end'
}

const LETTERS = 13

/** What happens, as marks over the strip: words in two lines, and those for which neither has room are left out. */
export const stripMarks = (strip: Strip, { events }: Pick<LiveBurn, 'events'>): readonly StripMark[] => {
  const ends: [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  return events.flatMap(({ kind, time }) => {
    const text = WORDS[kind]
    if (text === undefined) return []
    const x = strip.time.at(time)
    const width = lineWidth(text, LETTERS)
    const anchor = x + width + 6 > strip.width ? ('end' as const) : ('start' as const)
    const from = anchor === 'start' ? x : x - width - 6
    const line = ([0, 1] as const).find((row) => from > ends[row] + 8)
    if (line === undefined) return []
    ends[line] = from + width + 6
    return [{ x, time, text, line, anchor }]
  })
}

/** The time of a place of the strip [s]. */
export const timeAt = ({ left, right, until }: Strip, x: number): number =>
  Math.min(until, Math.max(0, ((x - left) / (right - left)) * until))
