import 'server-only'
import type { Db } from '../../db/client'
import { loadWaters } from './load-waters'
import { tellWater, type DoughTemps } from './tell-water.input'

/** The water of a dough before it is mixed, as its tablet tells it: by its trial's control, whatever dough it is. */
export async function waterOfBatch(
  from: Db,
  bakeryId: string,
  { id, trialId }: { id: string; trialId: string },
  { temps, day }: { temps: DoughTemps; day: { beganAt: Date } },
) {
  const facts = (await loadWaters(from, bakeryId, [trialId], day)).get(trialId)
  if (facts?.outcome !== 'known') return facts ? { outcome: facts.outcome } : null
  const first = facts.first?.id === id ? null : facts.first
  return { outcome: 'known' as const, facts, temps, told: tellWater(facts, temps, first) }
}
