import { type Context, Hono } from 'hono'
import type { Answer } from '#wire/answer.ts'
import { refused } from '#wire/answer.ts'
import { API } from '#wire/routes.ts'
import { answerCall, answerUpload, notLetIn, type Outcome } from './answer/calls.ts'
import { sendArchive, sendPhoto } from './answer/downloads.ts'
import { safeHeaders } from './answer/headers.ts'
import { replyAway, replyWith } from './answer/reply.ts'
import { TROUBLE } from './answer/status.ts'
import { guestProblem, type TurnedAway, turnAway } from './answer/turnedAway.ts'
import { watching } from './answer/watching.ts'
import { serveAsset } from './asset/serveAsset.ts'
import type { Bench } from './bench.ts'
import { cookieAt, tokenIn } from './door/cookie.ts'
import { PAIR_PAGE } from './door/invite.ts'
import type { Entrance } from './guest/asked.ts'
import type { Guest } from './guest/guest.ts'

/** What the socket knows of a guest. */
export interface Came {
  readonly entrance: Entrance
  readonly address: string
}

interface Env {
  readonly Bindings: Came
  readonly Variables: { readonly guest: Guest }
}

const SAID_AT_ONCE = ['not allowed', 'not paired', 'too often']

/** Watchers at once: every window of every device has one. */
export const MOST_WATCHERS = 64

const notFound = (path: string): TurnedAway =>
  turnAway(
    'unknown',
    guestProblem(
      'path',
      'the path',
      path,
      'a page of the bench, or a file of one',
      'Open the bench at its beginning, /.',
    ),
  )

const BROKEN =
  'The bench broke over this. Whether it was done is not known: ask again with the same id, and it is not done twice. What went wrong stands in the terminal.'

const NOT_BUILT =
  'The pages of this bench have not been built. In its folder run npm run build, then start it again.\n'

/** Path of a page that the one page of the bench shows itself: nothing with an ending. */
const isPage = (path: string): boolean => !path.split('/').at(-1)?.includes('.')

export const benchApp = (bench: Bench): Hono<Env> => {
  const app = new Hono<Env>()
  /** The longest open one first. */
  const watchers = new Set<AbortController>()

  const turnedAway = (c: Context<Env>, away: TurnedAway): Response => {
    const { method, url } = c.req.raw
    const { pathname } = new URL(url)
    bench.log.refused({ address: c.env.address, method, target: pathname, sentence: away.sentence })
    return replyAway(away)
  }

  /** An ordinary refusal (a conflict, say) is between the page and its maker; a guest or trouble is not. */
  const tell = (c: Context<Env>, answer: Answer<unknown>): void => {
    if (answer.ok) return
    const { code, sentence } = answer.refusal
    if (!SAID_AT_ONCE.includes(code) && !TROUBLE.includes(code)) return
    const { address } = c.env
    bench.log.refused({ address, method: c.req.method, target: c.req.path, sentence })
  }

  const finish = (c: Context<Env>, outcome: Outcome): Response => {
    if ('away' in outcome) return turnedAway(c, outcome.away)
    if (outcome.answer !== undefined) tell(c, outcome.answer)
    return outcome.reply
  }

  const tokenOf = (c: Context<Env>): string | null =>
    tokenIn(c.req.header('cookie') ?? null, cookieAt(bench.cookie, c.env.entrance))

  app.use(async (c, next) => {
    const { entrance, address } = c.env
    const device = entrance.from === 'the house' ? bench.devices.bearer(tokenOf(c)) : null
    const letIn = entrance.from === 'this machine' || device !== null
    c.set('guest', { entrance, address, device, letIn })
    await next()
    for (const [name, value] of Object.entries(safeHeaders(entrance)))
      if (!c.res.headers.has(name)) c.res.headers.set(name, value)
  })

  app.post(`${API}upload/:name`, async (c) =>
    finish(c, await answerUpload(bench, c.get('guest'), c.req.param('name'), c.req.raw)),
  )
  app.post(`${API}:name`, async (c) =>
    finish(c, await answerCall(bench, c.get('guest'), c.req.param('name'), c.req.raw)),
  )

  app.use(`${API}*`, async (c, next) => {
    if (!c.get('guest').letIn) return turnedAway(c, notLetIn())
    return next()
  })

  app.get(`${API}watch`, async (c) => {
    const said = c.req.header('last-event-id') ?? c.req.query('since') ?? ''
    const since = /^\d{1,15}$/.test(said) ? Number(said) : null
    const about = await bench.workshop.about()
    if (!about.ok) {
      tell(c, about)
      return replyWith(about)
    }
    const { sequence } = about.value
    if (since === null || since > sequence)
      return turnedAway(
        c,
        turnAway(
          'bad input',
          guestProblem(
            'since',
            'since',
            said,
            `a whole number up to ${sequence}, where the workshop is`,
            'Load the page again.',
          ),
        ),
      )
    // A phone that has gone out of reach hangs up only when its line times out. It makes room; one that is
    // still there asks again.
    const [oldest] = watchers
    if (oldest !== undefined && watchers.size >= MOST_WATCHERS) {
      watchers.delete(oldest)
      oldest.abort()
    }
    const place = new AbortController()
    watchers.add(place)
    const { entrance } = c.env
    const token = tokenOf(c)
    return watching(c, {
      workshop: bench.workshop,
      since,
      over: AbortSignal.any([place.signal, bench.closing]),
      stillLetIn: () => entrance.from === 'this machine' || bench.devices.bearer(token) !== null,
      ended: () => {
        watchers.delete(place)
      },
      fault: bench.fault,
    })
  })

  app.get(`${API}photo/:id`, (c) => sendPhoto(bench.workshop, c.req.param('id'), c.req.raw))
  app.get(`${API}archive`, () => sendArchive(bench.workshop, bench.now()))
  app.all(`${API}*`, (c) => turnedAway(c, notFound(c.req.path)))

  app.get('*', (c) => {
    const { letIn } = c.get('guest')
    const { path } = c.req
    const pairing = bench.pairing.get(path)
    if (pairing !== undefined) return serveAsset(c.req.raw, pairing)
    // A stranger is shown the way in. The page itself would have nothing to show.
    if (isPage(path) && !letIn) return c.redirect(PAIR_PAGE, 303)
    const asset = bench.assets.get(path) ?? (isPage(path) ? bench.assets.get('/index.html') : undefined)
    if (asset !== undefined) return serveAsset(c.req.raw, asset)
    if (isPage(path) && bench.assets.size === 0) return c.text(NOT_BUILT, 503)
    return turnedAway(c, notFound(path))
  })
  app.notFound((c) => turnedAway(c, notFound(c.req.path)))

  app.onError((error) => {
    bench.fault(error)
    return replyWith(refused('broken', BROKEN))
  })
  return app
}
