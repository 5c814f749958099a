import { currentCaller } from '@/app/caller'
import { getFile } from '@/lib/kitchen/evidence/get-file'
import type { RefusalCode } from '@/lib/kitchen/messages'

/**
 * The evidence of a trial as a file, to be checked elsewhere. Status: 401 not signed in, 403 role, 404 no such trial,
 * 409 where there is none to give, 503 the book is away.
 */
export async function GET(_: Request, { params }: { params: Promise<{ trialId: string }> }): Promise<Response> {
  const found = await getFile.call(await currentCaller(), await params)
  const headers = { 'Cache-Control': 'no-store' }
  if (!found.ok)
    return Response.json({ refusal: found.refusal.code }, { status: statuses[found.refusal.code] ?? 409, headers })
  return new Response(found.value.text, {
    headers: {
      ...headers,
      'Content-Type': 'application/json; charset=utf-8',
      'Content-Disposition': `attachment; filename="${found.value.name}"`,
    },
  })
}

const statuses: Partial<Record<RefusalCode, number>> = {
  'not-signed-in': 401,
  'not-allowed': 403,
  'not-found': 404,
  invalid: 404,
  away: 503,
}
