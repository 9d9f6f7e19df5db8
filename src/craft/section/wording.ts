import { long } from '#basis/text/bothUnits.ts'
import type { Opening, Part, WallHole } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'
import type { AirPassage } from './airState.ts'

/** A space at which no line is broken: a figure and its unit stay together. */
const NB = '\u00a0'

const mmText = (length: number): string => String(Number((length * 1000).toFixed(1)))
const inches = (length: number): string => long(length).replace(/^.*\((.*)\)$/, '$1')
const inText = (length: number): string => inches(length).replace(/ in$/, '')

/** Two figures are as many as a median deserves. */
export const figure = (value: number): string => {
  const size = Math.abs(value)
  const digits = size >= 100 ? 0 : Math.max(0, 1 - Math.floor(Math.log10(size === 0 ? 1 : size)))
  return value.toFixed(Math.min(digits, 4))
}

/** Avoirdupois pounds an hour in a gram a second, 3600 / 453.59237. */
const POUNDS_PER_HOUR = 3600 / 453.59237
const METRES_PER_FOOT = 0.3048

/** A figure in both systems, the second of what the first shows. */
const twice = (value: number, unit: string, times: number, other: string): string => {
  const shown = figure(value)
  return `${shown}${NB}${unit}${NB}(${figure(Number(shown) * times)}${NB}${other})`
}

/** A flow whichever way it goes [from kg/s]: `0.26 g/s (2.1 lb/h)`. */
export const flowText = (massFlow: number): string =>
  twice(Math.abs(massFlow) * 1000, 'g/s', POUNDS_PER_HOUR, 'lb/h')
const speedText = (velocity: number): string => twice(Math.abs(velocity), 'm/s', 1 / METRES_PER_FOOT, 'ft/s')
export const celsius = (kelvin: number): string => `${Math.round(kelvin - 273.15)}${NB}°C`
export const fahrenheit = (kelvin: number): string => `${Math.round((kelvin - 273.15) * 1.8 + 32)}${NB}°F`
/** `862 °C (1584 °F)` */
export const temperatureText = (kelvin: number): string => `${celsius(kelvin)}${NB}(${fahrenheit(kelvin)})`

interface SizeWords {
  readonly metric: string
  readonly inch: string
}

const pair = (a: number, b: number): SizeWords => ({
  metric: `${mmText(a)} × ${mmText(b)} mm`,
  inch: `${inText(a)} × ${inText(b)} in`,
})
const single = (length: number): SizeWords => ({
  metric: `${mmText(length)}${NB}mm`,
  inch: inches(length).replaceAll(' ', NB),
})

const holeSize = (hole: WallHole): SizeWords => {
  switch (hole.shape) {
    case 'round':
      return single(hole.diameter)
    case 'window':
      return pair(hole.width, hole.height)
    case 'slit':
      return pair(hole.length, hole.width)
  }
}

const sizeOf = (opening: Opening): SizeWords => {
  switch (opening.kind) {
    case 'row':
      return holeSize(opening.hole)
    case 'pattern':
    case 'bore':
      return single(opening.diameter)
    case 'vanes':
      return pair(opening.outerRadius - opening.innerRadius, opening.width)
  }
}

const extra = (opening: Opening): string => {
  if (opening.kind === 'vanes') return `bent ${Math.round(opening.angle)}° ${opening.bend}`
  if (opening.kind === 'row' && opening.leftOut.length > 0)
    return opening.leftOut.length === 1 ? 'one place left out' : `${opening.leftOut.length} places left out`
  return ''
}

export interface OpeningWords extends SizeWords {
  /** `11 × ` or `6 of `; nothing for what there is one of. */
  readonly count: string
  /** What else there is to say, or nothing. */
  readonly more: string
}

/** How many and how large: `11 × 12 mm`, `6 of 18 × 22 mm`, and the size in inches. */
export const openingWords = (opening: Opening): OpeningWords => {
  const { metric, inch } = sizeOf(opening)
  const times = metric.includes('×') ? ' of ' : ' × '
  const count = opening.kind === 'bore' ? '' : `${holeCount(opening)}${times}`
  return { metric: `${count}${metric}`, inch, count, more: extra(opening) }
}

/** What a passage carries: `0.26 g/s (2.1 lb/h) in · 0.17 m/s (0.56 ft/s) · 20 °C (68 °F)`; a line may end at a dot. */
export const passageWords = ({ massFlow, velocity, temperature, from, to }: AirPassage): string => {
  const inwards = (from === null) === massFlow > 0
  const way = from !== null && to !== null ? '' : `${NB}${inwards ? 'in' : 'out'}`
  return [`${flowText(massFlow)}${way}`, speedText(velocity), temperatureText(temperature)].join(`${NB}· `)
}

export interface PartWords {
  readonly code: string
  readonly size: readonly [metric: string, inch: string]
}

/** Outside measures of a part in both units, and the size code of a can. */
export const partWords = (part: Part): PartWords => {
  switch (part.form) {
    case 'can': {
      const { bodyDiameter, height, code } = part.can
      const [wide, high] = [bodyDiameter.value, height.value]
      return {
        code: code ?? '',
        size: [
          `Ø${NB}${mmText(wide)}${NB}× ${mmText(high)}${NB}mm`,
          `${inText(wide)}${NB}× ${inText(high)}${NB}in`,
        ],
      }
    }
    case 'disc': {
      const { metric, inch } = single(part.diameter.value)
      return { code: '', size: [`Ø${NB}${metric}`, inch] }
    }
    case 'band': {
      const { metric, inch } = single(part.height)
      return { code: '', size: [`${metric} high`, inch] }
    }
  }
}

/** Depth of the fuel as filled, in both units [from mm]. */
export const depthWords = (depth: number): readonly [metric: string, inch: string] => {
  const { metric, inch } = single(depth / 1000)
  return [`filled ${metric}`, inch]
}
