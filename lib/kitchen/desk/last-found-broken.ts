import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Db } from '../../db/client'

/** Where the record does not fit together, as the install last found it; null where it does, or nobody could tell. */
export async function lastFoundBroken(db: Db, { bakeryId }: DeskActor) {
  const check = await db.recordCheck.findUnique({
    where: { bakeryId },
    select: { at: true, fault: true, faultNumber: true },
  })
  if (!check || check.fault === null || check.fault === 'unknown_format') return null
  return { at: check.at, number: Number(check.faultNumber), why: check.fault }
}
