import type { BenchServer } from './server.ts'

/** Asks the server itself, past any page. */
export const ask = async <T>(server: BenchServer, name: string, request: unknown = {}): Promise<T> => {
  const response = await fetch(new URL(`/api/${name}`, server.address), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(request),
  })
  const said = (await response.json()) as {
    readonly ok: boolean
    readonly value: T
    readonly refusal?: { readonly sentence: string }
  }
  if (!said.ok) throw new Error(said.refusal?.sentence)
  return said.value
}

interface Head {
  readonly id: string
  readonly kind: string
  readonly name: string
}

/** The document of a stove of that name. */
export const stoveNamed = async (server: BenchServer, name: string): Promise<string> => {
  const found = (await ask<readonly Head[]>(server, 'list')).find(
    (head) => head.kind === 'stove' && head.name === name,
  )
  if (found === undefined) throw new Error(`There is no stove ${name}`)
  return found.id
}
