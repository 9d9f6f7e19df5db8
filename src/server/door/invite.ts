import { type Answer, given, type NoAnswer, refused } from '#wire/answer.ts'
import type { Invitation } from '#wire/door.ts'
import type { Bench } from '../bench.ts'
import { qrPicture } from './picture.ts'

/** The page that takes the code. Behind the `#` it stays in the browser: no server and no log ever sees it. */
export const PAIR_PAGE = '/pair'

const notNow = (sentence: string): NoAnswer => refused('not allowed', `${sentence} Nothing was changed.`)

/** A code for one device, and where this machine is found just now: its addresses may have changed since it started. */
export const invite = async ({ invitations, house, now }: Bench): Promise<Answer<Invitation>> => {
  if (house === null)
    return notNow('The bench is closed to the house. Start it with --lan to let other devices in.')
  const { certificate } = house
  if (certificate !== null && Date.parse(certificate.until) <= Date.parse(now()))
    return notNow(
      `The certificate was good until ${certificate.until.slice(0, 10)}: no device would trust the bench. Start it again with a new one.`,
    )
  await house.look()
  const origins = house.origins()
  if (origins.length === 0)
    return notNow(
      !house.open()
        ? 'This machine is in no network of a house just now. Join one, then ask again.'
        : 'The certificate stands for no address that this machine has now: no device would trust the bench. Start it again with one that does.',
    )
  const { code, lasts } = invitations.begin()
  const pages = origins.map((origin) => `${origin}${PAIR_PAGE}#${code}`)
  const until = new Date(Date.parse(now()) + lasts).toISOString()
  return given({ code, until, pages, pictures: pages.map(qrPicture) })
}
