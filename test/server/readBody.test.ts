import { describe, expect, it } from 'vitest'
import { readBody } from '#server/body/readBody.ts'

/** A body that comes in pieces and then, `ends` or not, no further. */
const asked = (pieces: readonly string[], ends: boolean): Request =>
  new Request('http://localhost/api/pair', {
    method: 'POST',
    duplex: 'half',
    body: new ReadableStream({
      start: (stream) => {
        for (const piece of pieces) stream.enqueue(new TextEncoder().encode(piece))
        if (ends) stream.close()
      },
    }),
  } as RequestInit)

const refusalOf = async (body: ReturnType<typeof readBody>) => {
  const got = await body
  if (got.ok) throw new Error('was read')
  return [got.away.status, got.away.sentence] as const
}

describe('a body that is read', () => {
  it('is whole', async () => {
    const got = await readBody(asked(['{"a":', '1}'], true), 100, 10_000)
    expect(got.ok && new TextDecoder().decode(got.bytes)).toBe('{"a":1}')
  })

  it('is refused where it does not come on, and what came is let go', async () => {
    const [status, sentence] = await refusalOf(readBody(asked(['{"code":'], false), 100, 30))
    expect(status).toBe(408)
    expect(sentence).toContain('8 bytes after 0.03 s')
  })

  it('is refused as soon as it is larger than wanted, whether it ends or not', async () => {
    const [status, sentence] = await refusalOf(
      readBody(asked(['x'.repeat(60), 'x'.repeat(60)], false), 100, 10_000),
    )
    expect(status).toBe(413)
    expect(sentence).toContain('more than 100 bytes')
  })
})
