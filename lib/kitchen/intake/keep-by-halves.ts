import 'server-only'
import type { Tx } from '../../db/client'
import { readDatabaseFault } from '../../db/errors'
import { log } from '../../db/log'

/** Why the database refused an item: the name of the constraint, or null for what nobody expected. */
export type RefusedItem<Item> = { item: Item; constraint: string | null }

/**
 * Keeps all items by one statement. When the database refuses it, each half is tried by itself, down to the single item
 * that is at fault; the others are kept. A savepoint for each item would cost every request what only a refused one needs.
 * @param keep writes items by one statement, in their order
 * @returns the items that were refused, in their order
 * @throws what says that the database is away, busy or clashed, because then no item is at fault
 */
export async function keepByHalves<Item>(
  tx: Tx,
  items: readonly Item[],
  keep: (items: readonly Item[]) => Promise<void>,
): Promise<RefusedItem<Item>[]> {
  const [first] = items
  if (first === undefined) return []
  await tx.$executeRaw`SAVEPOINT before_items`
  try {
    await keep(items)
    await tx.$executeRaw`RELEASE SAVEPOINT before_items`
    return []
  } catch (error) {
    const fault = readDatabaseFault(error)
    if (fault.kind === 'clash' || fault.kind === 'busy' || fault.kind === 'gone') throw error
    await tx.$executeRaw`ROLLBACK TO SAVEPOINT before_items`
    await tx.$executeRaw`RELEASE SAVEPOINT before_items`
    if (items.length > 1) {
      const half = Math.ceil(items.length / 2)
      // In their order: a correction finds the reading that it corrects.
      return [
        ...(await keepByHalves(tx, items.slice(0, half), keep)),
        ...(await keepByHalves(tx, items.slice(half), keep)),
      ]
    }
    if (fault.kind === 'other') log.error({ event: 'entry-not-kept', error })
    return [{ item: first, constraint: fault.kind === 'other' ? null : fault.constraint }]
  }
}
