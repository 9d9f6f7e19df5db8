import type * as z from 'zod'
import { type Answer, refused } from './answer.ts'
import { CALLS, type CallName, type RequestOf, type ValueOf } from './calls.ts'
import { frameHead } from './frame.ts'
import { readRequest } from './requestProblems.ts'
import { UPLOADS, type UploadName, type UploadRequestOf, type UploadValueOf } from './uploads.ts'

/** Posts a call and gives the answer's JSON, whatever its status; throws where the server cannot be reached. */
export type Send = (name: CallName, body: unknown) => Promise<unknown>

/** The same for an upload: the words' head first, then the bytes. */
export type SendBytes<B> = (name: UploadName, head: Uint8Array<ArrayBuffer>, bytes: B) => Promise<unknown>

export interface Client {
  /** Asks for one thing. Never throws: whatever goes wrong is a refusal. */
  readonly call: <N extends CallName>(name: N, request: RequestOf<N>) => Promise<Answer<ValueOf<N>>>
}

export interface Uploader<B> {
  /** Sends a photo or an archive up. Never throws. */
  readonly upload: <N extends UploadName>(
    name: N,
    request: UploadRequestOf<N>,
    bytes: B,
  ) => Promise<Answer<UploadValueOf<N>>>
}

const unreachable = (): Answer<never> =>
  refused(
    'unreachable',
    'The bench does not answer. What was not acknowledged is not kept yet; it can be sent again as it is.',
  )

const notOurs = (): Answer<never> =>
  refused('broken', 'Something answered that is not the bench, or of another version. Load the page again.')

/** What the server said, if it is an answer of ours. */
const answerFrom = <T>(said: unknown): Answer<T> => {
  if (typeof said !== 'object' || said === null) return notOurs()
  const { ok, refusal } = said as { readonly ok?: unknown; readonly refusal?: { readonly code?: unknown } }
  if (ok === true && 'value' in said) return said as Answer<T>
  return ok === false && typeof refusal?.code === 'string' ? (said as Answer<T>) : notOurs()
}

const asked = async <T>(send: () => Promise<unknown>): Promise<Answer<T>> => {
  try {
    return answerFrom(await send())
  } catch {
    return unreachable()
  }
}

/** A request that the server would refuse is refused here, in its words, and not sent. */
export const makeClient = (send: Send): Client => ({
  call: async (name, request) => {
    const read = readRequest<z.ZodType>(CALLS[name], request)
    return read.ok ? asked(() => send(name, request)) : read
  },
})

/** `size` tells how many bytes a thing to be sent has: `(blob) => blob.size`. */
export const makeUploader = <B>(send: SendBytes<B>, size: (bytes: B) => number): Uploader<B> => ({
  upload: async (name, request, bytes) => {
    const { mostBytes, what } = UPLOADS[name]
    const megabytes = (count: number): string => `${(count / 1e6).toFixed(1)} MB`
    if (size(bytes) > mostBytes)
      return refused(
        'too large',
        `The ${what} has ${megabytes(size(bytes))}; allowed are ${megabytes(mostBytes)}. Nothing was sent. Make it smaller.`,
      )
    const read = readRequest<z.ZodType>(UPLOADS[name], request)
    return read.ok ? asked(() => send(name, frameHead(request), bytes)) : read
  },
})
