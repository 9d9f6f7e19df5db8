import { readSizeCode } from '#stove/can/sizeCode.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import { openingChanges, openingWords } from './opening.ts'
import { type ChangeWords, type Difference, lengthOf, type Telling } from './words.ts'

type Parts = StoveFile['parts']
type PartFile = Parts[string]
type CanPartFile = Extract<PartFile, { form: 'can' }>

const END_WORDS: Readonly<Record<CanPartFile['top']['end'], string>> = {
  plain: 'whole',
  drawn: 'whole, drawn',
  'pull-off': 'pulled off',
  friction: 'a lever lid’s ring',
  open: 'cut out',
  cut: 'trimmed',
}

/** What is measured of a can, and as which quantity. */
const CAN_LENGTHS = {
  seamDiameter: 'canSeamDiameter',
  bodyDiameter: 'canBodyDiameter',
  topBodyDiameter: 'canBodyDiameter',
  bodyWall: 'bodyWall',
  endWall: 'endWall',
  seamHeight: 'seamHeight',
} as const
type CanLength = keyof typeof CAN_LENGTHS

const heightText = ({ can, trim }: CanPartFile): string | null => trim?.height ?? can.height ?? null

/** Height of a wall as it stands [m]; null where only its code tells and that does not read. */
const wallHeight = (part: PartFile): number | null => {
  if (part.form === 'band') return lengthOf(part.height, 'bandHeight')
  if (part.form === 'disc') return null
  const text = heightText(part)
  if (text !== null) return lengthOf(text, 'canHeight')
  const code = part.can.code === undefined ? null : readSizeCode(part.can.code, '')
  return code?.ok === true ? code.value.height : null
}

const measureChange = (
  was: string | undefined,
  is: string | undefined,
  key: (typeof CAN_LENGTHS)[CanLength],
  words: ChangeWords,
  telling: Telling,
): string | null => {
  if (was === is) return null
  if (is === undefined) return `${words[0]} not measured any more`
  if (was === undefined) return `${words[0]} measured: ${telling.length(is, key)}`
  return telling.change(was, is, key, words)
}

const seamChange = (was: string | undefined, is: string | undefined): string | null => {
  if (was === is) return null
  if (is === undefined) return 'side seam not measured any more'
  return was === undefined ? `side seam measured: at ${is}` : `side seam at ${was} → ${is}`
}

const canChanges = (
  before: CanPartFile,
  after: CanPartFile,
  telling: Telling,
): readonly (string | null)[] => {
  const [a, b] = [before.can, after.can]
  const ends = (['bottom', 'top'] as const).map((which) => {
    const [was, is] = [before[which], after[which]]
    if (was.end !== is.end) return `${which} ${END_WORDS[was.end]} → ${END_WORDS[is.end]}`
    return 'opening' in was && 'opening' in is
      ? telling.change(was.opening, is.opening, 'endOpening', [
          `opening of the ${which}`,
          'wider',
          'narrower',
        ])
      : null
  })
  const changeOf = (key: CanLength, words: ChangeWords) =>
    measureChange(a[key], b[key], CAN_LENGTHS[key], words, telling)
  const [was, is] = [heightText(before), heightText(after)]
  return [
    a.code === b.code ? null : `another can: ${a.code ?? 'as measured'} → ${b.code ?? 'as measured'}`,
    changeOf('seamDiameter', ['over the seam', 'wider', 'narrower']),
    changeOf('bodyDiameter', ['at the wall', 'wider', 'narrower']),
    changeOf('topBodyDiameter', ['at its top', 'wider', 'narrower']),
    was === is
      ? null
      : was === null || is === null
        ? is === null
          ? `its own height again, not ${telling.length(was as string, 'canHeight')}`
          : after.trim === undefined
            ? `${telling.length(is, 'canHeight')} high`
            : `trimmed to ${telling.length(is, 'canHeight')}`
        : telling.change(was, is, 'canHeight', [
            after.trim === undefined ? '' : 'trimmed',
            'taller',
            'shorter',
          ]),
    changeOf('bodyWall', ['tin', 'thicker', 'thinner']),
    changeOf('endWall', ['tin of the ends', 'thicker', 'thinner']),
    changeOf('seamHeight', ['seam', 'higher', 'lower']),
    JSON.stringify(a.beads ?? []) === JSON.stringify(b.beads ?? []) ? null : 'beads measured anew',
    seamChange(a.sideSeam, b.sideSeam),
    ...ends,
  ]
}

