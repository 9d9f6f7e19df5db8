import { once } from 'node:events'
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { deviceFileAt } from '#cli/bench/deviceFile.ts'
import type { BenchHost } from '#cli/bench/host.ts'
import { nodeBenchHost } from '#cli/bench/nodeHost.ts'
import type { Environment } from '#cli/environment.ts'
import { deviceListPath, namedPlace } from '#cli/workshopPlace.ts'
import { needs } from '../outsideProgram.ts'
import { makeAuthority } from '../server/certificates.ts'
import { open, value } from '../store/acts.ts'
import { flat, tinwright } from './memory.ts'

let folder: string
let file: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tinwright-bench-'))
  file = join(folder, 'workshop.tinwright')
})
afterEach(() => rmSync(folder, { recursive: true }))

/** The real host but for what opens windows and waits for people: it is stopped when `visit` has been. */
const visited = (visit: (address: string) => Promise<void>, own: Partial<BenchHost> = {}) => {
  const opened: string[] = []
  let address = ''
  const real = nodeBenchHost()
  const host: BenchHost = {
    ...real,
    houseAddresses: () => ['127.0.0.2'],
    qrLetters: () => null,
    openPage: (page) => opened.push(page),
    onEnter: () => () => undefined,
    serve: async (wanted) => {
      const served = await real.serve(wanted)
      if (served.ok) address = served.value.bench.address
      return served
    },
    untilStopped: () => visit(address),
    ...own,
  }
  return { opened, bench: async () => host }
}

