import type { Changes } from '#wire/changes.ts'
import { watchPath } from '#wire/routes.ts'
import { readWatch } from '#wire/watch.ts'
import { client, linkDown, linkState } from './link.ts'

export interface Watching {
  /** Last change that this page has heard of. */
  readonly since: () => number
  /** The workshop answers, for the first time or again. */
  readonly opened: () => void | Promise<void>
  /** The workshop would not go on from where this page was. */
  readonly lost: () => void
  readonly changes: (changes: Changes) => void
}

/** What the window with the stream tells the others: how the line stands, or the number of the last change. */
type Word = 'opened' | 'down' | 'lost' | number

const NAME = 'tinwright.watch'
/** After a line was lost for good, so long until the next try. [ms] */
const AGAIN = 2000

/** The stream itself, taken up again for as long as the signal is not given. */
const stream = (watching: Watching, tell: (word: Word) => void, signal: AbortSignal): void => {
  if (signal.aborted) return
  const { since, changes } = watching
  const over = new AbortController()
  const source = new EventSource(watchPath(since()))
  signal.addEventListener('abort', () => source.close(), { signal: over.signal })
  const again = (): void => {
    source.close()
    over.abort()
    setTimeout(() => stream(watching, tell, signal), AGAIN)
  }
  source.addEventListener('open', () => tell('opened'))
  source.addEventListener('changes', ({ data }: MessageEvent<string>) => {
    const read = readWatch('changes', data)
    if (!read.ok) return
    changes(read.value)
    tell(read.value.sequence)
  })
  source.addEventListener('refusal', again)
  source.addEventListener('error', () => {
    tell('down')
    if (source.readyState !== EventSource.CLOSED) return
    tell('lost')
    again()
  })
}

/** Until the signal: with a stream of its own, or told by the window that has it. */
const listen = ({ since, opened, lost, changes }: Watching, signal: AbortSignal): void => {
  // What was asked for earlier may come in later.
  const newer = (news: Changes): void => {
    if (!signal.aborted && news.sequence >= since()) changes(news)
  }
  const catchUp = async (): Promise<void> => {
    const sequence = since()
    const answer = await client.call('changesSince', { sequence })
    if (!answer.ok || signal.aborted) return
    if (answer.value.sequence >= sequence) newer(answer.value)
    else {
      // Set back to an older copy while nobody here listened.
      lost()
      await opened()
    }
  }
  const heard = async (word: Word): Promise<void> => {
    if (word === 'down') {
      if (linkState.get().kind === 'up') linkDown()
    } else if (word === 'lost') lost()
    else if (word === 'opened') await opened()
    else if (word > since()) await catchUp()
  }
  const comeBack = async (): Promise<void> => {
    await opened()
    await catchUp()
  }
  const others = new BroadcastChannel(NAME)
  others.onmessage = ({ data }: MessageEvent<Word>) => void (data === 'opened' ? comeBack() : heard(data))
  const tell = (word: Word): void => {
    if (signal.aborted) return
    others.postMessage(word)
    void heard(word)
  }
  const own = { since, opened, lost, changes: newer }
  const gone = new Promise<void>((resolve) => signal.addEventListener('abort', () => resolve()))
  void gone.then(() => others.close())
  // Over plain HTTP there are no locks. There each window that is seen has a stream: on a phone that is one.
  if ('locks' in navigator)
    navigator.locks
      .request(NAME, { signal }, () => {
        stream(own, tell, signal)
        return gone
      })
      .catch(() => undefined)
  else stream(own, tell, signal)
  // What went by while nobody here listened.
  void comeBack()
}

/**
 * Listens to what changes in the workshop, for as long as the page lives. A browser opens six lines to one host
 * (HTTP/1.1), and a stream holds one: so one window of those that are seen has a stream and tells the others, and a
 * window that is not seen has none and asks when it is seen again.
 */
export const watchWorkshop = (watching: Watching): void => {
  let seen: AbortController | null = null
  const look = (): void => {
    if (document.visibilityState === 'hidden') {
      seen?.abort()
      seen = null
    } else if (seen === null) {
      seen = new AbortController()
      listen(watching, seen.signal)
    }
  }
  document.addEventListener('visibilitychange', look)
  look()
}
