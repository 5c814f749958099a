import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { TrialState } from '../../db/generated/enums'
import { listKnowers } from '../key/list-knowers'
import { listLookers } from '../key/list-lookers'
import { whoRead } from '../key/who-read'
import { isEnded } from '../trials/rules'

/** Who knew the key of a trial, who read knowing it, and who looked; null for one that has not ended. */
export async function whoKnew(
  db: Db | Tx,
  bakeryId: string,
  { id: trialId, state, planHash }: { id: string; state: TrialState; planHash: string | null },
) {
  if (!isEnded(state)) return null
  const [read, knowers, lookers] = await Promise.all([
    whoRead(db, { bakeryId, trialId, planHash }),
    listKnowers(db, { bakeryId, trialId, planHash }),
    listLookers(db, { bakeryId, trialId }),
  ])
  return { ...read, knowers, lookers }
}
