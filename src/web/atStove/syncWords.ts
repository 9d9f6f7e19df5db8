import type { BurnState } from './burnBook.ts'
import { runningTime } from './runningTime.ts'

/** Where everything is that was noted: `12 events, 3 not yet with the workshop`. */
export const countWords = ({ count, waiting }: Pick<BurnState, 'count' | 'waiting'>): string => {
  const events = count === 1 ? '1 event' : `${count} events`
  return waiting === 0
    ? `${events}, all with the workshop`
    : `${events}, ${waiting} not yet with the workshop`
}

/** How it stands with the workshop beyond the count, where there is something to say. */
export const lineWords = ({ visit, waiting }: Pick<BurnState, 'visit' | 'waiting'>): string | null => {
  if (visit?.kind === 'refused') return visit.sentence
  if (visit?.kind !== 'out of reach') return null
  return waiting > 0
    ? 'The workshop is out of reach. Everything is kept on this phone and goes there by itself later.'
    : 'The workshop is out of reach. Go on: everything is kept on this phone.'
}

/** How the clocks differ, where they do. */
export const clockWords = (shift: number): string | null =>
  shift === 0
    ? null
    : `This device’s clock is ${runningTime(Math.abs(shift))} ${shift > 0 ? 'behind' : 'ahead of'} the workshop’s; what it notes is put right by that.`
