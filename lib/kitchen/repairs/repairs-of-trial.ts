import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { RepairKind } from '../../db/generated/enums'

export type Repair = {
  id: string
  number: number
  kind: RepairKind
  /** Code of the dough that is baked again, or of one of two that were exchanged. */
  code: string | null
  /** Code of the dough that was made for it, or of the other of the two. */
  otherCode: string | null
  /** Number of the mixing day that was short of doughs. */
  day: number | null
  /** Number of the mixing day that was added for it. */
  otherDay: number | null
  why: string | null
  by: { id: string; name: string }
  at: Date
}

/** What was done about losses in a trial, in the order in which it was done. By codes, so that it tells of no dough what it is. */
export async function repairsOfTrial(from: Db | Tx, bakeryId: string, trialId: string): Promise<Repair[]> {
  const repairs = await from.repair.findMany({
    where: { bakeryId, trialId },
    orderBy: { number: 'asc' },
    select: {
      id: true,
      number: true,
      kind: true,
      why: true,
      at: true,
      batch: { select: { code: true } },
      otherBatch: { select: { code: true } },
      day: { select: { number: true } },
      otherDay: { select: { number: true } },
      person: { select: { id: true, name: true } },
    },
  })
  return repairs.map(({ batch, otherBatch, day, otherDay, person, ...repair }) => ({
    ...repair,
    code: batch?.code ?? null,
    otherCode: otherBatch?.code ?? null,
    day: day?.number ?? null,
    otherDay: otherDay?.number ?? null,
    by: person,
  }))
}
