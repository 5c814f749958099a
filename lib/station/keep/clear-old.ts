import { tablet } from './tablet'

const keptMs = 14 * 24 * 60 * 60_000

/** Clears what has been in the book for 14 days; never what is on this tablet alone. */
export async function clearOld(now: number): Promise<void> {
  await tablet.outbox
    .where('state')
    .anyOf('book', 'aside')
    .filter(({ settledAt }) => settledAt !== null && settledAt < now - keptMs)
    .delete()
  await tablet.photos
    .where('state')
    .equals('book')
    .filter(({ settledAt }) => settledAt !== null && settledAt < now - keptMs)
    .delete()
}
