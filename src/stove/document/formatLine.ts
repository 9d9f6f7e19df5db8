import { bad, good, type Outcome } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import type { JsonValue } from './json.ts'

/** `tinwright/stove@1`: what kind of file, and which version of that kind. */
const FORMAT = /^tinwright\/([a-z]+)@([1-9]\d{0,5})$/

/**
 * Looks at `format` before anything else: where the file is of another kind or version, every other
 * complaint about it would mislead.
 */
export const checkFormat = (json: JsonValue, wanted: string): Outcome<null> => {
  const wrong = (code: string, value: string, fix: string, field = 'format'): Outcome<never> =>
    bad({ code: `format.${code}`, field, value, allowed: `"${wanted}"`, fix })
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    return wrong('not-a-file', shown(json), `Begin with braces and "format": "${wanted}".`, 'file')
  const format = (json as { readonly format?: JsonValue }).format
  if (format === undefined) return wrong('missing', '', `Begin the file with "format": "${wanted}".`)
  const [, kind, version] = (typeof format === 'string' ? FORMAT.exec(format) : null) ?? []
  const [, wantedKind, wantedVersion] = FORMAT.exec(wanted) ?? []
  if (kind === undefined) return wrong('unknown', shown(format), `Write "format": "${wanted}".`)
  if (kind !== wantedKind)
    return wrong('other-kind', shown(format), `This is a ${kind} file; a ${wantedKind} file was asked for.`)
  if (Number(version) > Number(wantedVersion))
    return wrong('newer', shown(format), 'This file is from a newer Tinwright: update Tinwright to read it.')
  return good(null)
}
