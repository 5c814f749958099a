import 'server-only'
import type { ActorOf } from '../../auth/rights'
import type { Tx } from '../../db/client'
import { photoRoomBytes } from '../../db/settings'
import { Refusal } from '../refusal'

/** More than anybody takes on purpose: whoever sends more is stuck, or means harm. */
export const photoLimits = {
  /** That one person, or one tablet, has under way at a time. */
  onTheWay: 12,
  /** From one person, or one tablet. */
  anHour: 120,
  ofOneDough: 100,
  ofOneLabel: 10,
}
const hourMs = 60 * 60_000

/**
 * Refuses a photo that there is no room for: of this dough or label, from this person or tablet, or in the book.
 * @throws Refusal too-many-photos, dough-full-of-photos, label-full-of-photos, no-room-for-photos
 */
export async function mustHaveRoom(
  tx: Tx,
  actor: ActorOf<'log-reading'>,
  said: { batchId: string | null; ingredientId: string | null; lotCode: string | null; sentBytes: number },
  now: Date,
): Promise<void> {
  const { bakeryId, personId } = actor
  const by = [{ personId }, ...(actor.kind === 'station' ? [{ stationId: actor.stationId }] : [])]
  for (const whose of by) {
    const onTheWay = await tx.comingPhoto.count({ where: { bakeryId, ...whose } })
    const since = new Date(now.getTime() - hourMs)
    const lately = await tx.photo.count({ where: { bakeryId, ...whose, receivedAt: { gt: since } } })
    if (onTheWay >= photoLimits.onTheWay || lately + onTheWay >= photoLimits.anHour)
      throw new Refusal('too-many-photos')
  }
  const { batchId, ingredientId, lotCode } = said
  const where = batchId === null ? { bakeryId, ingredientId, lotCode } : { bakeryId, batchId }
  const ofSame = (await tx.photo.count({ where })) + (await tx.comingPhoto.count({ where }))
  if (batchId === null && ofSame >= photoLimits.ofOneLabel)
    throw new Refusal('label-full-of-photos', { count: photoLimits.ofOneLabel })
  if (batchId !== null && ofSame >= photoLimits.ofOneDough)
    throw new Refusal('dough-full-of-photos', { count: photoLimits.ofOneDough })
  const [kept, coming] = [
    await tx.photo.aggregate({ where: { bakeryId }, _sum: { bytes: true } }),
    await tx.comingPhoto.aggregate({ where: { bakeryId }, _sum: { sentBytes: true } }),
  ]
  if ((kept._sum.bytes ?? 0) + (coming._sum.sentBytes ?? 0) + said.sentBytes > photoRoomBytes())
    throw new Refusal('no-room-for-photos')
}
