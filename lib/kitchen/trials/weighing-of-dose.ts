import 'server-only'
import { leastNetMassG } from '../../calc/weighing/least-net-mass'
import { planPremix } from '../../calc/weighing/plan-premix'
import { relativeDoseErrorShare } from '../../calc/weighing/relative-dose-error'
import type { PlanDose, PlanScale } from './plan-types'

/** Dose error above which the plan warns and offers a premix, at k = 2. Common practice, no source. */
export const doseErrorLimitShare = 0.05
const coverageFactor = 2
/** Part of the flour that a premix may bring along, and the largest that is mixed evenly by hand. Common practice, no source. */
const mostCarrierShare = 0.1
const mostPremixG = 2000

/** How well the chosen scale weighs a dose, and the premix in flour that would bring it within reach; null for a premix where none is needed. */
export function weighingOfDose(q: { productG: number; flourG: number; scale: PlanScale }): NonNullable<PlanDose['weighing']> {
  const { resolutionG, mostG } = q.scale
  const repeatabilityG = q.scale.repeatabilityG ?? 0
  const errorShare = relativeDoseErrorShare({ netMassG: q.productG, resolutionG, repeatabilityG, coverageFactor })
  return {
    errorPct: 100 * errorShare,
    leastG: leastNetMassG({ errorShare: doseErrorLimitShare, coverageFactor, resolutionG, repeatabilityG }),
    premix:
      errorShare <= doseErrorLimitShare
        ? null
        : planPremix({
            doseG: q.productG,
            errorShare: doseErrorLimitShare,
            coverageFactor,
            scales: [{ id: q.scale.id, resolutionG, repeatabilityG, capacityG: mostG }],
            mostCarrierG: mostCarrierShare * q.flourG,
            mostPremixG,
          }),
  }
}
