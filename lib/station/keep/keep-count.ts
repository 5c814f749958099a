import type { PieceFigures } from '../../kitchen/shifts/count-fault.input'
import { clockAheadMs } from '../outbox/clock-ahead'
import { keepEntry, type KeptBy } from './keep-entry'
import { recall } from './tablet'

/** Under what a half-typed count is kept: nobody finds another's, and keeps it as their own. */
export function countDraft(personId: string, batchId: string): string {
  return `${personId} count ${batchId}`
}

/**
 * Keeps a count of pieces on the tablet, also a second one: a later one stands in the place of an earlier one.
 * @throws where the tablet cannot keep it
 */
export async function keepCount(q: {
  dough: { id: string; code: string }
  count: PieceFigures
  by: KeptBy
}): Promise<void> {
  const { dough, count, by } = q
  const floor = await recall('floor')
  await keepEntry({
    kind: 'count',
    content: { batchId: dough.id, ...count, clockAheadS: floor ? Math.round(clockAheadMs(floor) / 1000) : null },
    shown: { code: dough.code },
    by,
    draft: countDraft(by.personId, dough.id),
    isTaken: () => false,
  })
}
