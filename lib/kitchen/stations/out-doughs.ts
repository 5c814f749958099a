import 'server-only'
import type { Db } from '../../db/client'
import { lossesOfTrial } from '../repairs/losses-of-trial'

/**
 * What a tablet is told of the doughs of a trial that are out: of each that can be baked again, and of what went out on
 * this bakery's day, by their codes and never by what they are.
 * @param beganAt when the bakery's day began
 */
export async function outDoughs(db: Db, q: { bakeryId: string; trialId: string; now: Date; beganAt: Date }) {
  const { beganAt, ...asked } = q
  const { doughs, days } = await lossesOfTrial(db, asked)
  return doughs
    .filter(({ whyNot, outAt }) => whyNot === null || (outAt !== null && outAt >= beganAt))
    .map(({ id, code, state, day, again, whyNot, when }) => ({
      id,
      code,
      state,
      dayNumber: day,
      again: again?.code ?? null,
      whyNot,
      when,
      /** Number of the mixing day that was added for its own. */
      addedAs: days.find(({ number }) => number === day)?.addedAs ?? null,
    }))
}
