import { BadInput, orThrow } from '#basis/problem.ts'
import { wrap } from '#compose/page/text.ts'
import type { HouseCertificate } from '#server/door/certificate.ts'
import type { House } from '#server/listen/houseDoors.ts'
import type { RunningBench } from '#server/openBench.ts'
import type { Workshop, WorkshopAbout } from '#store/workshop.ts'
import type { Answer } from '#wire/answer.ts'
import { WITHOUT_CERTIFICATE } from '#wire/door.ts'
import type { BenchHost, Served } from '../bench/host.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, readFile } from '../input.ts'

export interface BenchCommandOptions {
  readonly port: string
  readonly lan?: boolean
  readonly certificate?: string
  readonly key?: string
  readonly name?: string
  readonly workshop?: string
  readonly open: boolean
  readonly json?: boolean
}

const LAST_PORT = 65_535

const portFrom = (text: string): number => {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN
  if (port <= LAST_PORT) return port
  throw new BadInput([
    problemOf(
      'port.range',
      '--port',
      text,
      `a whole number from 0 to ${LAST_PORT}`,
      'Write one such as 4300; 0 takes any that is free.',
    ),
  ])
}

const taken = <T>(answer: Answer<T>, field: string, value: string, allowed: string): T => {
  if (answer.ok) return answer.value
  const { code, sentence } = answer.refusal
  throw new BadInput([problemOf(`bench.${code.replaceAll(' ', '-')}`, field, value, allowed, sentence)])
}

/** What the maker brought for the house's doors, read and found good; null where nothing was. */
const certificateFrom = (
  env: Environment,
  host: BenchHost,
  { lan, certificate, key, name }: BenchCommandOptions,
): HouseCertificate | null => {
  if (certificate === undefined && key === undefined && name === undefined) return null
  const lacking = (code: string, field: string, fix: string): BadInput =>
    new BadInput([problemOf(code, field, '', 'all of --lan, --certificate and --key, or --lan alone', fix)])
  if (lan !== true)
    throw lacking('bench.certificate-without-house', '--lan', 'This machine alone needs no certificate.')
  if (certificate === undefined)
    throw lacking('bench.no-certificate', '--certificate', 'Name the file that the key belongs to.')
  if (key === undefined)
    throw lacking('bench.no-key', '--key', 'Name the file with the private key of the certificate.')
  const brought = (path: string, field: string) => ({ path, text: readFile(env, path, field) })
  return orThrow(
    host.certificate(brought(certificate, '--certificate'), brought(key, '--key'), env.now(), name ?? null),
  )
}

const houseFrom = (env: Environment, host: BenchHost, options: BenchCommandOptions): House | null => {
  const certificate = certificateFrom(env, host, options)
  if (options.lan !== true) return null
  const found = host.houseAddresses()
  if (found.length === 0)
    throw new BadInput([
      problemOf(
        'bench.no-house',
        '--lan',
        'a machine without an address in a house',
        'a machine in a network of a house (10.…, 172.16.… to 172.31.…, 192.168.…, 169.254.…, fc00::/7)',
        'Join the network first, or leave --lan out.',
      ),
    ])
  if (certificate !== null && certificate.names.length === 0 && !found.some(certificate.covers))
    throw new BadInput([
      problemOf(
        'bench.certificate-of-another',
        '--certificate',
        options.certificate ?? '',
        `a certificate that names this machine: a name such as bench.example, or ${found.join(' or ')}`,
        certificate.patterns.length === 0
          ? 'Have one made with the name or address by which devices call this machine (subjectAltName).'
          : `It stands for ${certificate.patterns.join(', ')}: say with --name by which of these names devices call this machine.`,
      ),
    ])
  return { addresses: host.houseAddresses, certificate }
}

const bringDemo = async (
  env: Environment,
  host: BenchHost,
  workshop: Workshop,
  { place, demo: laid }: WorkshopAbout,
): Promise<number> => {
  if (laid !== null) return 0
  const act = { id: env.newId(), client: 'demo', at: env.now() }
  const demo = taken(
    await workshop.loadDemo(act, host.demo()),
    'the demo',
    place,
    'a workshop that can be written to',
  )
  return demo.added.length
}

