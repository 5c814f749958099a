import 'server-only'
import { onceFor } from '../heavy/once-for'
import { analyseOnce } from './analyse-once'
import type { Comparison } from './compare-arms'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'
import { asOfVolume, ratiosOf, volumeCode, type VolumeRatios } from './volume-ratios'

const none: VolumeRatios = new Map()
/** By the judged readings, which are of one trial as it was declared. */
const asked = onceFor<ReturnType<typeof asOfVolume>>()

/**
 * How the loaves of each arm stand in volume to the control's: of a trial of loaf volume its own comparison, of another one
 * the same rule over the volumes that were measured beside.
 * @param measureCode of what decides
 * @param comparison null where nothing is compared
 * @throws Refusal 'took-too-long' | 'not-worked-out'
 */
export async function volumesOfTrial(q: {
  declared: DeclaredTrial
  batches: readonly MeasuredBatch[]
  measureCode: string | null
  comparison: Comparison | null
}): Promise<VolumeRatios> {
  if (q.comparison === null) return none
  if (q.measureCode === volumeCode) return ratiosOf(q.comparison)
  const ofVolume = asked(q.batches, () => asOfVolume(q.declared, q.batches))
  const compared = ofVolume && (await analyseOnce(ofVolume.declared, ofVolume.batches)).comparison
  return compared ? ratiosOf(compared) : none
}
