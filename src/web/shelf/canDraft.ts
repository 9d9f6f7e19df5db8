import type { JsonValue } from '#stove/document/json.ts'
import { diameterFromTape } from './tape.ts'

/** A can as it stands in the form: texts as typed, nothing judged yet. */
export interface CanDraft {
  readonly name: string
  readonly code: string
  readonly seamDiameter: string
  readonly bodyDiameter: string
  readonly topBodyDiameter: string
  readonly height: string
  readonly bodyWall: string
  readonly sideSeam: string
  readonly bottom: EndDraft
  readonly top: EndDraft
  /** What the form does not show goes back as it came. */
  readonly rest: Readonly<Record<string, JsonValue>>
}

export interface EndDraft {
  readonly end: EndKind
  readonly opening: string
}

export const END_KINDS = ['plain', 'drawn', 'pull-off', 'friction', 'open', 'cut'] as const
export type EndKind = (typeof END_KINDS)[number]

/** In the words of whoever holds the can. */
export const END_WORDS: Readonly<Record<EndKind, string>> = {
  plain: 'whole, with a seam',
  drawn: 'whole, drawn in one piece with the wall',
  'pull-off': 'lid pulled off, a ledge is left',
  friction: 'ring of a lever lid',
  open: 'cut out along the wall',
  cut: 'trimmed with snips, no seam left',
}

/** Ends that leave an opening of their own to measure. */
export const hasOpening = (end: EndKind): boolean => end === 'pull-off' || end === 'friction'

const WHOLE: EndDraft = { end: 'plain', opening: '' }

export const EMPTY_CAN: CanDraft = {
  name: '',
  code: '',
  seamDiameter: '',
  bodyDiameter: '',
  topBodyDiameter: '',
  height: '',
  bodyWall: '',
  sideSeam: '',
  bottom: WHOLE,
  top: WHOLE,
  rest: {},
}

const TEXTS = [
  'code',
  'seamDiameter',
  'bodyDiameter',
  'topBodyDiameter',
  'height',
  'bodyWall',
  'sideSeam',
] as const

/** What may be told by a tape laid round the can instead. */
const ACROSS = ['seamDiameter', 'bodyDiameter', 'topBodyDiameter'] as const

type JsonObject = Readonly<Record<string, JsonValue>>

const isObject = (value: JsonValue | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const textOf = (value: JsonValue | undefined): string => (typeof value === 'string' ? value : '')

const endFrom = (value: JsonValue | undefined): EndDraft => {
  if (!isObject(value)) return WHOLE
  const end = END_KINDS.find((kind) => kind === value.end)
  return { end: end ?? 'plain', opening: textOf(value.opening) }
}

/** What the form shows of a can that is on the shelf. */
export const draftOf = (name: string, value: JsonValue | null): CanDraft => {
  if (!isObject(value ?? undefined)) return { ...EMPTY_CAN, name }
  const can = value as JsonObject
  const shown = new Set<string>([...TEXTS, 'bottom', 'top'])
  return {
    name,
    ...(Object.fromEntries(TEXTS.map((key) => [key, textOf(can[key])])) as Pick<
      CanDraft,
      (typeof TEXTS)[number]
    >),
    bottom: endFrom(can.bottom),
    top: endFrom(can.top),
    rest: Object.fromEntries(Object.entries(can).filter(([key]) => !shown.has(key))),
  }
}

const endValue = ({ end, opening }: EndDraft, before: JsonValue | undefined): JsonValue | undefined => {
  if (hasOpening(end)) return { end, opening: opening.trim() }
  // A whole end is what a shelf file means by none.
  return end === 'plain' && before === undefined ? undefined : { end }
}

/** The can as it goes into a shelf file; an empty field is left out. */
export const canValue = (draft: CanDraft): JsonValue => {
  const texts = TEXTS.flatMap((key) => {
    const text = draft[key].trim()
    const read = (ACROSS as readonly string[]).includes(key) ? diameterFromTape(text) : null
    return text === '' ? [] : [[key, read ?? text] as const]
  })
  const bottom = endValue(draft.bottom, undefined)
  const top = endValue(draft.top, undefined)
  return {
    ...Object.fromEntries(texts),
    ...draft.rest,
    ...(bottom === undefined ? {} : { bottom }),
    ...(top === undefined ? {} : { top }),
  }
}

/** Which field of the form a problem of the can belongs to; null for the can as a whole. */
export const fieldOfProblem = (field: string): string | null => {
  const [first, second] = field.split('.')
  if (first === 'bottom' || first === 'top') return second === 'opening' ? `${first}.opening` : first
  return (TEXTS as readonly string[]).includes(first ?? '') ? (first ?? null) : null
}
