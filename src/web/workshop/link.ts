import { makeClient, makeUploader } from '#wire/client.ts'
import { FRAME_TYPE } from '#wire/frame.ts'
import { callPath, uploadPath } from '#wire/routes.ts'
import { createCell } from '../cell/cell.ts'

/** How the page stands to the workshop behind it. */
export type LinkState =
  | { readonly kind: 'looking' }
  | { readonly kind: 'up' }
  | { readonly kind: 'down'; readonly sentence: string }
  /** The browser gives no room to keep anything in. */
  | { readonly kind: 'no keep'; readonly sentence: string }
  /** This device has not been let in. */
  | { readonly kind: 'not let in'; readonly sentence: string }
  /** Another workshop answers under this address than the one this page shows. */
  | { readonly kind: 'another'; readonly sentence: string }

const DOWN: LinkState = {
  kind: 'down',
  sentence:
    'The workshop does not answer. What you do is kept in this browser and goes there when it answers again.',
}

const cell = createCell<LinkState>({ kind: 'looking' })

export const linkState = { get: cell.get, subscribe: cell.subscribe }

export const setLink = (state: LinkState): void => {
  const now = cell.get()
  if (now.kind === 'another' || now.kind === 'no keep') return
  if (now.kind !== state.kind) cell.set(state)
}

export const linkDown = (): void => setLink(DOWN)

const post = async (path: string, type: string, body: BodyInit): Promise<unknown> => {
  try {
    const response = await fetch(path, { method: 'POST', headers: { 'content-type': type }, body })
    const said: unknown = await response.json()
    const { refusal } = said as { readonly refusal?: { readonly code: string; readonly sentence: string } }
    if (refusal?.code === 'not paired') setLink({ kind: 'not let in', sentence: refusal.sentence })
    return said
  } catch (fault) {
    linkDown()
    throw fault
  }
}

/** Asks the workshop, at once and once; never throws. What writes goes through the outbox (workshop.ts). */
export const client = makeClient((name, body) =>
  post(callPath(name), 'application/json', JSON.stringify(body)),
)

export const uploader = makeUploader<Blob>(
  (name, head, bytes) => post(uploadPath(name), FRAME_TYPE, new Blob([head, bytes])),
  (blob) => blob.size,
)
