import 'server-only'
import type { Db, Tx } from '../../db/client'
import { listKnowers } from '../key/list-knowers'
import { listLookers } from '../key/list-lookers'
import { whoRead } from '../key/who-read'
import { isEnded } from '../trials/rules'

/** Who knew the key of a trial, who read knowing it, and who looked; null for one that has not ended, or is not there. */
export async function whoKnew(db: Db | Tx, bakeryId: string, trialId: string) {
  const trial = await db.trial.findUnique({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: { state: true, planHash: true },
  })
  if (!trial || !isEnded(trial.state)) return null
  const { planHash } = trial
  const [read, knowers, lookers] = await Promise.all([
    whoRead(db, { bakeryId, trialId, planHash }),
    listKnowers(db, { bakeryId, trialId, planHash }),
    listLookers(db, { bakeryId, trialId }),
  ])
  return { ...read, knowers, lookers }
}
