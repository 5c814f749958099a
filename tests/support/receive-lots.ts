import { db } from '../../lib/db/client'
import { receiveLot } from '../../lib/kitchen/stores/receive-lot'
import { callerOf, valueOf, type TestBakery } from './bakery'

/** Puts lots of an ingredient, by what it is called on labels, into the stores, the latest delivery last. */
export async function receiveLots(
  { bakeryId, head }: TestBakery,
  labelName: string,
  lots: { code: string; bestBefore?: string }[],
  now = new Date(),
): Promise<void> {
  const { id } = await db().ingredient.findFirstOrThrow({ where: { bakeryId, labelName }, select: { id: true } })
  for (const { code, bestBefore } of lots)
    valueOf(
      await receiveLot.call(callerOf(head.sessionSecret, now), {
        ingredientId: id,
        code,
        receivedOn: '2026-02-02',
        bestBefore: bestBefore ?? null,
        strength: null,
        note: '',
      }),
    )
}
