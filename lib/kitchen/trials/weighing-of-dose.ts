import 'server-only'
import { leastNetMassG } from '../../calc/weighing/least-net-mass'
import { planPremix } from '../../calc/weighing/plan-premix'
import { relativeDoseErrorShare } from '../../calc/weighing/relative-dose-error'
import type { PremixPlan } from '../../calc/weighing/types'
import type { PlanDose, PlanScale } from './plan-types'
import { spreadOf } from './scale-for'

/** Dose error above which the plan warns and offers a premix, at k = 2. Common practice, no source. */
export const doseErrorLimitShare = 0.05
const coverageFactor = 2
/** Part of the flour that a premix may bring along, and the largest that is mixed evenly by hand. Common practice, no source. */
const mostCarrierShare = 0.1
const mostPremixG = 2000

/** How far off a scale may be with a dose, as a share of it, at k = 2. */
export function doseErrorShare(productG: number, scale: PlanScale): number {
  return relativeDoseErrorShare({ netMassG: productG, ...spreadOf(scale), coverageFactor })
}

/**
 * How well a dose is weighed on the scale of its line, and the premix in flour, on all the scales that are there, that
 * would bring it within reach; null for a premix where none is needed.
 * @param carrierG flour of the line that gives way to the premix, g; 0 where there is none
 * @param flourG all flour of the dough, g
 */
export function weighingOfDose(q: {
  productG: number
  carrierG: number
  flourG: number
  scale: PlanScale
  scales: readonly PlanScale[]
}): NonNullable<PlanDose['weighing']> {
  const errorShare = doseErrorShare(q.productG, q.scale)
  const mostCarrierG = Math.min(q.carrierG, mostCarrierShare * q.flourG)
  return {
    errorPct: 100 * errorShare,
    leastG: leastNetMassG({ errorShare: doseErrorLimitShare, coverageFactor, ...spreadOf(q.scale) }),
    premix: errorShare <= doseErrorLimitShare ? null : premixOnScales(q.productG, mostCarrierG, q.scales),
  }
}

/** A premix none of whose weighings is below the least load of its scale: one that would be so does without that scale. */
function premixOnScales(doseG: number, mostCarrierG: number, scales: readonly PlanScale[]): PremixPlan {
  if (scales.length === 0) return { outcome: 'not-possible', bestErrorShare: null }
  const plan = planPremix({
    doseG,
    errorShare: doseErrorLimitShare,
    coverageFactor,
    scales: scales.map((scale) => ({ id: scale.id, ...spreadOf(scale), capacityG: scale.mostG })),
    mostCarrierG,
    mostPremixG,
  })
  if (plan.outcome === 'not-possible') return plan
  const weighings = [
    { id: plan.portionScaleId, massG: plan.portionG },
    ...plan.steps.flatMap(({ takeScaleId, takeG, carrierScaleId, carrierG }) => [
      { id: takeScaleId, massG: takeG },
      { id: carrierScaleId, massG: carrierG },
    ]),
  ]
  const isTooLight = ({ id, leastG }: PlanScale) =>
    weighings.some((each) => each.id === id && each.massG < (leastG ?? 0))
  const kept = scales.filter((scale) => !isTooLight(scale))
  return kept.length === scales.length ? plan : premixOnScales(doseG, mostCarrierG, kept)
}
