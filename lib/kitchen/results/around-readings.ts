import 'server-only'
import type { Db } from '../../db/client'
import { lossesOfTrial } from '../repairs/losses-of-trial'
import { isOpen } from '../trials/rules'
import { causesOfTrial } from './causes-of-trial'
import type { readTrial } from './load-evidence'
import { marksOfTrial } from './marks-of-trial'
import { whoKnew } from './who-knew'

/**
 * What a result says around the readings of a trial: what was noted at its doughs, who knew the key, what of the doughs
 * that are out can still be made up for, those two null where there is nothing to say of them yet, or any more; and what
 * was read around a failed check.
 */
export async function aroundReadings(
  db: Db,
  q: { bakeryId: string; trialId: string; now: Date },
  reading: ReturnType<typeof readTrial>,
) {
  const { bakeryId, trialId } = q
  const [causes, knew, losses, marks] = await Promise.all([
    causesOfTrial(db, bakeryId, trialId),
    reading.then((trial) => trial && whoKnew(db, bakeryId, trial)),
    reading.then((trial) => (trial && isOpen(trial.state) ? lossesOfTrial(db, q) : null)),
    // Most bakeries have none, and nothing is asked for them.
    reading.then((trial) => (trial && trial.bakery.equipment.length > 0 ? marksOfTrial(db, bakeryId, trialId) : [])),
  ])
  return { causes, knew, losses, marks }
}
