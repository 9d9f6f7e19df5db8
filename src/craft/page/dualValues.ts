import { quantity } from '#basis/quantities.ts'
import { halvesAgree } from '#basis/text/dual.ts'
import { readSingle } from '#basis/text/single.ts'

const ROW = quantity('clearance')

/** Text, or a value that stands in both systems of units. */
export type Stretch =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'dual'; readonly metric: string; readonly inch: string }

const METRIC = 'mm²|mm|cm|m²|m|g/min|g/s|kg/h|kg|g|mL|L|kW|W|°C|hPa|Pa|m/s|MJ/kg'
const INCH = 'in²|in|ft|oz|lb/h|lb|fl oz|pt|qt|Btu/h|°F|inHg|mph|ft/s|Btu/lb'
const VALUE = '[−-]?\\d[\\d.,]*(?:/\\d+)?(?: \\d+/\\d+)?'

const DUAL = new RegExp(
  `(${VALUE}(?:\\s(?:to|×)\\s${VALUE})*\\s?(?:${METRIC}))\\s\\((${VALUE}(?:\\s(?:to|×)\\s${VALUE})*\\s?(?:${INCH}))\\)`,
  'g',
)

/** Text cut where values in both systems stand. */
export const dualValues = (text: string): readonly Stretch[] => {
  const found: Stretch[] = []
  let end = 0
  for (const match of text.matchAll(DUAL)) {
    if (match.index > end) found.push({ kind: 'text', text: text.slice(end, match.index) })
    found.push({ kind: 'dual', metric: match[1] as string, inch: match[2] as string })
    end = match.index + match[0].length
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
    const [first, second] = [readSingle(stretch.metric, ROW), readSingle(stretch.inch, ROW)]
    const agree = first.ok && second.ok && halvesAgree(first.value, second.value)
    return agree ? [] : [`${stretch.metric} (${stretch.inch})`]
  })
