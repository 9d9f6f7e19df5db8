import { quantity } from '#basis/quantities.ts'
import { halvesAgree } from '#basis/text/dual.ts'
import { DUAL_VALUE, VALUE } from '#basis/text/dualValue.ts'
import { readSingle } from '#basis/text/single.ts'

const ROW = quantity('clearance')

/** Text, or a value that stands in both systems of units. */
export type Stretch =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'dual'; readonly metric: string; readonly inch: string; readonly inchFirst?: boolean }

/** Text cut where values in both systems stand. */
export const dualValues = (text: string): readonly Stretch[] => {
  const found: Stretch[] = []
  let end = 0
  for (const match of text.matchAll(DUAL_VALUE)) {
    if (match.index > end) found.push({ kind: 'text', text: text.slice(end, match.index) })
    const [whole, metric, inch, inchFirst, metricSecond] = match
    found.push({
      kind: 'dual',
      metric: (metric ?? metricSecond) as string,
      inch: (inch ?? inchFirst) as string,
      ...(metric === undefined ? { inchFirst: true } : {}),
    })
    end = match.index + whole.length
  }
  if (end < text.length) found.push({ kind: 'text', text: text.slice(end) })
  return found
}

/** One length in both units, and nothing else: what the length code can cross-check. */
const LENGTH_PAIR = new RegExp(`^${VALUE}\\s?(?:mm|cm)$`)

/** The lengths in a text whose two halves do not agree, as they stand there: mixed-up units, slipped digits. */
export const disagreements = (text: string): readonly string[] =>
  dualValues(text).flatMap((stretch) => {
    if (stretch.kind === 'text' || !LENGTH_PAIR.test(stretch.metric) || !/in$/.test(stretch.inch)) return []
    const halves = [readSingle(stretch.metric, ROW), readSingle(stretch.inch, ROW)] as const
    const [first, second] = stretch.inchFirst ? ([halves[1], halves[0]] as const) : halves
    const agree = first.ok && second.ok && halvesAgree(first.value, second.value)
    return agree ? [] : [`${stretch.metric} (${stretch.inch})`]
  })
