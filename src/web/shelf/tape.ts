import { readMeasured } from '#basis/text/length.ts'
import { fromMillimetres, toMillimetres } from '#basis/units.ts'

/** A tape is read to about a millimetre: common practice, no source [m]. */
const TAPE = fromMillimetres(1)

/**
 * A diameter from a tape laid round a can, as a shelf file writes it: `266 mm round` is `84.7 mm ± 0.3 mm`. Null for what
 * does not end in `round` or does not read.
 */
export const diameterFromTape = (text: string): string | null => {
  const girth = /^(.*\S)\s+round$/i.exec(text.trim())?.[1]
  if (girth === undefined) return null
  const read = readMeasured(girth, '', 'circumference', TAPE)
  if (!read.ok) return null
  const across = (length: typeof TAPE): number => toMillimetres(length) / Math.PI
  const tolerance = Math.max(1, Math.ceil(10 * across(read.value.tolerance) - 0.5)) / 10
  return `${across(read.value.value).toFixed(1)} mm ± ${tolerance.toFixed(1)} mm`
}
