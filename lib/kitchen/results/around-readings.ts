import 'server-only'
import type { Db } from '../../db/client'
import { lossesOfTrial } from '../repairs/losses-of-trial'
import { isOpen } from '../trials/rules'
import { causesOfTrial } from './causes-of-trial'
import type { readTrial } from './load-evidence'
import { whoKnew } from './who-knew'

/**
 * What a result says around the readings of a trial: what was noted at its doughs, who knew the key, and what of the
 * doughs that are out can still be made up for; the last two null where there is nothing to say of them yet, or any more.
 */
export async function aroundReadings(
  db: Db,
  q: { bakeryId: string; trialId: string; now: Date },
  reading: ReturnType<typeof readTrial>,
) {
  const { bakeryId, trialId } = q
  const [causes, knew, losses] = await Promise.all([
    causesOfTrial(db, bakeryId, trialId),
    reading.then((trial) => trial && whoKnew(db, bakeryId, trial)),
    reading.then((trial) => (trial && isOpen(trial.state) ? lossesOfTrial(db, q) : null)),
  ])
  return { causes, knew, losses }
}
