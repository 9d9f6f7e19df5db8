import { type Answer, given, type Refusal, refused } from './answer.ts'
import type { Changes } from './changes.ts'

/**
 * Events of `GET /api/watch?since=N`. `changes` carries `Changes` and its sequence as the event's id, so a
 * browser that lost the line goes on where it was. `refusal` carries a `Refusal` and is the last. Between
 * them, every few seconds, a line that says nothing, so that a dead line is seen.
 */
export const WATCH_EVENTS = ['changes', 'refusal'] as const
export type WatchEvent = (typeof WATCH_EVENTS)[number]

/** Reads what an event carries. */
export const readWatch = (event: WatchEvent, data: string): Answer<Changes> => {
  try {
    const said: unknown = JSON.parse(data)
    if (event === 'changes') return given(said as Changes)
    const { code, sentence } = said as Refusal
    return refused(code, sentence)
  } catch {
    return refused('broken', 'The bench sent something that does not read. Load the page again.')
  }
}
