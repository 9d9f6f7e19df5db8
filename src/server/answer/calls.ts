import type { Answer, NoAnswer } from '#wire/answer.ts'
import { CALLS, type CallName, DOOR_CALLS, type DoorCallName, isCallName } from '#wire/calls.ts'
import { FRAME_TYPE, MAX_FRAME_HEAD, readFrame } from '#wire/frame.ts'
import { readRequest, refusedFor } from '#wire/requestProblems.ts'
import { isUploadName, UPLOADS } from '#wire/uploads.ts'
import type { Bench } from '../bench.ts'
import { checkType, readBody, WHOLE_REQUEST } from '../body/readBody.ts'
import { jsonOf } from '../body/readJsonBody.ts'
import { answerAtDoor, FOR_STRANGERS } from '../door/doorCalls.ts'
import type { Guest } from '../guest/guest.ts'
import { dispatch } from './dispatch.ts'
import { replyWith } from './reply.ts'
import { STATUS } from './status.ts'
import { guestProblem, type TurnedAway, turnAway } from './turnedAway.ts'

/** What became of a request: an answer, or a guest turned away. */
export type Outcome =
  | { readonly reply: Response; readonly answer?: Answer<unknown> }
  | { readonly away: TurnedAway }

const unknownCall = (name: string): TurnedAway =>
  turnAway(
    'unknown',
    guestProblem(
      'call',
      'the call',
      name,
      'a call that this bench knows',
      'Load the page again: it and the server may be of two versions.',
    ),
  )

export const notLetIn = (): TurnedAway =>
  turnAway(
    'not paired',
    guestProblem(
      'not-paired',
      'this device',
      'a device that was not let in',
      'devices that were let in by a code',
      'Ask for a code at the bench, and open /pair here.',
    ),
  )

/** A code and a name come at once, or a stranger holds the line. [ms] */
const STRANGERS_TIME = 20_000

const isDoorCall = (name: CallName): name is DoorCallName => Object.hasOwn(DOOR_CALLS, name)

const badRequest = (answer: NoAnswer): TurnedAway => ({
  status: STATUS[answer.refusal.code],
  answer,
  sentence: answer.refusal.sentence,
})

export const answerCall = async (
  bench: Bench,
  guest: Guest,
  name: string,
  request: Request,
): Promise<Outcome> => {
  if (!isCallName(name)) return { away: unknownCall(name) }
  const forStrangers = isDoorCall(name) && FOR_STRANGERS.includes(name)
  // Before a byte of the body is read.
  if (!guest.letIn && !forStrangers) return { away: notLetIn() }
  const wrongType = checkType(request, 'application/json', 'in UTF-8')
  if (wrongType !== null) return { away: wrongType }
  const call = CALLS[name]
  const body = await readBody(request, call.mostBytes, guest.letIn ? WHOLE_REQUEST : STRANGERS_TIME)
  if (!body.ok) return body
  const json = jsonOf(body.bytes)
  if (!json.ok) return json
  const read = readRequest<typeof call.request>(call, json.value)
  if (!read.ok) return { away: badRequest(read) }
  if (isDoorCall(name)) {
    const { answer, cookie } = await answerAtDoor(bench, guest, name, read.value)
    return { reply: replyWith(answer, cookie === undefined ? {} : { 'set-cookie': cookie }), answer }
  }
  const answer = await dispatch(bench.workshop, name, read.value)
  return { reply: replyWith(answer), answer }
}

export const answerUpload = async (
  { workshop }: Bench,
  guest: Guest,
  name: string,
  request: Request,
): Promise<Outcome> => {
  if (!isUploadName(name)) return { away: unknownCall(name) }
  if (!guest.letIn) return { away: notLetIn() }
  const wrongType = checkType(request, FRAME_TYPE, 'a frame')
  if (wrongType !== null) return { away: wrongType }
  const body = await readBody(request, UPLOADS[name].mostBytes + MAX_FRAME_HEAD)
  if (!body.ok) return body
  const frame = readFrame(body.bytes)
  if (!frame.ok) return { away: badRequest(refusedFor(frame.problems)) }
  const json = jsonOf(frame.value.words)
  if (!json.ok) return json
  const { bytes } = frame.value
  const answer = await (async (): Promise<Answer<unknown> | TurnedAway> => {
    if (name === 'attach') {
      const read = readRequest(UPLOADS.attach, json.value)
      return read.ok ? workshop.attach(read.value.act, { ...read.value.photo, bytes }) : badRequest(read)
    }
    const read = readRequest(UPLOADS.importArchive, json.value)
    return read.ok ? workshop.importArchive(read.value.act, bytes) : badRequest(read)
  })()
  return 'status' in answer ? { away: answer } : { reply: replyWith(answer), answer }
}
