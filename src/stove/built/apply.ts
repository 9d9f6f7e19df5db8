import { formatQuantity } from '#basis/text/format.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { MeasureKind } from './measure.ts'
import type { BuiltValue } from './values.ts'

/** A document that is being changed: what the maker wrote, by its keys. */
type Group = Record<string, unknown>

const group = (holder: Group, key: string): Group => {
  const found = holder[key]
  if (typeof found === 'object' && found !== null) return found as Group
  const made: Group = {}
  holder[key] = made
  return made
}

const trimmed = (millimetres: number): string => `${Number(millimetres.toFixed(2))} mm`

/** A length as it goes into the stove file: the maker's own words where it is one reading. */
const lengthText = ({ written, value }: BuiltValue): string => written ?? trimmed(value * 1000)

/** A measured length, with the tolerance its readings ask for where that is more than a rule's 0.5 mm. */
const measuredText = (value: BuiltValue): string =>
  value.spread > 0.0005
    ? `${trimmed(value.value * 1000)} ± ${trimmed(value.spread * 1000)}`
    : lengthText(value)

const degreesText = ({ written, value }: BuiltValue): string => written ?? `${Number(value.toFixed(2))} deg`

/** Places of a floor pattern with another number of holes: the air sees the area, not the places. */
const countPattern = (opening: Group, built: number, planned: number): void => {
  const layout = group(opening, 'layout')
  if ('rings' in layout) {
    const rings = (layout.rings as Group[]).map((ring) => ({ ...ring }))
    let off = built - planned
    while (off !== 0) {
      const last = rings.at(-1)
      if (last === undefined) break
      const count = Number(last.count)
      const left = Math.max(0, count + off)
      off -= left - count
      if (left === 0) rings.pop()
      else last.count = left
    }
    layout.rings = rings
    return
  }
  // A honeycomb takes only counts that fill whole rings.
  const filling = (layout.hexagonal ?? layout.sunflower) as Group
  opening.layout = { sunflower: { count: built, margin: filling.margin } }
}

const applyToOpening = (opening: Group, value: BuiltValue): void => {
  const { measure } = value
  switch (measure.kind) {
    case 'row count':
      if (value.leftOut === null) return
      opening.count = value.value + value.leftOut.length
      if (value.leftOut.length > 0) opening.leftOut = [...value.leftOut]
      else delete opening.leftOut
      return
    case 'pattern count':
      if (value.value !== measure.planned) countPattern(opening, value.value, measure.planned ?? value.value)
      return
    case 'vane count':
      opening.count = value.value
      return
    case 'hole diameter':
      opening.hole = { diameter: lengthText(value) }
      return
    case 'bore diameter':
      opening.diameter = lengthText(value)
      return
    case 'window width': {
      const window = group(group(opening, 'hole'), 'window')
      window.width = lengthText(value)
      // The bit made what was measured.
      delete window.bit
      return
    }
    case 'window height':
      group(group(opening, 'hole'), 'window').height = lengthText(value)
      return
    case 'slit length':
      group(group(opening, 'hole'), 'slit').length = lengthText(value)
      return
    case 'slit width':
      group(group(opening, 'hole'), 'slit').width = lengthText(value)
      return
    case 'opening height':
      opening.height = lengthText(value)
      if (value.from === 'top') opening.from = 'top'
      else delete opening.from
      return
    case 'first bearing':
      opening.bearing = degreesText(value)
      // What was measured has the half pitch in it.
      delete opening.stagger
      return
    case 'vane angle':
      opening.angle = degreesText(value)
      return
    default:
      throw new Error(`${measure.kind} is no measure of an opening`)
  }
}

const applyToPart = (part: Group, value: BuiltValue): void => {
  switch (value.measure.kind) {
    case 'seam diameter':
      group(part, 'can').seamDiameter = measuredText(value)
      return
    case 'body diameter':
      group(part, 'can').bodyDiameter = measuredText(value)
      return
    case 'top body diameter':
      group(part, 'can').topBodyDiameter = measuredText(value)
      return
    case 'can height': {
      const holder = 'trim' in part ? group(part, 'trim') : group(part, 'can')
      holder.height = measuredText(value)
      return
    }
    case 'disc diameter':
      part.diameter = measuredText(value)
      return
    case 'band height':
      part.height = lengthText(value)
      return
    case 'wall gap':
    case 'part weight':
      // Told beside the plan; the stove file has no place for them.
      return
    default:
      throw new Error(`${value.measure.kind} is no measure of a part`)
  }
}

const applyToFuel = (fuel: Group, value: BuiltValue): void => {
  switch (value.measure.kind) {
    case 'fuel level':
      fuel.level = lengthText(value)
      return
    case 'fuel moisture':
      fuel.moisture = value.written ?? formatQuantity(value.value, 'fuelMoisture')
      return
    case 'fuel weight': {
      const weight = value.written ?? formatQuantity(value.value, 'fuelWeight')
      if (typeof fuel.own === 'object') group(fuel, 'own').filling = { weight }
      else fuel.own = { name: `${fuel.kind}, as weighed`, like: fuel.kind, filling: { weight } }
      delete fuel.kind
      return
    }
    default:
      throw new Error(`${value.measure.kind} is no measure of fuel`)
  }
}

/** What the maker wrote of these says more than the measure: which bit, which layout. */
const SAID_BETTER: ReadonlySet<MeasureKind> = new Set([
  'row count',
  'pattern count',
  'hole diameter',
  'window width',
])

/** Whether the file says it already. A height or a width may hang on another that was measured: it is written down. */
const isSaid = ({ measure, value, leftOut }: BuiltValue): boolean =>
  SAID_BETTER.has(measure.kind) &&
  leftOut === null &&
  measure.planned !== null &&
  Math.abs(value - measure.planned) < 1e-9

/** The stove file with what was measured in the place of what was planned. */
export const withMeasures = (plan: StoveFile, values: readonly BuiltValue[]): StoveFile => {
  const file = JSON.parse(JSON.stringify(plan)) as Group
  for (const value of values) {
    const { part, opening, kind } = value.measure
    if (kind === 'stove weight' || isSaid(value)) continue
    if (part === null) applyToFuel(group(file, 'fuel'), value)
    else if (kind === 'raised') {
      const placement = (file.assembly as Group[]).find((one) => one.part === part)
      if (placement !== undefined) placement.raised = lengthText(value)
    } else if (opening === null) applyToPart(group(group(file, 'parts'), part), value)
    else applyToOpening(group(group(group(group(file, 'parts'), part), 'openings'), opening), value)
  }
  return file as StoveFile
}
