import type * as z from 'zod'
import { type Answer, given, refused } from '#wire/answer.ts'
import type { DOOR_CALLS, DoorCallName, ValueOf } from '#wire/calls.ts'
import type { Bench } from '../bench.ts'
import type { Guest } from '../guest/guest.ts'
import { cookieAt, endCookie, setCookie } from './cookie.ts'
import { invite } from './invite.ts'

type Read<N extends DoorCallName> = z.output<(typeof DOOR_CALLS)[N]['request']>

/** The answer, and the cookie that goes with it. */
export interface DoorAnswer<T> {
  readonly answer: Answer<T>
  readonly cookie?: string
}

type DoorHandlers = {
  readonly [N in DoorCallName]: (
    bench: Bench,
    guest: Guest,
    request: Read<N>,
  ) => DoorAnswer<ValueOf<N>> | Promise<DoorAnswer<ValueOf<N>>>
}

/** What a stranger may ask. */
export const FOR_STRANGERS: readonly DoorCallName[] = ['door', 'pair', 'leave']

const SETTLED_ELSEWHERE: DoorAnswer<never> = {
  answer: refused(
    'not allowed',
    'Who is let in is settled at the machine that the bench runs on. Nothing was changed.',
  ),
}

const atThisMachine = <T>({ entrance }: Guest, answer: () => Answer<T>): DoorAnswer<T> =>
  entrance.from === 'this machine' ? { answer: answer() } : SETTLED_ELSEWHERE

const WRONG =
  'This code will not do: it is mistyped, was used already, or is over. Nothing was changed. Look at it again, or ask for a new one at the bench.'
const TOO_OFTEN =
  'Too many codes from this device were wrong. Nothing was changed. Wait ten minutes, then ask for a new code at the bench.'

export const DOOR_HANDLERS: DoorHandlers = {
  door: ({ house, version }, { entrance, device, letIn }) => ({
    answer: given({
      from: entrance.from,
      letIn,
      device: device?.name ?? null,
      house: house !== null,
      encrypted: house === null ? null : house.certificate !== null,
      version,
    }),
  }),
  pair: ({ invitations, devices, cookie }, { entrance, address }, { code, name }) => {
    if (entrance.from === 'this machine')
      return { answer: refused('conflict', 'This is the machine that the bench runs on: it needs no code.') }
    const taken = invitations.take(code, address)
    if (taken !== 'let in')
      return {
        answer: taken === 'wrong' ? refused('not paired', WRONG) : refused('too often', TOO_OFTEN),
      }
    const { device, token } = devices.add(name)
    return { answer: given(device), cookie: setCookie(cookieAt(cookie, entrance), token) }
  },
  leave: ({ devices, cookie }, { device, entrance }) => {
    if (device !== null) devices.revoke(device.id)
    return { answer: given(null), cookie: endCookie(cookieAt(cookie, entrance)) }
  },
  invite: async (bench, guest) =>
    guest.entrance.from === 'this machine' ? { answer: await invite(bench) } : SETTLED_ELSEWHERE,
  devices: ({ devices }, guest) => atThisMachine(guest, () => given(devices.list())),
  revoke: ({ devices }, guest, { device }) =>
    atThisMachine(guest, () =>
      devices.revoke(device)
        ? given(devices.list())
        : refused('unknown', `No device ${device} is let in. Nothing was changed.`),
    ),
}

/** Does a call at the door whose request has been read by its schema. */
export const answerAtDoor = async (
  bench: Bench,
  guest: Guest,
  name: DoorCallName,
  request: unknown,
): Promise<DoorAnswer<unknown>> =>
  (
    DOOR_HANDLERS[name] as (
      bench: Bench,
      guest: Guest,
      request: unknown,
    ) => DoorAnswer<unknown> | Promise<DoorAnswer<unknown>>
  )(bench, guest, request)