const ownChanges = (before: PartFile, after: PartFile, telling: Telling): readonly (string | null)[] => {
  if (before.form === 'can' && after.form === 'can') return canChanges(before, after, telling)
  if (before.form === 'disc' && after.form === 'disc')
    return [
      telling.change(before.diameter, after.diameter, 'discDiameter', ['', 'wider', 'narrower']),
      telling.change(before.thickness, after.thickness, 'sheetThickness', ['', 'thicker', 'thinner']),
    ]
  if (before.form === 'band' && after.form === 'band')
    return [
      telling.change(before.height, after.height, 'bandHeight', ['', 'higher', 'lower']),
      telling.change(before.thickness, after.thickness, 'sheetThickness', ['', 'thicker', 'thinner']),
    ]
  return [`${before.form} → ${after.form}`]
}

/** Names of the old that are gone with those of the new that came, where what they name is the same to the letter. */
const renamed = <T>(
  before: Readonly<Record<string, T>>,
  after: Readonly<Record<string, T>>,
): ReadonlyMap<string, string> => {
  const gone = Object.keys(before).filter((name) => !Object.hasOwn(after, name))
  const come = new Set(Object.keys(after).filter((name) => !Object.hasOwn(before, name)))
  const pairs = new Map<string, string>()
  for (const name of gone) {
    const twin = [...come].find((other) => JSON.stringify(after[other]) === JSON.stringify(before[name]))
    if (twin === undefined) continue
    come.delete(twin)
    pairs.set(name, twin)
  }
  return pairs
}

const openingDifferences = (
  part: string,
  before: PartFile,
  after: PartFile,
  telling: Telling,
): readonly Difference[] => {
  const [old, now] = [before.openings ?? {}, after.openings ?? {}]
  const names = renamed<(typeof old)[string]>(old, now)
  const walls = [wallHeight(before), wallHeight(after)] as const
  const said = (opening: string | null, name: string, what: string): Difference => ({
    part,
    opening,
    subject: `${part}, ${name}`,
    what,
  })
  const found: Difference[] = []
  for (const [name, opening] of Object.entries(old)) {
    const twin = names.get(name)
    const later = now[name]
    if (twin !== undefined) found.push(said(twin, name, `called “${twin}” now`))
    else if (later === undefined) found.push(said(null, name, `taken out: ${openingWords(opening, telling)}`))
    else found.push(...openingChanges(opening, later, walls, telling).map((what) => said(name, name, what)))
  }
  const twins = new Set(names.values())
  for (const [name, opening] of Object.entries(now))
    if (old[name] === undefined && !twins.has(name))
      found.push(said(name, name, `new: ${openingWords(opening, telling)}`))
  return found
}

/** What was changed of the parts: their own sizes first, then their openings. */
export const partDifferences = (before: Parts, after: Parts, telling: Telling): readonly Difference[] => {
  const names = renamed(before, after)
  const found: Difference[] = []
  for (const [name, part] of Object.entries(before)) {
    const twin = names.get(name)
    const later = after[name]
    if (twin !== undefined)
      found.push({ part: twin, opening: null, subject: name, what: `called “${twin}” now` })
    else if (later === undefined)
      found.push({ part: null, opening: null, subject: name, what: `taken away (${part.role})` })
    else {
      if (part.role !== later.role)
        found.push({ part: name, opening: null, subject: name, what: `${part.role} → ${later.role}` })
      for (const what of ownChanges(part, later, telling))
        if (what !== null) found.push({ part: name, opening: null, subject: name, what })
      found.push(...openingDifferences(name, part, later, telling))
    }
  }
  const twins = new Set(names.values())
  for (const [name, part] of Object.entries(after))
    if (before[name] === undefined && !twins.has(name))
      found.push({ part: name, opening: null, subject: name, what: `new: a ${part.role}` })
  return found
}
