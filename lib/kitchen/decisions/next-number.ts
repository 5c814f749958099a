import 'server-only'
import type { Tx } from '../../db/client'

/** The number of the bakery's next decision. They are given out one after another; other work on the bakery need not wait. */
export async function nextDecisionNumber(tx: Tx, bakeryId: string): Promise<number> {
  await tx.$queryRaw`SELECT 1 FROM bakery WHERE bakery_id = ${bakeryId}::uuid FOR NO KEY UPDATE`
  const { _max } = await tx.decision.aggregate({ where: { bakeryId }, _max: { number: true } })
  return (_max.number ?? 0) + 1
}
