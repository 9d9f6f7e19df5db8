import type { Answer } from '#wire/answer.ts'
import { NOT_KEPT } from './headers.ts'
import { STATUS } from './status.ts'
import type { TurnedAway } from './turnedAway.ts'

const JSON_TYPE = { 'content-type': 'application/json; charset=utf-8', ...NOT_KEPT }

export const replyWith = (answer: Answer<unknown>, fields: Readonly<Record<string, string>> = {}): Response =>
  new Response(JSON.stringify(answer), {
    status: answer.ok ? 200 : STATUS[answer.refusal.code],
    headers: { ...JSON_TYPE, ...fields },
  })

export const replyAway = ({ status, answer, fields = {} }: TurnedAway): Response =>
  new Response(JSON.stringify(answer), { status, headers: { ...JSON_TYPE, ...fields } })
