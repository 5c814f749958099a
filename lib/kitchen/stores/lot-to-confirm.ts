import 'server-only'
import type { Tx } from '../../db/client'
import { Refusal } from '../refusal'

/** A lot that was said at the bench, as the record names it, with the photos of its label. @throws Refusal not-found */
export async function lotToConfirm(tx: Tx, bakeryId: string, lotId: string) {
  const lot = await tx.lot.findUnique({
    where: { bakeryId_id: { bakeryId, id: lotId } },
    select: { code: true, ingredientId: true, saidWithId: true, ingredient: { select: { name: true } } },
  })
  if (!lot) throw new Refusal('not-found')
  if (lot.saidWithId === null) throw Refusal.at('lotId', 'lot-to-confirm-only')
  const photos = await photosOfLabel(tx, bakeryId, lotId)
  return { code: lot.code, ingredientId: lot.ingredientId, ingredient: lot.ingredient.name, photos }
}

/** The hashes of the photos of a lot's label: those that were taken of its ingredient beside its code. */
async function photosOfLabel(tx: Tx, bakeryId: string, lotId: string): Promise<string[]> {
  const rows = await tx.$queryRaw<{ hash: string }[]>`
    SELECT photo.hash FROM lot
    JOIN photo ON photo.bakery_id = lot.bakery_id AND photo.ingredient_id = lot.ingredient_id
      AND lower(photo.lot_code) = lower(lot.code)
    WHERE lot.bakery_id = ${bakeryId}::uuid AND lot.id = ${lotId}::uuid
    ORDER BY photo.received_at, photo.id`
  return rows.map(({ hash }) => hash)
}
