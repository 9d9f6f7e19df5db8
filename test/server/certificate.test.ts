import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type BroughtFile, readCertificate } from '#server/door/certificate.ts'
import { needs } from '../outsideProgram.ts'
import { type Authority, makeAuthority, type Pair, type Wish } from './certificates.ts'

let authority: Authority | null = null
beforeAll(() => {
  try {
    authority = makeAuthority()
  } catch {
    // Each test says that OpenSSL is missing.
  }
})
afterAll(() => authority?.close())

const NOW = '2031-05-17T14:05:00Z'
const file = (path: string, text: string): BroughtFile => ({ path, text })
const read = ({ certificate, key }: Pair, now = NOW, called: string | null = null) =>
  readCertificate(file('bench.pem', certificate), file('bench.key', key), now, called)
const sign = (wish: Wish): Pair => {
  if (authority === null) throw new Error('no authority')
  return authority.sign(wish)
}
const problemsOf = (pair: Pair, now?: string) => {
  const got = read(pair, now)
  return got.ok ? [] : got.problems
}

describe('what the maker brings for the doors to the house', () => {
  it('tells under which names and addresses the bench can be trusted', (test) => {
    needs(test, 'openssl')
    const got = read(
      sign({
        names:
          'DNS:Bench.Club.example,DNS:*.club.example,DNS:localhost,DNS:127.0.0.1,IP:192.168.1.20,IP:fd00::2',
      }),
    )
    if (!got.ok) throw new Error('refused')
    const { names, covers, until } = got.value
    expect(names).toEqual(['bench.club.example'])
    expect(
      ['192.168.1.20', '192.168.1.21', 'fd00::2', 'fd00:0::0:2', 'bench.club.example'].map(covers),
    ).toEqual([true, false, true, true, false])
    expect(until).toMatch(/^\d{4}-\d\d-\d\dT.*Z$/)
    expect(got.value.patterns).toEqual(['*.club.example'])
    const bare = read(sign({ names: '' }))
    expect(bare.ok && bare.value.names).toEqual([])
  })

  // RFC 9525, section 6.3: a * is the whole of the first label, and stands for just one.
  it('stands by a pattern for a name that the maker says', (test) => {
    needs(test, 'openssl')
    const wild = sign({ names: 'DNS:*.club.example,DNS:b*.shop.example,DNS:bench.example' })
    const said = (called: string) => read(wild, NOW, called)
    for (const called of ['bench.club.example', 'BENCH.Club.example', 'bench.example']) {
      const got = said(called)
      expect(got.ok && [got.value.names[0], got.value.patterns]).toEqual([
        called.toLowerCase(),
        ['*.club.example'],
      ])
    }
    for (const called of [
      'club.example',
      'a.bench.club.example',
      'bench.other.example',
      'bench.shop.example',
      '*.club.example',
      'bench.club.example.',
      '.club.example',
      '',
      '192.168.1.20',
    ]) {
      const got = said(called)
      expect([called, got.ok ? '' : got.problems[0]?.code]).toEqual([called, 'certificate.other-name'])
    }
  })

  it('takes a key of the older kind', (test) => {
    needs(test, 'openssl')
    expect(read(sign({ names: 'DNS:bench.example', key: ['rsa:2048'] })).ok).toBe(true)
  })

  it('is refused in a sentence where it will not do', (test) => {
    needs(test, 'openssl')
    const pair = sign({ names: 'DNS:bench.example' })
    const other = sign({ names: 'DNS:bench.example' })
    const locked = authority?.lock(pair.key) ?? ''
    const cases: readonly (readonly [Pair, string | undefined, string, string, RegExp])[] = [
      [{ ...pair, key: other.key }, undefined, 'other-key', '--key', /the key of another certificate/],
      [{ ...pair, key: locked }, undefined, 'locked-key', '--key', /locked with a passphrase/],
      [{ ...pair, key: pair.certificate }, undefined, 'no-key', '--key', /no private key in it/],
      [
        { ...pair, certificate: pair.key },
        undefined,
        'no-certificate',
        '--certificate',
        /no certificate in it/,
      ],
      [
        { ...pair, certificate: pair.certificate.slice(0, 300) },
        undefined,
        'no-certificate',
        '--certificate',
        /no certificate in it/,
      ],
      [pair, '2199-01-01T00:00:00Z', 'expired', '--certificate', /was good until \d{4}-\d\d-\d\d/],
      [pair, '1999-01-01T00:00:00Z', 'not-yet', '--certificate', /is good from \d{4}-\d\d-\d\d on/],
      [
        sign({ names: 'DNS:bench.example', purpose: 'clientAuth' }),
        undefined,
        'purpose',
        '--certificate',
        /not meant for servers/,
      ],
      [
        sign({ names: 'DNS:bench.example', key: ['rsa:1024'] }),
        undefined,
        'unusable',
        '--certificate',
        /No connection can be made with it/,
      ],
    ]
    for (const [wrong, now, code, field, sentence] of cases)
      expect(problemsOf(wrong, now)).toEqual([
        expect.objectContaining({ code: `certificate.${code}`, field, fix: expect.stringMatching(sentence) }),
      ])
    expect(problemsOf({ certificate: 'x', key: 'y' }).map(({ field }) => field)).toEqual([
      '--certificate',
      '--key',
    ])
    // A certificate that is cut off behind its first is still one; the key is never shown.
    for (const { value } of problemsOf({ ...pair, key: locked })) expect(value).toBe('bench.key')
  })
})
