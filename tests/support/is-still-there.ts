import type { Actor } from '@/lib/auth/actor'
import { stillOf } from '@/lib/auth/still-of'
import { db } from '@/lib/db/client'

/** Whether the record would still take an entry of somebody who was found. */
export async function isStillThere(actor: Actor, now: Date): Promise<boolean> {
  const bakeryId = 'bakeryId' in actor ? actor.bakeryId : null
  const [row] = await db().$queryRaw<{ isThere: boolean }[]>`
    SELECT is_still_there(${bakeryId}::uuid, ${JSON.stringify(stillOf(actor))}::jsonb, ${now}::timestamptz) AS "isThere"`
  return row?.isThere === true
}
