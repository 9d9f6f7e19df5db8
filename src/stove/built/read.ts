import { bad, good, type Outcome } from '#basis/problem.ts'
import { checkFormat } from '#stove/document/formatLine.ts'
import { readJson } from '#stove/document/json.ts'
import { readStoveValue, type StoveDocument } from '#stove/document/read.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import { schemaProblems } from '#stove/document/schemaProblems.ts'
import type { Stove } from '#stove/model.ts'
import { withMeasures } from './apply.ts'
import type { Measure } from './measure.ts'
import { offPlan } from './plausible.ts'
import { remarksOn } from './remarks.ts'
import { BUILT_FORMAT, builtSchema } from './schema.ts'
import { builtSheet } from './sheet.ts'
import { type BuiltValue, builtValues } from './values.ts'

/** One measure beside what was planned. */
export interface Difference {
  readonly measure: Measure
  /** Null where the plan does not say [SI unit of the quantity]. */
  readonly planned: number | null
  readonly built: number
  /** Built less planned, a bearing the short way round; null where the plan does not say. */
  readonly off: number | null
  /** Whether the stove as built takes it over; weights and gaps only tell how well the rest is known. */
  readonly applied: boolean
}

/** A stove as it was built. */
export interface Built {
  /** The stove file with the measures in it; its name and remarks say where it comes from. */
  readonly file: StoveFile
  readonly stove: Stove
  readonly differences: readonly Difference[]
  /** What was not measured: as planned. */
  readonly unmeasured: readonly Measure[]
  /** What the measures say of each other, and how they were taken over. */
  readonly remarks: readonly string[]
}

const LONGEST_NAME = 80
const LONGEST_ABOUT = 4000
const AS_BUILT = ', as built'

const withOrigin = (file: StoveFile, plan: StoveFile, remarks: string): StoveFile => {
  const name = plan.name.endsWith(AS_BUILT) ? plan.name : plan.name + AS_BUILT
  const origin = `The stove “${plan.name}” as measured after building; what was not measured is as planned.`
  const about = [origin, remarks, plan.about ?? ''].filter((text) => text !== '').join('\n')
  return { ...file, name: name.slice(-LONGEST_NAME), about: about.slice(0, LONGEST_ABOUT) }
}

const NOT_APPLIED: ReadonlySet<Measure['kind']> = new Set(['wall gap', 'part weight', 'stove weight'])

const differenceOf = ({ measure, value, from }: BuiltValue, stove: Stove): Difference => {
  const part = stove.parts.get(measure.part ?? '')
  const whole = part?.form === 'can' ? part.can.height.value : part?.form === 'band' ? part.height : null
  const built = from === 'top' && whole !== null ? whole - value : value
  return {
    measure,
    planned: measure.planned,
    built,
    off: measure.planned === null ? null : offPlan(measure, built),
    applied: !NOT_APPLIED.has(measure.kind),
  }
}

/**
 * Reads an as-built file (`tinwright/built@1`) and puts what it says into the plan it was built from. Problems as of
 * `readStove`: the JSON text, each field by itself, names and measures the plan does not have, values far off the
 * plan that nobody has confirmed, and a stove that such measures do not add up to.
 */
export const readBuilt = (text: string, plan: StoveDocument): Outcome<Built> => {
  const json = readJson(text)
  if (!json.ok) return json
  const format = checkFormat(json.value, BUILT_FORMAT)
  if (!format.ok) return format
  const parsed = builtSchema.safeParse(json.value)
  if (!parsed.success) return bad(...schemaProblems(parsed.error.issues, json.value))
  const read = parsed.data
  if (read.stove !== plan.file.name)
    return bad({
      code: 'built.other-stove',
      field: 'stove',
      value: `"${read.stove}"`,
      allowed: `the name of the plan, "${plan.file.name}"`,
      fix: 'Was this sheet filled in for another stove? Else correct the name.',
    })
  const measures = builtSheet(plan.stove)
  const values = builtValues(read, json.value, plan.stove, measures)
  if (!values.ok) return values
  const file = withOrigin(withMeasures(plan.file, values.value), plan.file, read.about ?? '')
  const built = readStoveValue(JSON.parse(JSON.stringify(file)))
  if (!built.ok)
    return bad(
      ...built.problems.map((one) => ({
        ...one,
        allowed: `in the stove as built, ${one.allowed}`,
        fix: `${one.fix} With the measures put in, the parts do not add up to a stove: measure again what bears on it.`,
      })),
    )
  const measured = new Set(values.value.map(({ measure }) => measure))
  return good({
    file,
    stove: built.value.stove,
    differences: values.value.map((value) => differenceOf(value, built.value.stove)),
    unmeasured: measures.filter((one) => !measured.has(one)),
    remarks: remarksOn(values.value, plan.stove, built.value.stove),
  })
}
