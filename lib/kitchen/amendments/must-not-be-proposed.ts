import 'server-only'
import type { Tx } from '../../db/client'
import { formatDateTime } from '../../words/format/date'
import { Refusal } from '../refusal'
import type { Amendment } from './load-amendments'

/** Refuses what somebody proposed already and nobody has decided on: amendment-waits-already, which says who and when. */
export async function mustNotBeProposed(
  tx: Tx,
  bakeryId: string,
  all: readonly Amendment[],
  isSame: (change: Amendment['change']) => boolean,
): Promise<void> {
  const open = all.find(({ verdict, change }) => verdict === null && isSame(change))
  if (!open) return
  const bakery = await tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { locale: true, timeZone: true } })
  throw new Refusal('amendment-waits-already', {
    who: open.by.name,
    at: formatDateTime(new Date(open.at), bakery),
  })
}
