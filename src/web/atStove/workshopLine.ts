import { callPath } from '#wire/routes.ts'
import { client, uploader } from '../workshop/link.ts'
import { workshop } from '../workshop/workshop.ts'
import type { Line } from './courier.ts'
import { thisDevice } from './device.ts'

/** Half a second: the clock in an answer's head is told in whole ones [ms]. */
const HALF = 500

const ahead = async (): Promise<number | null> => {
  const from = Date.now()
  try {
    const answer = await fetch(callPath('door'), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{}',
      cache: 'no-store',
    })
    const to = Date.now()
    const date = Date.parse(answer.headers.get('date') ?? '')
    return Number.isNaN(date) ? null : date + HALF - (from + to) / 2
  } catch {
    return null
  }
}

/** The workshop, as a phone at the stove reaches it. */
export const workshopLine = (): Line => ({
  open: workshop.open,
  logEvents: (batch) => client.call('logEvents', batch),
  events: (trial, since) => client.call('events', { trial, since }),
  attach: ({ id, revision, act, trial, name, at, bytes }) =>
    uploader.upload(
      'attach',
      { act: { id: act, client: thisDevice(), at }, photo: { id, revision, name, aboutDocument: trial } },
      bytes,
    ),
  ahead,
})
