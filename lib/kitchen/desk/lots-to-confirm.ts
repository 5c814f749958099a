import 'server-only'
import type { Db } from '../../db/client'
import type { Prisma } from '../../db/generated/client'
import { isToConfirm } from '../stores/is-to-confirm'
import { fewOf, mostRead } from './few-of'

/** What is read of a bakery's lots of the bench together with the bakery, so that it takes no statement of its own. */
export const saidLots = {
  lots: {
    where: isToConfirm,
    select: { id: true, code: true, enteredAt: true, ingredient: { select: { id: true, name: true } } },
    orderBy: [{ enteredAt: 'asc' }, { id: 'asc' }],
    take: mostRead,
  },
} satisfies Prisma.BakerySelect

type Read = Prisma.BakeryGetPayload<{ select: typeof saidLots }>

/** Lots that were said at the bench and that nobody has compared with the stores, those that came first at the top. */
export function lotsToConfirm(db: Db, bakeryId: string, read: Promise<Read>) {
  return fewOf(
    async () =>
      (await read).lots.map(({ id, code, enteredAt, ingredient }) => ({
        lotId: id,
        code,
        ingredientId: ingredient.id,
        ingredient: ingredient.name,
        since: enteredAt,
      })),
    () => db.lot.count({ where: { bakeryId, ...isToConfirm } }),
  )
}