const about = async (address: string): Promise<{ readonly demo: string | null }> => {
  const asked = { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' }
  const answer = await (await fetch(new URL('api/about', address), asked)).json()
  return (answer as { readonly value: { readonly demo: string | null } }).value
}

const bench = (args: readonly string[], host: ReturnType<typeof visited>) =>
  tinwright(['bench', '--port', '0', '--workshop', file, ...args], {}, host)

describe('tinwright bench', () => {
  it('opens a new workshop with the demo, once, and closes it whole', async () => {
    const first = await bench(
      ['--no-open'],
      visited(async (address) => expect((await about(address)).demo).not.toBeNull()),
    )
    expect(first.code).toBe(0)
    expect(first.out).toMatch(/^The bench is open: http:\/\/127\.0\.0\.1:\d+\/\n/)
    expect(flat(first.out)).toMatch(
      /\d+ things of a demo were laid in, all of them invented.*The bench is closed\. $/,
    )
    const second = await bench(
      ['--no-open'],
      visited(async () => undefined),
    )
    expect(second.out).not.toContain('demo')
    const shop = await open({ file })
    const stoves = await value(shop.list({ kinds: ['stove'] }))
    const names = stoves.map(({ name }) => name)
    expect(names.filter((name) => !name.startsWith('Heron '))).toEqual(['Greylag', 'Redshank', 'Heron'])
    const [variant] = stoves.filter(({ name }) => name.startsWith('Heron '))
    expect(await value(shop.list({ kinds: ['trial'], aboutDocument: variant?.id ?? '' }))).toHaveLength(4)
    await shop.close()
    // Closed whole: nothing of the log is left beside it.
    expect(() => statSync(`${file}-wal`)).toThrow()
  })

  it("leaves a maker's own workshop as it is", async () => {
    const shop = await open({ file })
    await value(
      shop.create(
        { id: 'step', client: 'window', at: '2031-05-17T14:05:00Z' },
        { id: 'mine', kind: 'stove', name: 'Mine', revision: 'r', text: '{}', note: '' },
      ),
    )
    await shop.close()
    await bench(
      ['--no-open'],
      visited(async (address) => expect((await about(address)).demo).toBeNull()),
    )
    const again = await open({ file })
    expect((await value(again.list())).map(({ name }) => name)).toEqual(['Mine'])
    await again.close()
  })

  it('says which port it took when the wanted one is in use', async () => {
    const other = createServer()
    other.listen(0, '127.0.0.1')
    await once(other, 'listening')
    const { port } = other.address() as { readonly port: number }
    const args = ['bench', '--port', String(port), '--no-open', '--workshop', file]
    const ended = await tinwright(
      args,
      {},
      visited(async () => undefined),
    )
    expect(flat(ended.out)).toMatch(new RegExp(`Port ${port} is in use; the bench took \\d+\\.`))
    other.close()
  })

  it('tells how to let a device in, with --lan', async () => {
    const ended = await bench(
      ['--no-open', '--lan'],
      visited(async () => undefined),
    )
    expect(flat(ended.out)).toMatch(
      /open http:\/\/127\.0\.0\.2:\d+\/pair there and type [A-Z3-9]{4}-[A-Z3-9]{4}\./,
    )
    expect(flat(ended.out)).toContain('is not encrypted')
    const none = await bench(
      ['--lan'],
      visited(async () => undefined, { houseAddresses: () => [] }),
    )
    expect([none.code, flat(none.err)]).toEqual([2, expect.stringContaining('Join the network first')])
  })

  it('says what is missing without a certificate, and not with one', async (test) => {
    const missing =
      'lets its screen go dark: keep that page open until the burn is over, or start the bench with a certificate of your own'
    const plain = await bench(
      ['--no-open', '--lan'],
      visited(async () => undefined),
    )
    expect(flat(plain.out)).toContain(missing)
    needs(test, 'openssl')
    const authority = makeAuthority()
    try {
      const { certificate, key } = authority.sign({ names: 'IP:127.0.0.2,DNS:bench.example' })
      const other = authority.sign({ names: 'IP:192.168.1.20' })
      const wild = authority.sign({ names: 'DNS:*.club.example' })
      const files = {
        'bench.pem': certificate,
        'bench.key': key,
        'other.pem': other.certificate,
        'other.key': other.key,
        'wild.pem': wild.certificate,
        'wild.key': wild.key,
      }
      const start = (args: readonly string[], own: Partial<Environment> = {}) =>
        tinwright(['bench', '--port', '0', '--workshop', file, '--no-open', ...args], files, {
          ...visited(async () => undefined),
          ...own,
        })
      const named = ['--certificate', 'bench.pem', '--key', 'bench.key']
      const safe = await start(['--lan', ...named])
      expect(flat(safe.out)).toMatch(
        /The bench is open: http:\/\/127\.0\.0\.1.* open https:\/\/127\.0\.0\.2:\d+\/pair or https:\/\/bench\.example:\d+\/pair there/,
      )
      expect(flat(safe.out)).toMatch(/is encrypted; the certificate is good until \d{4}-\d\d-\d\d\./)
      expect(safe.out).not.toContain(missing)
      const wildcard = ['--certificate', 'wild.pem', '--key', 'wild.key']
      const one = await start(['--lan', ...wildcard, '--name', 'Bench.club.example'])
      expect(flat(one.out)).toMatch(/ open https:\/\/bench\.club\.example:\d+\/pair there/)
      const refusals: readonly (readonly [readonly string[], string])[] = [
        [named, '--lan is missing'],
        [['--lan', '--key', 'bench.key'], '--certificate is missing'],
        [['--lan', '--certificate', 'bench.pem'], '--key is missing'],
        [['--lan', '--certificate', 'none.pem', '--key', 'bench.key'], '--certificate: none.pem will not do'],
        [['--lan', '--certificate', 'bench.pem', '--key', 'other.key'], 'the key of another certificate'],
        [
          ['--lan', '--certificate', 'other.pem', '--key', 'other.key'],
          'a name such as bench.example, or 127.0.0.2',
        ],
        [['--lan', '--name', 'bench.example'], '--certificate is missing'],
        [['--lan', ...wildcard], 'It stands for *.club.example: say with --name'],
        [['--lan', ...wildcard, '--name', 'a.bench.club.example'], 'a name that the certificate stands for'],
      ]
      for (const [args, sentence] of refusals) {
        const ended = await start(args)
        expect([ended.code, ended.out, flat(ended.err)]).toEqual([2, '', expect.stringContaining(sentence)])
      }
      const late = await start(['--lan', ...named], { now: () => '2099-05-17T14:05:00Z' })
      expect([late.code, flat(late.err)]).toEqual([2, expect.stringContaining('It was good until')])
    } finally {
      authority.close()
    }
  })

  it('says it for programs', async () => {
    const { out } = await bench(
      ['--no-open', '--json'],
      visited(async () => undefined),
    )
    expect(JSON.parse(out)).toMatchObject({ houseOrigins: [], workshop: file })
  })

  it.each(['-1', '65536', '4300.5', 'any', ''])('refuses the port %j', async (port) => {
    const ended = await tinwright(
      ['bench', '--port', port],
      {},
      visited(async () => undefined),
    )
    expect([ended.code, flat(ended.err)]).toEqual([
      2,
      expect.stringContaining('a whole number from 0 to 65535'),
    ])
  })

  it('opens no workshop that is newer or something else, and changes nothing of it', async () => {
    await (await open({ file })).close()
    const newer = new DatabaseSync(file)
    newer.exec('update workshop set format = 99')
    newer.exec('pragma user_version = 99')
    newer.close()
    for (const spoil of [() => undefined, () => writeFileSync(file, 'a shopping list')]) {
      spoil()
      const before = readFileSync(file)
      const ended = await bench(
        [],
        visited(async () => undefined),
      )
      expect([ended.code, ended.out]).toEqual([2, ''])
      expect(flat(ended.err)).toMatch(/newer|no workshop|is not a/)
      expect(readFileSync(file).equals(before)).toBe(true)
    }
  })
})

describe('the list of devices on the drive', () => {
  it('lies beside the workshop, for its owner alone', () => {
    const machine = { platform: 'linux', home: '/home/maker', variables: {} } as const
    expect(deviceListPath(machine, { file })).toBe(`${file}.devices.json`)
    const club = namedPlace('postgres://club/workshop')
    expect(deviceListPath(machine, club)).toBe('/home/maker/.local/share/tinwright/club.devices.json')
    const list = deviceFileAt(`${file}.devices.json`)
    expect(list.read()).toBeNull()
    list.write('one')
    list.write('two')
    expect(list.read()).toBe('two')
    if (process.platform !== 'win32') expect(statSync(`${file}.devices.json`).mode & 0o777).toBe(0o600)
  })
})

describe('tinwright devices', () => {
  const devices = (args: readonly string[]) =>
    tinwright(
      ['devices', ...args, '--workshop', file],
      {},
      visited(async () => undefined),
    )

  it('lists who was let in, and lets one in no longer', async () => {
    expect((await devices([])).out).toContain('No device is let in')
    const list = nodeBenchHost().devices({ file })
    const { token } = list.add('Phone')
    list.add('Tablet')
    const twin = list.add('Tablet')
    expect((await devices(['list'])).out).toMatch(
      /^ *Phone +since \d{4}-\d\d-\d\d +last seen \d{4}-\d\d-\d\d +[\da-f-]{36}$/m,
    )
    expect((await devices([])).out).not.toContain(token)
    const several = await devices(['revoke', 'Tablet'])
    expect([several.code, flat(several.err)]).toEqual([
      2,
      expect.stringContaining('which 2 devices are called'),
    ])
    expect((await devices(['revoke', twin.device.id, '--json'])).out).not.toContain(twin.device.id)
    expect((await devices(['revoke', 'Phone'])).code).toBe(0)
    expect(list.bearer(token)).toBeNull()
    expect(list.list().map(({ name }) => name)).toEqual(['Tablet'])
  })

  it.each([[['revoke']], [['revoke', 'Nobody']], [['list', 'Phone']], [['forget', 'Phone']]])(
    'will not do: %j',
    async (args) => {
      expect((await devices(args)).code).toBe(2)
    },
  )
})
