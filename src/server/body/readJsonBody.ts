import { guestProblem, type TurnedAway, turnAway } from '../answer/turnedAway.ts'
import { tooMuchOf } from './jsonShape.ts'

export type Json =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly away: TurnedAway }

const broken = (value: string, allowed: string): Json => ({
  ok: false,
  away: turnAway(
    'bad input',
    guestProblem(
      'json',
      'the body',
      value,
      allowed,
      'Nothing was changed. Send it as the pages of the bench do.',
    ),
  ),
})

/** Reads JSON in UTF-8, if it is not too deep and has not too many parts. */
export const jsonOf = (bytes: Uint8Array): Json => {
  const tooMuch = tooMuchOf(bytes)
  if (tooMuch !== null) return broken(tooMuch.value, tooMuch.allowed)
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return { ok: true, value: JSON.parse(text) }
  } catch (error) {
    return error instanceof SyntaxError
      ? broken('no JSON', 'JSON')
      : broken('bytes that are no UTF-8', 'JSON in UTF-8')
  }
}
