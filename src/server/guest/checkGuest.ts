import { API } from '#wire/routes.ts'
import { guestProblem, type TurnedAway, turnAway } from '../answer/turnedAway.ts'
import { type Asked, type Entrance, headerOf } from './asked.ts'

// Looks at a request before anything is made of it: who is called, from where, and for what kind of place.

const LONGEST_TARGET = 2000

const HOST = /^(\[[0-9a-f:.]+\]|[^\s:[\]@/\\?#]+)(?::\d{1,5})?$/i

/**
 * The name in `Host` has to be one of this machine's own. A page of a foreign name that is made to point here
 * (DNS rebinding) calls us by that name. The port says nothing about who asks, and a tunnel may change it.
 */
const checkHost = (asked: Asked, { names }: Entrance): TurnedAway | null => {
  const host = headerOf(asked, 'host')
  const name = HOST.exec(host ?? '')?.[1]?.toLowerCase()
  if (name !== undefined && names.includes(name)) return null
  const allowed = names.join(', ')
  return turnAway(
    'not allowed',
    guestProblem(
      'host',
      'Host',
      host,
      allowed,
      'Open the bench by the address that it prints when it starts.',
    ),
    421,
  )
}

const FORWARDED = ['forwarded', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip', 'via']

/** Through a proxy on this machine the whole world would seem to sit at it. */
const checkDirect = (asked: Asked, { from }: Entrance): TurnedAway | null => {
  if (from !== 'this machine') return null
  const found = FORWARDED.find((name) => headerOf(asked, name) !== null)
  if (found === undefined) return null
  return turnAway(
    'not allowed',
    guestProblem(
      'forwarded',
      found,
      headerOf(asked, found),
      'a request that comes straight from a browser at this machine',
      'Take the proxy away; let other devices in with --lan.',
    ),
  )
}

const PAGE_METHODS = ['GET', 'HEAD', 'POST']
/** A `HEAD` of what never ends, or of a whole archive, would be made for nobody. */
const CALL_METHODS = ['GET', 'POST']

const checkMethod = (asked: Asked): TurnedAway | null => {
  const { method } = asked
  const methods = isCall(asked) ? CALL_METHODS : PAGE_METHODS
  if (methods.includes(method)) return null
  const allowed = methods.join(', ')
  const problem = guestProblem('method', 'the method', method, allowed, 'Ask as the pages of the bench do.')
  return turnAway('not allowed', problem, 405, { allow: allowed })
}

/** Percent signs undone as often as anybody may have set them; null where they stand for no text. */
const plain = (path: string): string | null => {
  let text = path
  for (let n = 0; n < 3; n++) {
    try {
      const next = decodeURIComponent(text)
      if (next === text) return text
      text = next
    } catch {
      // A sign that was meant: `100%25`.
      return n === 0 ? null : text
    }
  }
  return text
}

const pathOf = ({ target }: Asked): string | null => plain(target.split('?')[0] ?? '')

/** Whether it is answered by the server alone, however its letters are written. */
const isCall = (asked: Asked): boolean => pathOf(asked)?.startsWith(API) ?? false

/** No path ever reaches a drive; one that tries to climb is no slip, and is told so. */
const checkTarget = (asked: Asked): TurnedAway | null => {
  const { target } = asked
  const refuse = (value: string, status = 400) =>
    turnAway(
      'not allowed',
      guestProblem(
        'path',
        'the path',
        value,
        'a path of the bench, without steps upwards, backslashes or control characters',
        'Follow the links of the bench.',
      ),
      status,
    )
  if (target.length > LONGEST_TARGET) return refuse(`${target.length} characters`, 414)
  const path = pathOf(asked)
  if (path === null) return refuse(target)
  // Nobody writes a plain `/api/` in percent signs but to slip past a check of it.
  if (path.startsWith(API) && !target.startsWith(API)) return refuse(target)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for
  const odd = /[\\\u0000-\u001f\u007f]/.test(path) || path.startsWith('//') || !path.startsWith('/')
  return odd || path.split('/').some((step) => step === '..' || step === '.') ? refuse(path) : null
}

/** A page elsewhere may link here. It may ask for nothing that is kept, nor change any of it. */
const checkOrigin = (asked: Asked, { scheme }: Entrance): TurnedAway | null => {
  if (!isCall(asked)) return null
  const own = `${scheme}://${headerOf(asked, 'host')?.toLowerCase()}`
  const fix = 'Only the pages of this bench may ask. Open the bench itself.'
  const origin = headerOf(asked, 'origin')
  if (origin !== null && origin.toLowerCase() !== own)
    return turnAway('not allowed', guestProblem('origin', 'Origin', origin, own, fix))
  const site = headerOf(asked, 'sec-fetch-site')
  // `none`: the person at the browser asked for it, with an address typed in. Nobody types in a change.
  const sites = asked.method === 'POST' ? ['same-origin'] : ['same-origin', 'none']
  if (site !== null && !sites.includes(site))
    return turnAway('not allowed', guestProblem('site', 'Sec-Fetch-Site', site, sites.join(' or '), fix))
  return null
}

/** Why a guest is turned away at once, or null. */
export const checkGuest = (asked: Asked, entrance: Entrance): TurnedAway | null =>
  checkHost(asked, entrance) ??
  checkDirect(asked, entrance) ??
  checkMethod(asked) ??
  checkTarget(asked) ??
  checkOrigin(asked, entrance)
