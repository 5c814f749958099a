import { currentSender } from '@/app/sender'
import type { RefusalCode } from '@/lib/kitchen/messages'
import { getPhoto } from '@/lib/kitchen/photos/get-photo'

/**
 * A photo as it stands in the book; small, for lists, with `?small`. Status: 401 not signed in, 403 role, 404 none here, 503
 * the book is away.
 */
export async function GET(request: Request, { params }: { params: Promise<{ photoId: string }> }): Promise<Response> {
  const caller = await currentSender(request)
  if (!caller) return new Response(null, { status: 401, headers: { 'Cache-Control': 'no-store' } })
  const { photoId } = await params
  const isSmall = new URL(request.url).searchParams.has('small')
  const found = await getPhoto.call(caller, { photoId, isSmall })
  if (!found.ok)
    return new Response(null, {
      status: statuses[found.refusal.code] ?? 404,
      headers: { 'Cache-Control': 'no-store' },
    })
  const { id, mediaType, bytes } = found.value
  return new Response(bytes, {
    headers: {
      'Content-Type': mediaType,
      'Content-Length': String(bytes.length),
      'Content-Disposition': `inline; filename="photo-${id}.jpg"`,
      // Signing out clears it.
      'Cache-Control': 'private, max-age=3600',
      Vary: 'Cookie',
      'X-Content-Type-Options': 'nosniff',
      'Content-Security-Policy': "default-src 'none'; sandbox",
      'Cross-Origin-Resource-Policy': 'same-origin',
    },
  })
}

const statuses: Partial<Record<RefusalCode, number>> = { 'not-signed-in': 401, 'not-allowed': 403, away: 503 }
