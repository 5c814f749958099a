import 'server-only'
import { z } from 'zod'
import { dayInZone } from '../day-in-zone'
import { query } from '../query'
import { costsOfTrial } from './costs-of-trial'
import { loadEvidence } from './load-evidence'

/** A calendar day; what it may not be, PostgreSQL and lib/calc would refuse as a fault of ours. */
const day = z.iso.date()

/**
 * Ingredient cost of each arm beside what it gained, at the prices of a day: the bakery's today, unless one is named.
 * Amounts are decimal text in major units, not rounded. Before the planned mixing days are in, only what the plan
 * says: cost per planned loaf. Refuses: not-found.
 */
export const getCostAndGain = query({
  name: 'evidence.get-cost-and-gain',
  input: z.strictObject({ trialId: z.uuid(), day: day.optional() }),
  right: 'see-costs',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const [evidence, { timeZone }] = await Promise.all([
      loadEvidence(db, bakeryId, input.trialId),
      db.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true } }),
    ])
    return costsOfTrial(db, bakeryId, evidence, input.day ?? dayInZone(now, timeZone))
  },
})
