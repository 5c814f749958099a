import 'server-only'
import type { Tx } from '../../db/client'
import { readDatabaseFault } from '../../db/errors'
import { log } from '../../db/log'
import { NeedsWayBack } from '../../db/transaction'

/** Why the database refused an item: the name of the constraint, or null for what nobody expected. */
export type RefusedItem<Item> = { item: Item; constraint: string | null }

/**
 * Keeps all items by one statement, at first without a savepoint, which a request that nothing is wrong with does not
 * need. When the database refuses it the whole work starts again, with a way back: each half is tried by itself, down to
 * the single item that is at fault; the others are kept.
 * @param needsWayBack whether the work was started again for that
 * @param keep writes items by one statement, in their order
 * @returns the items that were refused, in their order
 * @throws NeedsWayBack; what says that the database is away, busy or clashed, because then no item is at fault
 */
export async function keepByHalves<Item>(
  tx: Tx,
  needsWayBack: boolean,
  items: readonly Item[],
  keep: (items: readonly Item[]) => Promise<void>,
): Promise<RefusedItem<Item>[]> {
  const [first] = items
  if (first === undefined) return []
  if (needsWayBack) await tx.$executeRaw`SAVEPOINT before_items`
  try {
    await keep(items)
    if (needsWayBack) await tx.$executeRaw`RELEASE SAVEPOINT before_items`
    return []
  } catch (error) {
    const fault = readDatabaseFault(error)
    if (fault.kind === 'clash' || fault.kind === 'busy' || fault.kind === 'gone') throw error
    if (!needsWayBack) throw new NeedsWayBack('an item was refused', { cause: error })
    await tx.$executeRaw`ROLLBACK TO SAVEPOINT before_items`
    await tx.$executeRaw`RELEASE SAVEPOINT before_items`
    if (items.length > 1) {
      const half = Math.ceil(items.length / 2)
      // In their order: a correction finds the reading that it corrects.
      return [
        ...(await keepByHalves(tx, true, items.slice(0, half), keep)),
        ...(await keepByHalves(tx, true, items.slice(half), keep)),
      ]
    }
    if (fault.kind === 'other') log.error({ event: 'entry-not-kept', error })
    return [{ item: first, constraint: fault.kind === 'other' ? null : fault.constraint }]
  }
}
