import 'server-only'
import { z } from 'zod'
import { after } from '../after.input'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'
import { instrumentsOfDay } from './instruments-of-day'

const checksOnPage = 50

/** The scales, thermometers and volume gauges in use with how today's checks stand, and all checks, the latest first, a page at a time. */
export const listChecks = query({
  name: 'checks.list-checks',
  input: z.strictObject({ after }),
  right: 'read-shift',
  async run({ db, actor: { bakeryId }, now, input }) {
    const [{ instruments }, page] = await Promise.all([
      instrumentsOfDay(db, bakeryId, now),
      readPage({
        bakeryId,
        list: 'checks',
        after: input.after,
        count: () => db.equipmentCheck.count({ where: { bakeryId } }),
        length: checksOnPage,
        key: z.tuple([keyParts.time, keyParts.id]),
        read: (beyond, take) =>
          db.equipmentCheck.findMany({
            where: { bakeryId, ...(beyond && beyondInOrder(beyond)) },
            select: {
              id: true,
              at: true,
              massG: true,
              shownG: true,
              offMostG: true,
              shownC: true,
              offMostC: true,
              blockMl: true,
              shownMl: true,
              offMostMl: true,
              isGood: true,
              equipment: { select: { name: true } },
              person: { select: { name: true } },
            },
            orderBy: [{ at: 'desc' }, { id: 'desc' }],
            take,
          }),
        keyOf: ({ at, id }) => [at.toISOString(), id],
      }),
    ])
    return {
      instruments,
      checks: {
        ...page,
        rows: page.rows.map(({ equipment, person, ...check }) => ({
          ...check,
          instrument: equipment.name,
          who: person.name,
        })),
      },
    }
  },
})

/** Made before, or at the same moment under an id that was made before. */
function beyondInOrder([at, id]: readonly [Date, string]) {
  return { OR: [{ at: { lt: at } }, { at, id: { lt: id } }] }
}
