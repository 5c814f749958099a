import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Db } from '../../db/client'
import type { Prisma } from '../../db/generated/client'
import { isToSettle } from '../readings/is-to-settle'
import { fewOf } from './few-of'

/** Entries from outside that are kept aside, and not settled, those that came first at the top. */
export function entriesToSettle(db: Db, { bakeryId }: DeskActor) {
  const where = { bakeryId, ...isToSettle } satisfies Prisma.EntryToSettleWhereInput
  return fewOf(
    async (take) => {
      const entries = await db.entryToSettle.findMany({
        where,
        select: {
          entryId: true,
          hash: true,
          receivedAt: true,
          sentBy: { select: { name: true } },
          batch: { select: { code: true, trial: { select: { number: true, formula: { select: { name: true } } } } } },
        },
        orderBy: [{ receivedAt: 'asc' }, { entryId: 'asc' }, { hash: 'asc' }],
        take,
      })
      return entries.map(({ entryId, hash, receivedAt, sentBy, batch: { code, trial } }) => ({
        entryId,
        hash,
        code,
        sentBy: sentBy.name,
        number: trial.number,
        formula: trial.formula.name,
        since: receivedAt,
      }))
    },
    () => db.entryToSettle.count({ where }),
  )
}
