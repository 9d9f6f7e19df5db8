import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { networkInterfaces } from 'node:os'
import { join } from 'node:path'
import { TALLY_FILE } from '#scripts/gate/reporter.ts'
import { houseAddresses } from '#server/door/house.ts'
import { needs } from '../../outsideProgram.ts'

const root = join(import.meta.dirname, '..', '..', '..')

/** Whether this machine has an address that a phone of the house could call it by. */
export const isInHouse = (): boolean => houseAddresses(networkInterfaces()).length > 0

/** A network of its own, with nothing in it but this machine: no address of the real ones is touched. */
const ALONE = ['--net', '--map-root-user']

/** Of the kinds of link, the first that this system has; then whatever stands behind it runs there. */
const INTO_HOUSE = `
ip link set lo up
for kind in 'veth peer name other' bridge dummy; do
  ip link add house type $kind && break
done
ip link set other up
ip address add 192.168.77.1/24 dev house && ip link set house up && exec "$@"`

/** Set inside, where a network that is still missing would be looked for without end. */
const INSIDE = 'TINWRIGHT_IN_A_HOUSE_OF_ITS_OWN'

/** A run of the tests tells its own tally and knows nothing of the one around it. */
const ownSurroundings = (): NodeJS.ProcessEnv => ({
  ...Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !name.startsWith('VITEST') && name !== TALLY_FILE),
  ),
  [INSIDE]: 'yes',
})

/** What a machine that is in no network has to be able to do; as `needs`, a failure on the build machine. */
export const needsOwnNetwork = (test: { readonly skip: (reason: string) => unknown }): void => {
  needs(test, 'ip', 'unshare')
  if (process.env[INSIDE] !== undefined) throw new Error('The network that was made has no address')
  const { status, stderr } = spawnSync('unshare', [...ALONE, 'true'], { encoding: 'utf8' })
  if (status === 0) return
  const reason = `this machine is in no network of a house, and may not make one of its own: ${stderr.trim()}`
  if (process.env.CI === 'true') throw new Error(reason)
  test.skip(reason)
}

/** Runs a file of tests in a house that has this machine alone in it. */
export const runInHouse = async (
  file: string,
): Promise<{ readonly status: number | null; readonly said: string }> => {
  const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs')
  const args = [...ALONE, 'sh', '-c', INTO_HOUSE, 'sh', process.execPath, vitest, 'run', file]
  const child = spawn('unshare', args, {
    cwd: root,
    env: ownSurroundings(),
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let said = ''
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk) => {
      said += chunk
    })
  const [status] = await once(child, 'close')
  return { status, said }
}
