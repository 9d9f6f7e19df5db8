import { say } from '../bench/notices.ts'
import { linkState } from '../workshop/link.ts'
import { allWritten } from '../workshop/underWay.ts'

const loadAnew = async (): Promise<void> => {
  await allWritten()
  location.reload()
}

/** This window asked for the newer bench; another one goes on with the one it has until its maker says so. */
let asked = false

const offerNewer = (worker: ServiceWorker): void =>
  say('There is a newer bench. What you did is kept.', {
    name: 'Load it',
    do: () => {
      asked = true
      // Another window may have asked first.
      if (worker.state === 'installed') worker.postMessage('take over')
      else void loadAnew()
    },
  })

const LOADED_ELSEWHERE =
  'Another window has loaded a newer bench. This one goes on as it is, and what you did is kept.'

/** The one that has just been fetched, or is still being fetched, is offered when it is whole. */
const follow = (worker: ServiceWorker | null): void =>
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && navigator.serviceWorker.controller !== null) offerNewer(worker)
  })

/** A workshop that answers again may be a newer one: it was ended, and started again. */
const lookWhenBack = (registration: ServiceWorkerRegistration): void => {
  let away = false
  linkState.subscribe(() => {
    const { kind } = linkState.get()
    if (kind === 'down') away = true
    if (kind !== 'up' || !away) return
    away = false
    // Out of reach again: it is looked for at the next visit.
    registration.update().catch(() => undefined)
  })
}

/** Keeps the pages in the browser, where it allows that: at this machine, or over HTTPS. */
export const keepPages = async (): Promise<void> => {
  if (!('serviceWorker' in navigator)) return
  const { serviceWorker } = navigator
  // On a first visit the page that is open is the newest already.
  let hadOne = serviceWorker.controller !== null
  serviceWorker.addEventListener('controllerchange', () => {
    if (asked) void loadAnew()
    else if (hadOne) say(LOADED_ELSEWHERE, { name: 'Load it', do: () => void loadAnew() })
    hadOne = true
  })
  try {
    const registration = await serviceWorker.register('/sw.js')
    if (registration.waiting !== null && hadOne) offerNewer(registration.waiting)
    follow(registration.installing)
    registration.addEventListener('updatefound', () => follow(registration.installing))
    lookWhenBack(registration)
  } catch {
    // Without it the bench needs its server to open, no more.
  }
}
