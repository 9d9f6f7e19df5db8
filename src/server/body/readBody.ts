import { guestProblem, type TurnedAway, turnAway } from '../answer/turnedAway.ts'

export type Body =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly away: TurnedAway }

const size = (bytes: number): string => (bytes < 1e6 ? `${bytes} bytes` : `${(bytes / 1e6).toFixed(1)} MB`)

/** The rest of such a body is not waited for: what carries our answers lets it pass for half a second, then hangs up. */
const tooLarge = (value: string, most: number): Body => ({
  ok: false,
  away: turnAway(
    'too large',
    guestProblem('too-large', 'the body', value, `at most ${size(most)}`, 'Nothing was changed. Send less.'),
    413,
  ),
})

/** Whether a body is of the type wanted, and packed in nothing. */
export const checkType = (request: Request, wanted: string, called: string): TurnedAway | null => {
  const refuse = (field: string, value: string | null, allowed: string) =>
    turnAway(
      'bad input',
      guestProblem('content-type', field, value, allowed, 'Send it as the pages of the bench do.'),
      415,
    )
  const encoding = request.headers.get('content-encoding')
  if (encoding !== null) return refuse('Content-Encoding', encoding, 'no packing')
  const type = request.headers.get('content-type')
  const [essence = '', ...parameters] = (type ?? '').toLowerCase().split(';')
  const charset = parameters.map((one) => one.trim()).join(';')
  const good = essence.trim() === wanted && ['', 'charset=utf-8', 'charset="utf-8"'].includes(charset)
  return good ? null : refuse('Content-Type', type, `${wanted}, ${called}`)
}

const cutShort = (length: number): Body => ({
  ok: false,
  away: turnAway(
    'bad input',
    guestProblem(
      'cut-short',
      'the body',
      `cut short after ${size(length)}`,
      'a whole body',
      'Send it again.',
    ),
  ),
})

const tooSlow = (length: number, within: number): Body => ({
  ok: false,
  away: turnAway(
    'bad input',
    guestProblem(
      'slow',
      'the body',
      `${size(length)} after ${within / 1000} s`,
      `a whole body within ${within / 1000} s`,
      'Send it again, nearer to the bench.',
    ),
    408,
    { connection: 'close' },
  ),
})

/** A phone in a weak network sends a large archive in a quarter of an hour. [ms] */
export const WHOLE_REQUEST = 15 * 60_000

/**
 * Reads a body of at most so many bytes, within so long [ms]. A larger one is refused before it is read, or as soon as
 * it shows.
 */
export const readBody = async (request: Request, most: number, within = WHOLE_REQUEST): Promise<Body> => {
  const said = Number(request.headers.get('content-length') ?? Number.NaN)
  if (said > most) return tooLarge(size(said), most)
  if (request.body === null) return { ok: true, bytes: new Uint8Array() }
  const chunks: Uint8Array[] = []
  let length = 0
  const reader = request.body.getReader()
  let timer: ReturnType<typeof setTimeout> | undefined
  const late = new Promise<'late'>((resolve) => {
    timer = setTimeout(() => resolve('late'), within)
  })
  try {
    for (;;) {
      const read = await Promise.race([reader.read().catch(() => 'broken' as const), late])
      if (read === 'late') return tooSlow(length, within)
      if (read === 'broken') return cutShort(length)
      if (read.done) break
      length += read.value.length
      // Not cancelled: that would cut the line before the answer is read.
      if (length > most) return tooLarge(`more than ${size(most)}`, most)
      chunks.push(read.value)
    }
  } finally {
    clearTimeout(timer)
    reader.releaseLock()
  }
  return { ok: true, bytes: chunks.length === 1 ? (chunks[0] as Uint8Array) : Buffer.concat(chunks) }
}
