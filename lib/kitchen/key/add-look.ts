import 'server-only'
import type { Tx } from '../../db/client'
import type { LookedAt } from '../../db/generated/enums'
import { dayInZone } from '../day-in-zone'
import { dateOfDay } from '../day-of-date'

/** Keeps that a person looked. @returns whether it is the first time on the bakery's day; two processes at once agree */
export async function addLook(
  tx: Tx,
  q: { bakeryId: string; trialId: string; personId: string; what: LookedAt; timeZone: string; now: Date },
): Promise<boolean> {
  const { timeZone, now, ...look } = q
  const { count } = await tx.look.createMany({
    data: { ...look, day: dateOfDay(dayInZone(now, timeZone)), at: now },
    skipDuplicates: true,
  })
  return count === 1
}