/** How to let one device in; asked for again, another code. */
const showInvitation = async (
  env: Environment,
  host: BenchHost,
  bench: RunningBench,
  certificate: HouseCertificate | null,
): Promise<void> => {
  const invitation = await bench.invite()
  if (!invitation.ok) {
    env.err(`${wrap(invitation.refusal.sentence, env.width)}\n`)
    return
  }
  const { code, pages } = invitation.value
  const [page = ''] = pages
  const picture = host.qrLetters(page)
  const bare = (address: string): string => address.slice(0, address.indexOf('#'))
  env.out(
    `\n${wrap(`To let in one device of this house, within ten minutes: open ${pages.map(bare).join(' or ')} there and type ${code}${picture === null ? '.' : ', or scan this picture.'}`, env.width)}\n`,
  )
  if (picture !== null) env.out(`\n${picture}\n${wrap('Press Enter for another code.', env.width)}\n`)
  if (certificate !== null) {
    const until = certificate.until.slice(0, 10)
    env.out(
      `${wrap(`What passes between it and this machine is encrypted; the certificate is good until ${until}.`, env.width)}\n`,
    )
    return
  }
  env.out(
    `${wrap('What passes between it and this machine is not encrypted: do this only in a network whose people you trust.', env.width)}\n${wrap(WITHOUT_CERTIFICATE, env.width)}\n`,
  )
}

const showOpened = (
  env: Environment,
  { bench, built }: Served,
  { wanted, place, demo }: { readonly wanted: number; readonly place: string; readonly demo: number },
): void => {
  const { port, address } = bench
  if (wanted !== 0 && port !== wanted)
    env.out(`${wrap(`Port ${wanted} is in use; the bench took ${port}.`, env.width)}\n`)
  env.out(`The bench is open: ${address}\n${wrap(`The workshop is ${place}.`, env.width)}\n`)
  if (demo > 0)
    env.out(`${wrap(`It is new: ${demo} things of a demo were laid in, all of them invented.`, env.width)}\n`)
  if (!built)
    env.err(`${wrap('Its pages have not been built: run npm run build, then start it again.', env.width)}\n`)
}

/** Opens the bench in the browser, until it is stopped. */
export const bench = async (env: Environment, options: BenchCommandOptions): Promise<ExitCode> => {
  const host = await env.bench()
  const wanted = portFrom(options.port)
  const house = houseFrom(env, host, options)
  const place = host.place(options.workshop)
  const named = 'file' in place ? place.file : 'the server'
  const workshop = taken(
    await host.open(place),
    'the workshop',
    named,
    'a whole workshop that can be written to',
  )
  try {
    const about = taken(await workshop.about(), 'the workshop', named, 'a whole workshop')
    const demo = await bringDemo(env, host, workshop, about)
    const write = (line: string): void => env.err(`${line}\n`)
    const serving = { workshop, place, port: wanted, house, write, version: env.version }
    const served = taken(await host.serve(serving), '--port', options.port, 'a free port of this machine')
    const { bench: running } = served
    const stopped = host.untilStopped()
    if (options.json === true) {
      const { address, port, houseOrigins } = running
      env.out(
        `${JSON.stringify({ address, port, houseOrigins, workshop: about.place, built: served.built })}\n`,
      )
    } else showOpened(env, served, { wanted, place: about.place, demo })
    const inviting = house !== null && options.json !== true
    const show = (): Promise<void> => showInvitation(env, host, running, house?.certificate ?? null)
    if (inviting) await show()
    const ended = inviting ? host.onEnter(() => void show()) : () => undefined
    if (options.json !== true) env.out('End it with Ctrl+C.\n')
    if (options.open && served.built) host.openPage(running.address)
    await stopped
    ended()
    await running.close()
    if (options.json !== true) env.out('The bench is closed.\n')
    return EXIT.fine
  } finally {
    await workshop.close()
  }
}
