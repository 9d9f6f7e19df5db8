import { type Kind, kindNames, type Unit, units } from '../unitTable.ts'
import { faulty, type Reading, read } from './fault.ts'

const spellingsOf = (unit: Unit): readonly string[] => [unit.symbol, ...unit.spellings]

const named = (kind: Kind, name: string): Unit | undefined => {
  const ofKind: readonly Unit[] = units[kind]
  return ofKind.find((unit) => spellingsOf(unit).includes(name))
}

const kinds = Object.keys(units) as readonly Kind[]

/** Names that more than one unit goes by. */
const TWO_MEANINGS: Readonly<Record<string, string>> = {
  'fl oz': 'US fl oz',
  'fluid ounce': 'US fl oz',
  'fluid ounces': 'US fl oz',
  pt: 'US pt',
  pint: 'US pt',
  pints: 'US pt',
  qt: 'US qt',
  quart: 'US qt',
  quarts: 'US qt',
  gal: 'US gal',
  gallon: 'US gal',
  gallons: 'US gal',
}

const listed = (kind: Kind): string => {
  const symbols: string[] = units[kind].map((unit) => unit.symbol)
  const last = symbols.pop() ?? 'no unit'
  return symbols.length === 0 ? last : `${symbols.join(', ')} or ${last}`
}

/** What comes after the first unit of the kind, where the name begins with one: `mm` of `mm mm`; else null. */
const afterUnit = (kind: Kind, name: string): string | null => {
  const ofKind: readonly Unit[] = units[kind]
  const longestFirst = ofKind.flatMap(spellingsOf).sort((a, b) => b.length - a.length)
  for (const spelling of longestFirst) {
    const rest = name.slice(spelling.length)
    // `inchworm` does not begin with a unit; `1' 2"` and `mm 5` do.
    if (name.startsWith(spelling) && rest !== '' && !(/\w$/.test(spelling) && /^\w/.test(rest)))
      return rest.trim()
  }
  return null
}

/** The unit of the wanted kind that goes by this name. */
export const unitNamed = (kind: Kind, name: string): Reading<Unit> => {
  const unit = named(kind, name)
  if (unit !== undefined) return read(unit)

  if (/^\/ ?\d/.test(name)) return faulty('spaced-fraction', 'Write the fraction without spaces: 5/8.')
  if (/^[-\d.,/]/.test(name)) return faulty('two-numbers', 'Write it as one number with one unit.')

  const meant = TWO_MEANINGS[name]
  if (kind === 'volume' && meant !== undefined)
    return faulty('two-meanings', `US or imperial? Write ${meant} if that is meant, or mL.`)

  const elsewhere = kinds.find((other) => named(other, name) !== undefined)
  if (elsewhere !== undefined)
    return faulty(
      'wrong-kind',
      `Use ${listed(kind)}: ${name} is a unit of ${kindNames[elsewhere]}, and this is a ${kindNames[kind]}.`,
    )

  const ofKind: readonly Unit[] = units[kind]
  const near = ofKind.flatMap(spellingsOf).find((spelling) => spelling.toLowerCase() === name.toLowerCase())
  if (near !== undefined)
    return faulty('unknown-unit', `Write ${near} for ${name}: capitals matter in units.`)

  const rest = afterUnit(kind, name)
  if (rest !== null)
    return /^[-.,]?\d/.test(rest) || named(kind, rest) !== undefined
      ? faulty('two-units', 'Write it as one number with one unit.')
      : faulty('trailing', `Take out "${rest}": the unit comes last.`)

  return faulty('unknown-unit', `Use ${listed(kind)}: "${name}" is not a unit known here.`)
}
