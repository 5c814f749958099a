import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import type { Prisma } from '../../db/generated/client'
import { after } from '../after.input'
import { dayInZone } from '../day-in-zone'
import { dateOfDay, dayOfDate } from '../day-of-date'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'
import { Refusal } from '../refusal'
import { calendarDay } from '../text.input'
import { isToConfirm } from './is-to-confirm'
import { areAllergensSaid, isPastBestBefore, measuredOfLot } from './rules'

/**
 * The lots of an ingredient, those in use and those that were ended, a page of each, the latest delivery first; and
 * whether any of them may go into a dough. Those that are to be confirmed are `weighings.list-lots-to-confirm`. Refuses: not-found.
 */
export const listLots = query({
  name: 'stores.list-lots',
  input: z.strictObject({ ingredientId: z.uuid(), after }),
  right: 'read-work',
  async run({ db, actor, now, input: { ingredientId, after: cursor } }) {
    const { bakeryId } = actor
    const [ingredient, { timeZone }] = await Promise.all([
      db.ingredient.findUnique({
        where: { bakeryId_id: { bakeryId, id: ingredientId } },
        select: { allergens: true, allergensCheckedAt: true },
      }),
      db.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true } }),
    ])
    if (!ingredient) throw new Refusal('not-found')
    const today = dayInZone(now, timeZone)
    const pageOf = async (list: string, which: Prisma.LotWhereInput) => {
      const where = { bakeryId, ingredientId, ...which }
      const page = await readPage({
        bakeryId,
        list: `lots.${list}.${ingredientId}`,
        after: cursor,
        count: () => db.lot.count({ where }),
        key: z.tuple([calendarDay, keyParts.id]),
        read: (beyond, take) =>
          db.lot.findMany({
            where: { AND: [where, beyond === null ? {} : beyondInOrder(beyond)] },
            select: {
              id: true,
              code: true,
              receivedOn: true,
              bestBefore: true,
              strengthOf: true,
              strength: true,
              strengthUnit: true,
              note: true,
              enteredAt: true,
              enteredBy: { select: { name: true } },
              endedWhy: true,
              endedAt: true,
              endedBy: { select: { name: true } },
              saidWithId: true,
              confirmedAt: true,
              confirmedBy: { select: { name: true } },
              sameAs: { select: { code: true } },
            },
            orderBy: [{ receivedOn: 'desc' }, { id: 'desc' }],
            take,
          }),
        keyOf: ({ receivedOn, id }) => [dayOfDate(receivedOn) ?? '', id],
      })
      return {
        ...page,
        rows: page.rows.map(({ id, code, note, ...row }) => {
          const bestBefore = dayOfDate(row.bestBefore)
          return {
            id,
            code,
            note,
            receivedOn: dayOfDate(row.receivedOn) ?? '',
            bestBefore,
            isPast: isPastBestBefore(bestBefore, today),
            strength: measuredOfLot(row),
            wasSaid: row.saidWithId !== null,
            // Who said it at the bench, and when, could tell for which dough it was.
            entered:
              row.saidWithId === null
                ? { who: row.enteredBy.name, at: row.enteredAt }
                : row.confirmedBy && row.confirmedAt && { who: row.confirmedBy.name, at: row.confirmedAt },
            sameAs: row.sameAs?.code ?? null,
            ended:
              row.endedWhy && row.endedAt && row.endedBy
                ? { why: row.endedWhy, who: row.endedBy.name, at: row.endedAt }
                : null,
          }
        }),
      }
    }
    const [inUse, ended] = await Promise.all([
      pageOf('in-use', { endedAt: null, NOT: isToConfirm }),
      pageOf('ended', { endedAt: { not: null } }),
    ])
    return {
      today,
      inUse,
      ended,
      mayBeUsed: areAllergensSaid(ingredient),
      mayEdit: levelOf(actor, 'edit-stores') === 'yes',
    }
  },
})

/** Received on an earlier day, or written down before on the same. */
function beyondInOrder([receivedOn, id]: readonly [string, string]) {
  const day = dateOfDay(receivedOn)
  return { OR: [{ receivedOn: { lt: day } }, { receivedOn: day, id: { lt: id } }] }
}
