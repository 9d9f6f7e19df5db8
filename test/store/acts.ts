import type { Answer, Refusal } from '#store/answer.ts'
import { type Opening, openWorkshop, type Place } from '#store/open.ts'
import type { Act, NewDocument, Workshop } from '#store/workshop.ts'

/** A clock and ids that a test can foresee. */
export const AT = '2031-05-17T14:05:00Z'

let count = 0
/** An id that no other test has. */
export const fresh = (word: string): string => `${word}-${++count}`

export const act = (client = 'window', at = AT): Act => ({ id: fresh('step'), client, at })

/** The value, or a failed test that says why there is none. */
export const value = async <T>(answer: Promise<Answer<T>> | Answer<T>): Promise<T> => {
  const got = await answer
  if (got.ok) return got.value
  throw new Error(`refused (${got.refusal.code}): ${got.refusal.sentence}`)
}

/** The refusal, or a failed test. */
export const refusal = async (answer: Promise<Answer<unknown>> | Answer<unknown>): Promise<Refusal> => {
  const got = await answer
  if (!got.ok) return got.refusal
  throw new Error(`was not refused: ${JSON.stringify(got.value)}`)
}

export const open = (place: Place, own: Partial<Opening> = {}): Promise<Workshop> =>
  value(openWorkshop(place, { at: AT, beginAs: 'workshop-1', ...own }))

export const newStove = (own: Partial<NewDocument> = {}): NewDocument => ({
  id: fresh('stove'),
  kind: 'stove',
  name: 'Redshank',
  revision: fresh('revision'),
  text: '{ "holes": 12 }\n',
  note: '',
  ...own,
})
