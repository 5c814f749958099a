import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { chainStart } from '../../db/append-audit'
import { query } from '../query'

/** What every desk page shows around its own matter: whose bakery, who is signed in, of what kind the install is. */
export const getDesk = query({
  name: 'people.get-desk',
  input: z.strictObject({}),
  right: 'own-account',
  async run({ db, actor }) {
    const [{ auditHead, ...bakery }, install] = await Promise.all([
      db.bakery.findUniqueOrThrow({
        where: { bakeryId: actor.bakeryId },
        select: {
          name: true,
          timeZone: true,
          locale: true,
          currency: true,
          massUnits: true,
          temperatureUnits: true,
          auditHead: { select: { number: true, hash: true } },
        },
      }),
      db.install.findUniqueOrThrow({ where: { id: 1 }, select: { kind: true } }),
    ])
    return {
      bakery,
      person: { id: actor.personId, name: actor.name, role: actor.role },
      /** Whether pages may ask for costs beside what they show to everybody. */
      seesCosts: levelOf(actor, 'see-costs') === 'yes',
      installKind: install.kind,
      /**
       * How far the record went when the page was made, and the hash of its last entry: whatever is noted after that is
       * not on the page, and on paper it shows later that nothing before it was written anew.
       */
      record: { number: Number(auditHead?.number ?? 0), hash: auditHead?.hash ?? chainStart },
    }
  },
})
