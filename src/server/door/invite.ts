import { type Answer, given, refused } from '#wire/answer.ts'
import type { Invitation } from '#wire/door.ts'
import type { Bench } from '../bench.ts'
import { qrPicture } from './picture.ts'

/** The page that takes the code. Behind the `#` it stays in the browser: no server and no log ever sees it. */
export const PAIR_PAGE = '/pair'

export const invite = ({ invitations, houseOrigins, now }: Bench): Answer<Invitation> => {
  const origins = houseOrigins()
  if (origins.length === 0)
    return refused(
      'not allowed',
      'The bench is closed to the house. Nothing was changed. Start it with --lan to let other devices in.',
    )
  const { code, lasts } = invitations.begin()
  const pages = origins.map((origin) => `${origin}${PAIR_PAGE}#${code}`)
  const until = new Date(Date.parse(now()) + lasts).toISOString()
  return given({ code, until, pages, pictures: pages.map(qrPicture) })
}
