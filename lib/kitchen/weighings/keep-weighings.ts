import 'server-only'
import type { Tx } from '../../db/client'
import type { WeighingHow, WeighingPart } from '../../db/generated/enums'
import type { WeighedLot } from './judge-lots'

/** A weighing as it stands in the book. */
export type WeighingRow = {
  bakeryId: string
  id: string
  trialId: string
  batchId: string
  stageId: string
  ingredientId: string
  part: WeighingPart
  how: WeighingHow
  /** In g, and as it was typed; null where nothing was weighed. */
  massG: number | null
  massEntered: string | null
  unitEntered: string | null
  personId: string
  takenAt: Date
  receivedAt: Date
  /** The weighing that was wrong, and why. */
  supersedesId: string | null
  reason: string | null
  contentHash: string
  /** What it was taken from, in the order in which it was said. */
  lots: readonly WeighedLot[]
}

/** Writes weighings in one statement, and the lots that they name in another. */
export async function keepWeighings(tx: Tx, rows: readonly WeighingRow[]): Promise<void> {
  await tx.weighing.createMany({ data: rows.map(({ lots: _, ...row }) => row) })
  const named = rows.flatMap(({ bakeryId, id, ingredientId, lots }) =>
    lots.map((lot, position) => ({ bakeryId, weighingId: id, ingredientId, position, ...lot })),
  )
  if (named.length > 0) await tx.weighingLot.createMany({ data: named })
}
