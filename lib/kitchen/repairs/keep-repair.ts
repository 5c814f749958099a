import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'

type ToKeep = { bakeryId: string; trialId: string; personId: string; at: Date } & (
  | { kind: 'bake_again'; batchId: string; otherBatchId: string }
  | { kind: 'swap'; batchId: string; otherBatchId: string; why: string }
  | { kind: 'add_day'; dayId: string; otherDayId: string }
)

/** Keeps what was done about a loss, after everything that was done before in its trial, which is held already. */
export async function keepRepair(tx: Tx, repair: ToKeep): Promise<void> {
  const { bakeryId, trialId } = repair
  const number = (await tx.repair.count({ where: { bakeryId, trialId } })) + 1
  await tx.repair.create({ data: { ...repair, id: uuid(), number } })
}
