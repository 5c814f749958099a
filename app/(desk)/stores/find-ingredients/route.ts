import { currentCaller } from '@/app/caller'
import type { RefusalCode } from '@/lib/kitchen/messages'
import { findIngredients } from '@/lib/kitchen/stores/find-ingredients'

/**
 * Ingredients for a field that searches them: `?part=` is what was typed of a name, each `&id=` one that the form holds
 * already; without a part, those ids. Answers what `stores.find-ingredients` does, as JSON, to whoever is signed in.
 * Status: 401 not signed in, 403 role, 503 the book is away, 422 another question.
 */
export async function GET(request: Request): Promise<Response> {
  const asked = new URL(request.url).searchParams
  const found = await findIngredients.call(await currentCaller(), { part: asked.get('part'), ids: asked.getAll('id') })
  const headers = { 'Cache-Control': 'no-store' }
  if (found.ok) return Response.json(found.value, { headers })
  return Response.json({ refusal: found.refusal.code }, { status: statuses[found.refusal.code] ?? 422, headers })
}

const statuses: Partial<Record<RefusalCode, number>> = { 'not-signed-in': 401, 'not-allowed': 403, away: 503 }
