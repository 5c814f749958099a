import 'server-only'
import type { Tx } from '../../db/client'
import type { EquipmentKind } from '../../db/generated/enums'
import type { CheckEntry } from './log-check.input'

/** A check as it stands in the book. */
export type CheckRow = {
  bakeryId: string
  id: string
  equipmentId: string
  massG: number | null
  shownG: number | null
  offMostG: number | null
  shownC: number | null
  offMostC: number | null
  blockMl: number | null
  shownMl: number | null
  offMostMl: number | null
  isGood: boolean
  shownEntered: string
  unitEntered: string
  at: Date
  clockAheadS: number | null
  personId: string
  takenAt: Date
  receivedAt: Date
  contentHash: string
}

/** What is written down of an instrument that a check is judged by. */
export const instrumentColumns = {
  id: true,
  kind: true,
  name: true,
  mostG: true,
  resolutionG: true,
  resolutionC: true,
  testMassG: true,
  offMostG: true,
  offMostC: true,
  volumeMl: true,
  blockMl: true,
  offMostMl: true,
} as const

export type InstrumentRow = {
  id: string
  kind: EquipmentKind
  name: string
  mostG: number | null
  resolutionG: number | null
  resolutionC: number | null
  testMassG: number | null
  offMostG: number | null
  offMostC: number | null
  volumeMl: number | null
  blockMl: number | null
  offMostMl: number | null
}

/** What checks are judged by. Ids are keys in lower case, as the database writes them. */
export type CheckFacts = {
  equipment: Map<string, InstrumentRow>
  /** The hash of what is in the book under an entry's own id. */
  hashes: Map<string, string>
}

/** Loads what checks are judged by, with their ids locked: of two that are sent at one moment the second finds the first. */
export async function loadCheckFacts(tx: Tx, bakeryId: string, entries: readonly CheckEntry[]): Promise<CheckFacts> {
  const ids = lowerOf(entries.map(({ id }) => id))
  await tx.$executeRaw`
    SELECT pg_advisory_xact_lock(hashtextextended('check ' || id, 0)) FROM (SELECT unnest(${ids}::text[]) AS id ORDER BY 1) AS in_order`
  const [equipment, known] = await Promise.all([
    tx.equipment.findMany({
      where: { bakeryId, id: { in: lowerOf(entries.map(({ equipmentId }) => equipmentId)) } },
      select: instrumentColumns,
    }),
    tx.equipmentCheck.findMany({ where: { bakeryId, id: { in: ids } }, select: { id: true, contentHash: true } }),
  ])
  return {
    equipment: new Map(equipment.map((each) => [each.id, each])),
    hashes: new Map(known.map(({ id, contentHash }) => [id, contentHash])),
  }
}

function lowerOf(ids: readonly string[]): string[] {
  return [...new Set(ids.map((id) => id.toLowerCase()))]
}
