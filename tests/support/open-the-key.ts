import type { Caller } from '../../lib/kitchen/caller'
import { getWeighOut } from '../../lib/kitchen/trials/get-weigh-out'
import { openKey } from '../../lib/kitchen/trials/open-key'
import { valueOf } from './bakery'

/** Opens the key of a trial's plan as it stands, and gives the sheets that it opens. */
export async function openTheKey(caller: Caller, trialId: string) {
  const { trial } = valueOf(await getWeighOut.call(caller, { trialId }))
  valueOf(await openKey.call(caller, { trialId, planHash: trial.planHash }))
  const { arms, ...rest } = valueOf(await getWeighOut.call(caller, { trialId }))
  if (!arms) throw new Error(`the key of trial ${trialId} did not open`)
  return { ...rest, arms }
}
