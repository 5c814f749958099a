import 'server-only'
import type { Tx } from '../../db/client'
import { readingColumns } from './reading-columns'

type Entered = { id: string; repeat: number; value: string; unit: string }
type Place = { batchId: string; measureId: string; piece: number | null; factorLevel: string | null }

/** Writes a reading's row. A step shared by logging one and putting one in the place of a wrong one. */
export function keepReading(
  tx: Tx,
  by: { bakeryId: string; personId: string },
  entered: Entered,
  reading: {
    trialId: string
    place: Place
    /** In the measure's base unit. */
    value: number
    takenAt: Date
    receivedAt: Date
    contentHash: string
    /** The reading that was wrong, and why. */
    supersedes?: { id: string; reason: string }
  },
) {
  const { trialId, place, value, takenAt, receivedAt, contentHash, supersedes } = reading
  return tx.reading.create({
    data: {
      bakeryId: by.bakeryId,
      id: entered.id,
      trialId,
      ...place,
      repeat: entered.repeat,
      value,
      valueEntered: entered.value,
      unitEntered: entered.unit,
      personId: by.personId,
      takenAt,
      receivedAt,
      supersedesId: supersedes?.id ?? null,
      reason: supersedes?.reason ?? null,
      contentHash,
    },
    select: readingColumns,
  })
}
