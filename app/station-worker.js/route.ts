import { stationPart } from '@/app/station-files'

/** Read at each request, not at the build of the app, which comes before or after it. */
export const dynamic = 'force-dynamic'

/** The worker that keeps a tablet's document. It lies at the root, and asks for no more than `/station` by itself. */
export function GET(): Response {
  return new Response(stationPart('worker.js'), {
    headers: {
      'Content-Type': 'text/javascript; charset=utf-8',
      'Content-Security-Policy': "default-src 'none'; connect-src 'self'",
      'Cache-Control': 'no-cache',
    },
  })
}
