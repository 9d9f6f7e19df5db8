import type { Answer } from '#wire/answer.ts'
import type { CallName, RequestOf, ValueOf } from '#wire/calls.ts'
import { callPath } from '#wire/routes.ts'

/** Asks a bench from outside the browser; a refusal fails the test. */
export const ask = async <N extends CallName>(
  address: string,
  name: N,
  request: RequestOf<N>,
): Promise<ValueOf<N>> => {
  const { origin } = new URL(address)
  const response = await fetch(`${origin}${callPath(name)}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin },
    body: JSON.stringify(request),
  })
  const answer = (await response.json()) as Answer<ValueOf<N>>
  if (!answer.ok) throw new Error(`${name}: ${answer.refusal.sentence}`)
  return answer.value
}

let made = 0

/** An id of this test's own. */
const testId = (what: string): string => `${what}-${process.pid}-${++made}`

/** A trial about a stove of the demo, with this text. */
export const makeTrial = async (
  address: string,
  name: string,
  text: string,
  stove = 'Heron',
): Promise<string> => {
  const heads = await ask(address, 'list', { kinds: ['stove'] })
  const about = heads.find((head) => head.name === stove)
  if (about === undefined) throw new Error(`No ${stove} in the demo`)
  const id = testId('trial')
  await ask(address, 'create', {
    act: { id: testId('act'), client: 'test', at: new Date().toISOString() },
    wanted: {
      id,
      kind: 'trial',
      name,
      revision: testId('revision'),
      text,
      note: '',
      aboutDocument: about.id,
      aboutRevision: about.head,
    },
  })
  return id
}
