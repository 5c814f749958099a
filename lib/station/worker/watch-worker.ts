import { tablet } from '../keep/tablet'

let waiting: ServiceWorker | null = null
const listeners = new Set<() => void>()

/** Lets the worker keep the page, and hears of a newer one. It takes over by itself only while nothing waits to be sent. */
export async function watchWorker(): Promise<void> {
  const hadOne = navigator.serviceWorker.controller !== null
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    // The first worker is of this very build; a later one brings a page that fits it.
    if (hadOne) window.location.reload()
  })
  const registration = await navigator.serviceWorker.register('/station-worker.js', { scope: '/station' })
  const hear = async () => {
    const worker = registration.waiting
    if (!worker || !navigator.serviceWorker.controller) return
    waiting = worker
    for (const listen of listeners) listen()
    if ((await tablet.outbox.where('state').equals('waiting').count()) === 0) takeOver()
  }
  registration.addEventListener('updatefound', () => {
    const { installing } = registration
    installing?.addEventListener('statechange', () => void hear())
  })
  await hear()
}

/** Lets the newer worker take over; the page loads anew, with everything that is on the tablet. */
export function takeOver(): void {
  waiting?.postMessage('take-over')
}

/** Whether a newer page waits. */
export function isNewerThere(): boolean {
  return waiting !== null
}

/** @returns how to stop listening */
export function listenNewer(listen: () => void): () => void {
  listeners.add(listen)
  return () => listeners.delete(listen)
}
