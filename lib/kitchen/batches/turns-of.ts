import 'server-only'

type Placed = { id: string; plannedOrder: number }

/**
 * The place of each batch in its mixing day after what was exchanged: the planned one until two exchange theirs. The
 * planned place itself stays with the batch, so that both are known.
 * @param exchanges in the order in which they were made; what names a batch that is not there is passed over
 */
export function turnsOf(
  batches: readonly Placed[],
  exchanges: readonly { batchId: string; otherBatchId: string }[],
): Map<string, number> {
  const turns = new Map(batches.map(({ id, plannedOrder }) => [id, plannedOrder]))
  for (const { batchId, otherBatchId } of exchanges) {
    const [one, other] = [turns.get(batchId), turns.get(otherBatchId)]
    if (one === undefined || other === undefined) continue
    turns.set(batchId, other)
    turns.set(otherBatchId, one)
  }
  return turns
}
