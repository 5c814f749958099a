import 'server-only'
import type { Tx } from '../../db/client'
import { readingColumns } from './reading-columns'

type By = { bakeryId: string; personId: string }
type Entered = { id: string; repeat: number; value: string; unit: string }
type Place = { batchId: string; measureId: string; piece: number | null; factorLevel: string | null }
type Reading = {
  trialId: string
  place: Place
  /** In the measure's base unit. */
  value: number
  takenAt: Date
  receivedAt: Date
  contentHash: string
  /** The reading that was wrong, and why. */
  supersedes?: { id: string; reason: string }
}

/** How many rows go to the database at once: PostgreSQL takes 65,535 values, and a row has seventeen. */
const rowsAtOnce = 1000

/** Writes a reading's row. A step shared by logging one and putting one in the place of a wrong one. */
export function keepReading(tx: Tx, by: By, entered: Entered, reading: Reading) {
  return tx.reading.create({ data: rowOf(by, entered, reading), select: readingColumns })
}

/** Writes the rows of many readings. */
export async function keepReadings(tx: Tx, by: By, readings: readonly { entered: Entered; reading: Reading }[]): Promise<void> {
  const rows = readings.map(({ entered, reading }) => rowOf(by, entered, reading))
  for (let from = 0; from < rows.length; from += rowsAtOnce) await tx.reading.createMany({ data: rows.slice(from, from + rowsAtOnce) })
}

function rowOf(by: By, entered: Entered, { trialId, place, value, takenAt, receivedAt, contentHash, supersedes }: Reading) {
  return {
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
  }
}
