import { BadInput } from '#basis/problem.ts'
import { columns, page, wrap } from '#compose/page/text.ts'
import type { Device } from '#wire/door.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf } from '../input.ts'

export interface DevicesOptions {
  readonly workshop?: string
  readonly json?: boolean
}

const show = (env: Environment, devices: readonly Device[], { json }: DevicesOptions): void => {
  if (json === true) {
    env.out(`${JSON.stringify({ devices }, null, 2)}\n`)
    return
  }
  const row = ({ name, since, seen, id }: Device): readonly string[] => [
    name,
    `since ${since.slice(0, 10)}`,
    `last seen ${seen}`,
    id,
  ]
  const text =
    devices.length === 0
      ? wrap('No device is let in: `tinwright bench --lan` says how one is.', env.width)
      : columns(devices.map(row), ['left', 'left', 'left', 'left'], env.width)
  env.out(page(text))
}

/** The one that is meant, by id or by a name that no other bears. */
const meant = (devices: readonly Device[], word: string): Device => {
  const found = devices.filter(({ id, name }) => id === word || name === word)
  const [one] = found
  if (one !== undefined && found.length === 1) return one
  throw new BadInput([
    problemOf(
      found.length === 0 ? 'devices.unknown' : 'devices.several',
      'the device',
      found.length === 0 ? word : `${word}, which ${found.length} devices are called,`,
      devices.length === 0
        ? 'none: no device is let in'
        : `one of ${devices.map(({ id, name }) => `${name} (${id})`).join(', ')}`,
      'Name one by its id.',
    ),
  ])
}

/** Who in the house was let in to the bench; or one of them no longer, at once, even while the bench is open. */
export const devices = async (
  env: Environment,
  task: string,
  device: string | undefined,
  options: DevicesOptions,
): Promise<ExitCode> => {
  const host = await env.bench()
  const list = host.devices(host.place(options.workshop))
  if (task === 'revoke' && device !== undefined) list.revoke(meant(list.list(), device).id)
  else if (task !== 'list' || device !== undefined)
    throw new BadInput([
      problemOf(
        'devices.task',
        'devices',
        device === undefined ? task : `${task} ${device}`,
        'list, or revoke DEVICE',
        'Name what to do, and the device that is to be let in no longer.',
      ),
    ])
  show(env, list.list(), options)
  return EXIT.fine
}
