import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export interface Pair {
  /** PEM, with the authority's own behind it. */
  readonly certificate: string
  readonly key: string
}

export interface Wish {
  /** As OpenSSL writes it: `DNS:bench.example,IP:192.168.1.20`; empty: none. */
  readonly names: string
  readonly purpose?: 'serverAuth' | 'clientAuth'
  readonly key?: readonly string[]
}

export interface Authority {
  readonly certificate: string
  readonly sign: (wish: Wish) => Pair
  /** The same key behind a passphrase. */
  readonly lock: (key: string) => string
  readonly close: () => void
}

/** Longer than the invented clocks of the tests are ahead. */
const DAYS = 3650
const CURVE = ['ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1']

/** What a club has that trusts itself: an authority that signs, made by OpenSSL for one run of tests. */
export const makeAuthority = (): Authority => {
  const folder = mkdtempSync(join(tmpdir(), 'tinwright-authority-'))
  const at = (name: string): string => join(folder, name)
  const openssl = (...args: readonly string[]): void =>
    void execFileSync('openssl', args, { cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] })
  const text = (name: string): string => readFileSync(at(name), 'utf8')
  const request = (name: string, subject: string, key: readonly string[]): void =>
    openssl(
      'req',
      '-new',
      '-nodes',
      '-newkey',
      ...key,
      '-keyout',
      `${name}.key`,
      '-out',
      `${name}.csr`,
      '-subj',
      subject,
    )
  writeFileSync(at('ca.ext'), 'basicConstraints=critical,CA:TRUE\nkeyUsage=critical,keyCertSign\n')
  request('ca', '/CN=A club that exists in a test', CURVE)
  openssl(
    'x509',
    '-req',
    '-in',
    'ca.csr',
    '-signkey',
    'ca.key',
    '-days',
    String(DAYS),
    '-extfile',
    'ca.ext',
    '-out',
    'ca.pem',
  )
  let count = 0
  return {
    certificate: text('ca.pem'),
    sign: ({ names, purpose = 'serverAuth', key = CURVE }) => {
      const name = `leaf-${count++}`
      const lines = [`extendedKeyUsage=${purpose}`, ...(names === '' ? [] : [`subjectAltName=${names}`])]
      writeFileSync(at(`${name}.ext`), `${lines.join('\n')}\n`)
      request(name, '/CN=A bench', key)
      openssl(
        ...[
          'x509',
          '-req',
          '-in',
          `${name}.csr`,
          '-CA',
          'ca.pem',
          '-CAkey',
          'ca.key',
          '-extfile',
          `${name}.ext`,
        ],
        ...['-days', String(DAYS), '-out', `${name}.pem`],
      )
      return { certificate: text(`${name}.pem`) + text('ca.pem'), key: text(`${name}.key`) }
    },
    lock: (key) => {
      writeFileSync(at('open.key'), key)
      openssl('pkey', '-in', 'open.key', '-aes256', '-passout', 'pass:tin', '-out', 'locked.key')
      return text('locked.key')
    },
    close: () => rmSync(folder, { recursive: true }),
  }
}
