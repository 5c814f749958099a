import { inOne, tablet } from './tablet'

/**
 * Puts another scale in the place of one, for the lines of a dough that are still to be weighed on it.
 * @param from of the plan; null for lines without one
 * @param to null for the plan's own
 */
export async function chooseScale(batchId: string, from: string | null, to: string | null): Promise<void> {
  await inOne(async () => {
    const kept = await tablet.lists.get(batchId)
    const others = (kept?.swaps ?? []).filter((swap) => swap.from !== from)
    await tablet.lists.update(batchId, { swaps: to === null ? others : [...others, { from, to }] })
  })
}
