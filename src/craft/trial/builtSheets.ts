import { quantity } from '#basis/quantities.ts'
import type { Measure } from '#stove/built/measure.ts'
import { measureText } from '#stove/built/plausible.ts'
import { builtSheet } from '#stove/built/sheet.ts'
import type { Stove } from '#stove/model.ts'
import { MAKING_CAUTIONS } from '../caution.ts'
import type { TrialField, TrialGroup, TrialSheet } from './sheet.ts'

/** Rows that go on one page of Letter beside their headings and notes. */
const ROWS_ON_A_PAGE = 28
/** Of a heading, in rows. */
const HEADING = 1.6

const UNITS: Readonly<Record<string, string>> = {
  length: 'mm or in',
  mass: 'g or oz',
  angle: '°',
  share: '%',
  count: '',
}

const fieldOf = (measure: Measure): TrialField => {
  const { path, label, readings, planned, quantity: key } = measure
  const unit = UNITS[quantity(key).kind] ?? ''
  return {
    key: path.join('.'),
    label,
    unit: readings === null ? unit : `${unit}, ${readings} readings`,
    how: null,
    predicted: planned === null ? null : measureText(measure, planned),
    room: readings === null ? 26 : readings > 2 ? 56 : 40,
  }
}

const groupsOf = (measures: readonly Measure[]): readonly TrialGroup[] => {
  const groups = new Map<string, TrialField[]>()
  for (const measure of measures) {
    const { part, opening } = measure
    const title = part === null ? 'Fuel and whole stove' : opening === null ? part : `${part}, ${opening}`
    groups.set(title, [...(groups.get(title) ?? []), fieldOf(measure)])
  }
  return [...groups].map(([title, fields]) => ({ title, fields }))
}

/** Groups page by page; one that is longer than a page goes on with its name. */
const paged = (groups: readonly TrialGroup[]): readonly (readonly TrialGroup[])[] => {
  const pages: TrialGroup[][] = [[]]
  let used = 0
  for (const { title, fields } of groups) {
    let rest = fields
    while (rest.length > 0) {
      const free = Math.floor(ROWS_ON_A_PAGE - used - HEADING)
      // A heading with a row or two under it belongs on the next page.
      const fits = free >= rest.length || (used === 0 && free > 0) || free >= 8
      if (!fits) {
        pages.push([])
        used = 0
        continue
      }
      const here = rest.slice(0, free)
      pages.at(-1)?.push({ title: rest === fields ? title : `${title}, went on`, fields: here })
      used += here.length + HEADING
      rest = rest.slice(here.length)
    }
  }
  return pages
}

/** How each kind of measure is taken, once: of parts, of openings, of fuel and stove, a paragraph each. */
const howTo = (measures: readonly Measure[]): readonly string[] =>
  [
    measures.filter(({ part, opening }) => part !== null && opening === null),
    measures.filter(({ opening }) => opening !== null),
    measures.filter(({ part }) => part === null),
  ]
    .filter((some) => some.length > 0)
    .map((some) => [...new Set(some.map(({ label, how }) => `“${label}”: ${how}`))].join(' '))

/**
 * The as-built sheet to fill in by hand, as many pages as it takes: every line of `builtSheet` with what was planned
 * beside it. What is written there goes into the as-built file. Throws `BadInput` as `builtSheet` does.
 */
export const builtSheets = (stove: Stove): readonly TrialSheet[] => {
  const measures = builtSheet(stove)
  const pages = paged(groupsOf(measures))
  return pages.map((groups, index): TrialSheet => {
    const here = new Set(groups.flatMap(({ fields }) => fields.map(({ key }) => key)))
    const shown = measures.filter(({ path }) => here.has(path.join('.')))
    return {
      stove: stove.name,
      title: `As-built sheet of ${stove.name}${pages.length > 1 ? `, ${index + 1} of ${pages.length}` : ''}`,
      beside: 'planned',
      groups,
      notes: howTo(shown),
      cautions: MAKING_CAUTIONS,
    }
  })
}
