/**
 * Keeps the pages of the bench in the browser, so that they open without the server. What the workshop says is
 * never kept here: the page has a keep of its own for that (workshop/keep.ts).
 *
 * A page and its parts are of one build always: a newer bench is fetched beside the old one and waits until the
 * maker says so, or until the last window of the old one is closed. This file imports nothing; the builder
 * writes the list of what there is into it (vite.config.ts).
 */

interface Lasting {
  readonly waitUntil: (work: Promise<unknown>) => void
}

interface Fetching extends Lasting {
  readonly request: Request
  readonly respondWith: (response: Promise<Response>) => void
}

interface Told extends Lasting {
  readonly data: unknown
}

/** As much of a service worker's surroundings as is used here: the compiler has a page in mind. */
interface Surroundings {
  readonly addEventListener: {
    (name: 'install' | 'activate', listen: (event: Lasting) => void): void
    (name: 'fetch', listen: (event: Fetching) => void): void
    (name: 'message', listen: (event: Told) => void): void
  }
  readonly clients: { readonly claim: () => Promise<void> }
  readonly skipWaiting: () => Promise<void>
  readonly location: Location
}

const here = globalThis as unknown as Surroundings

/** Put in by the builder: a mark of the build, and the path of every file of it. */
const BUILD = '__BUILD__'
const FILES = '__FILES__'.split(' ')

const MINE = 'tinwright.pages.'
const CACHE = `${MINE}${BUILD}`
const PAGE = '/index.html'
const API = '/api/'
/** Files with a mark of what is in them in their name. */
const PARTS = '/assets/'

/** Parts are taken over from an older build where they are the same; the rest is fetched. */
const fill = async (): Promise<void> => {
  const cache = await caches.open(CACHE)
  await Promise.all(
    FILES.map(async (file) => {
      const known = file.startsWith(PARTS) ? await caches.match(file) : undefined
      const response = known ?? (await fetch(file, { cache: 'no-cache' }))
      // A way in for strangers in place of the page is no page.
      if (!response.ok || response.redirected) throw new Error(`${file} could not be fetched`)
      await cache.put(file, response)
    }),
  )
}

/** The two before this one stay: windows that go on with one of them fetch its parts when they need them. */
const clearOlder = async (): Promise<void> => {
  // In the order in which they were made.
  const older = (await caches.keys()).filter((name) => name.startsWith(MINE) && name !== CACHE)
  await Promise.all(older.slice(0, -2).map((name) => caches.delete(name)))
}

/** A part of this build, or of one before it: their names differ where they do. */
const partFromCache = async (path: string, request: Request): Promise<Response> =>
  (await caches.match(path)) ?? fetch(request)

const fromCache = async (path: string, request: Request): Promise<Response> => {
  const cache = await caches.open(CACHE)
  return (await cache.match(path)) ?? fetch(request)
}

here.addEventListener('install', (event) => event.waitUntil(fill()))

here.addEventListener('activate', (event) => event.waitUntil(clearOlder().then(() => here.clients.claim())))

here.addEventListener('message', ({ data }) => {
  if (data === 'take over') void here.skipWaiting()
})

here.addEventListener('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== here.location.origin || pathname.startsWith(API)) return
  if (pathname.startsWith(PARTS)) event.respondWith(partFromCache(pathname, request))
  else if (FILES.includes(pathname)) event.respondWith(fromCache(pathname, request))
  else if (request.mode === 'navigate' && !pathname.split('/').at(-1)?.includes('.'))
    event.respondWith(fromCache(PAGE, request))
})
