import { stationPart, stationPolicy } from '@/app/station-files'
import { transportHeader } from '@/lib/auth/transport-header'

/** Read at each request, not at the build of the app, which comes before or after it. */
export const dynamic = 'force-dynamic'

/** The one document of a tablet: the same for everybody, and kept on the tablet by its worker. */
export function GET(): Response {
  const transport = transportHeader()
  return new Response(stationPart('document.html'), {
    headers: {
      'Content-Type': 'text/html; charset=utf-8',
      'Content-Security-Policy': stationPolicy,
      'Cache-Control': 'no-cache',
      ...(transport ? { 'Strict-Transport-Security': transport } : {}),
    },
  })
}
