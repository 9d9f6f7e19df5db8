import type { Quantity } from '../quantities.ts'
import { toSi, type Unit, unitBySymbol } from '../unitTable.ts'
import { faulty, type Reading, read } from './fault.ts'

const HOURS_MINUTES_SECONDS =
  /^(?:(\d+) ?(?:h|hr|hrs|hours?))?(?: ?(\d+) ?(?:min|mins|minutes?))?(?: ?(\d+(?:\.\d+)?) ?(?:s|sec|seconds?))?$/

const unit = (symbol: string): Unit => unitBySymbol('time', symbol) as Unit

/**
 * Reads a time in two or three units, `1 h 20 min`, or says null where the text is not of that form [s].
 * A clock's `12:30` is refused: minutes and seconds, or hours and minutes?
 */
export const readCompoundTime = (text: string, quantity: Quantity): Reading<number> | null => {
  if (quantity.kind !== 'time') return null
  if (/^\d+:\d/.test(text)) {
    const [a = '', b = ''] = text.split(':')
    return faulty('clock', `Hours or minutes first? Write ${a} h ${b} min or ${a} min ${b} s.`)
  }
  const parts = HOURS_MINUTES_SECONDS.exec(text)
  if (parts === null) return null
  const [, h, min, s] = parts
  if ([h, min, s].filter((part) => part !== undefined).length < 2) return null
  if (
    (h !== undefined && Number(min ?? 0) >= 60) ||
    (min !== undefined && Number(s ?? 0) >= 60) ||
    Number(s ?? 0) >= 3600
  )
    return faulty(
      'carry',
      'Let minutes and seconds after a larger unit stay under 60, or write one unit only.',
    )
  return read(toSi(Number(h ?? 0), unit('h')) + toSi(Number(min ?? 0), unit('min')) + Number(s ?? 0))
}
