import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'

/** The measures of the bakery in their order: those that every bakery has, by their code, and its own. */
export const listMeasures = query({
  name: 'stores.list-measures',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor }) {
    const measures = await db.measure.findMany({
      where: { bakeryId: actor.bakeryId, endedAt: null },
      select: {
        id: true,
        code: true,
        name: true,
        unit: true,
        digits: true,
        level: true,
        direction: true,
        derivation: true,
        plausibleLeast: true,
        plausibleMost: true,
        repeats: true,
        repeatLimit: true,
        method: true,
        ageLeastH: true,
        ageMostH: true,
      },
      orderBy: [{ position: 'asc' }, { id: 'asc' }],
    })
    return { measures, mayEdit: levelOf(actor, 'edit-stores') === 'yes' }
  },
})
