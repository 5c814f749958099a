import type { Words } from './words'

/** What everybody is to mind who works on a trial, in the order in which it is told. */
export function planCautions({ trials }: Words): string[] {
  const { plan } = trials
  return [plan.cautionAllergens, plan.cautionRaw, plan.cautionDust, plan.cautionLimits, plan.cautionCoded]
}
