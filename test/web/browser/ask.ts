import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
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
export const testId = (what: string): string => `${what}-${process.pid}-${++made}`

const series = join(import.meta.dirname, '..', '..', '..', 'examples', 'series')

/** The invented series of six stoves and their burns, into a workshop that does not have it yet. */
export const bringSeries = async (address: string): Promise<void> => {
  const there = await ask(address, 'list', {})
  const files = readdirSync(series).map((name) => ({ name, text: readFileSync(join(series, name), 'utf8') }))
  const stoves = new Map<string, { readonly id: string; readonly head: string }>()
  const act = () => ({ id: testId('act'), client: 'test', at: new Date().toISOString() })
  for (const { name, text } of files.filter((file) => file.name.endsWith('.stove.json'))) {
    const stove = JSON.parse(text) as { readonly name: string }
    const known = there.find((head) => head.kind === 'stove' && head.name === stove.name)
    const wanted = {
      id: testId('stove'),
      kind: 'stove' as const,
      name: stove.name,
      revision: testId('revision'),
      text,
      note: '',
    }
    stoves.set(name, known ?? (await ask(address, 'create', { act: act(), wanted })))
  }
  for (const { text } of files.filter((file) => file.name.endsWith('.trial.json'))) {
    const trial = JSON.parse(text) as { readonly name: string; readonly stove: { readonly file: string } }
    const stove = stoves.get(trial.stove.file)
    if (stove === undefined) throw new Error(`The series has no ${trial.stove.file}`)
    if (there.some((head) => head.kind === 'trial' && head.name === trial.name)) continue
    await ask(address, 'create', {
      act: act(),
      wanted: {
        id: testId('trial'),
        kind: 'trial',
        name: trial.name,
        revision: testId('revision'),
        text,
        note: '',
        aboutDocument: stove.id,
        aboutRevision: stove.head,
      },
    })
  }
}

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
