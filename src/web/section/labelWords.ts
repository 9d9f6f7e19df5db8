import type { AirPassage } from '#craft/section/airState.ts'
import type { SectionLabel } from '#craft/section/labels.ts'
import { figure, openingWords, partWords } from '#craft/section/wording.ts'
import type { Stove } from '#stove/model.ts'
import { figureIn } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'

/** One line of a label on the stage. */
export interface LabelLine {
  readonly text: string
  readonly weight: 'name' | 'plain' | 'small'
}

const NB = '\u00a0'

/** A size with how many there are of it, in the units that were chosen. */
const sized = (metric: string, inch: string, count: string, units: Units): string => {
  if (units === 'mm') return metric
  if (units === 'in') return `${count}${inch}`
  return `${metric} (${inch})`
}

const METRES_PER_FOOT = 0.3048

const speedIn = (velocity: number, units: Units): string =>
  units === 'in'
    ? `${figure(Math.abs(velocity) / METRES_PER_FOOT)}${NB}ft/s`
    : `${figure(Math.abs(velocity))}${NB}m/s`

/** What goes through an opening, short: both systems beside each other would hide the picture. */
const flowLines = (passages: readonly AirPassage[], units: Units): readonly string[] => {
  const flow = passages.reduce((sum, { massFlow }) => sum + massFlow, 0)
  const [main] = [...passages].sort((a, b) => Math.abs(b.massFlow) - Math.abs(a.massFlow))
  if (main === undefined) return []
  const inwards = (main.from === null) === flow > 0
  const way = main.from !== null && main.to !== null ? '' : inwards ? `${NB}in` : `${NB}out`
  const one = units === 'both' ? 'mm' : units
  return [
    `${figureIn(Math.abs(flow), 'massFlow', one).replace(' ', NB)}${way} · ${speedIn(main.velocity, one)} · ${figureIn(main.temperature, 'gasTemperature', one).replace(' ', NB)}`,
  ]
}

/** What a label of the section says on the stage. */
export const labelLinesFor = (
  label: SectionLabel,
  stove: Stove,
  passages: readonly AirPassage[],
  units: Units,
): readonly LabelLine[] => {
  const name: LabelLine = { text: label.name, weight: 'name' }
  if (label.of === 'part') {
    const part = stove.parts.get(label.name)
    if (part === undefined) return [name]
    const { size, code } = partWords(part)
    const sizes = units === 'mm' ? [size[0]] : units === 'in' ? [size[1]] : size
    return [
      name,
      ...[...sizes, ...(code === '' ? [] : [code])].map((text) => ({ text, weight: 'small' as const })),
    ]
  }
  if (label.of === 'fuel') {
    const [metric, inch] = label.size ?? ['', '']
    const texts =
      label.size === null
        ? []
        : units === 'mm'
          ? [metric]
          : units === 'in'
            ? [`filled ${inch}`]
            : [metric, inch]
    return [name, ...texts.map((text) => ({ text, weight: 'small' as const }))]
  }
  const opening = stove.parts.get(label.part ?? '')?.openings.get(label.name)
  if (opening === undefined) return [name]
  const { metric, inch, count, more } = openingWords(opening)
  const through = passages.filter((one) => one.part === label.part && one.opening === label.name)
  return [
    name,
    { text: sized(metric, inch, count, units), weight: 'plain' },
    ...[...(more === '' ? [] : [more]), ...flowLines(through, units)].map((text) => ({
      text,
      weight: 'small' as const,
    })),
  ]
}
