import { answersFor } from './answers-for'

declare const BUILD: string
declare const KEPT_FILES: readonly string[]

// The page's types are loaded for everything; those of a worker differ in just these.
type Late = Event & { waitUntil(work: Promise<unknown>): void }
type Asked = Late & { request: Request; respondWith(answer: Promise<Response>): void }
type Scope = {
  skipWaiting(): Promise<void>
  clients: { claim(): Promise<void> }
  addEventListener(type: 'install' | 'activate', listen: (event: Late) => void): void
  addEventListener(type: 'fetch', listen: (event: Asked) => void): void
  addEventListener(type: 'message', listen: (event: MessageEvent) => void): void
}
const scope = self as unknown as Scope
const prefix = 'station-'
const own = `${prefix}${BUILD}`

scope.addEventListener('install', (event) =>
  event.waitUntil(
    (async () => {
      const cache = await caches.open(own)
      await cache.addAll(['/station', ...KEPT_FILES].map((address) => new Request(address, { cache: 'no-cache' })))
    })(),
  ),
)

scope.addEventListener('activate', (event) =>
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) if (name.startsWith(prefix) && name !== own) await caches.delete(name)
      await scope.clients.claim()
    })(),
  ),
)

// A new worker takes over when the page says so: nothing waits to be sent, or somebody tapped.
scope.addEventListener('message', (event) => {
  if (event.data === 'take-over') void scope.skipWaiting()
})

scope.addEventListener('fetch', (event) => {
  const address = answersFor(event.request, self.location.origin, KEPT_FILES)
  if (address !== null)
    event.respondWith((async () => (await (await caches.open(own)).match(address)) ?? (await fetch(event.request)))())
})
