import { say } from '../bench/notices.ts'

const offerNewer = (worker: ServiceWorker): void =>
  say('There is a newer bench. What you did is kept.', {
    name: 'Load it',
    do: () => worker.postMessage('take over'),
  })

/** Keeps the pages in the browser, where it allows that: at this machine, or over HTTPS. */
export const keepPages = async (): Promise<void> => {
  if (!('serviceWorker' in navigator)) return
  const { serviceWorker } = navigator
  const firstVisit = serviceWorker.controller === null
  serviceWorker.addEventListener('controllerchange', () => {
    // On a first visit the page that is open is the newest already.
    if (!firstVisit) location.reload()
  })
  try {
    const registration = await serviceWorker.register('/sw.js')
    if (registration.waiting !== null && !firstVisit) offerNewer(registration.waiting)
    registration.addEventListener('updatefound', () => {
      const worker = registration.installing
      worker?.addEventListener('statechange', () => {
        if (worker.state === 'installed' && serviceWorker.controller !== null) offerNewer(worker)
      })
    })
  } catch {
    // Without it the bench needs its server to open, no more.
  }
}
