import 'server-only'
import type { Closing } from '../../documents/closing/closing'
import type { readCosts } from '../../documents/evidence-costs/read-costs'
import type { PlanRead } from '../../documents/plan/read-plan'
import { analyseTrial } from '../results/analyse-trial'
import type { CostedArm } from '../results/cost-and-gain'
import { costsShown } from '../results/costs-shown'
import { dosedIn } from '../results/same-volume-of-arm'
import { asOfVolume, ratiosOf, volumeCode } from '../results/volume-ratios'
import { firstUnlike, type Unlike } from './first-unlike'
import { judgedAgain } from './judged-again'
import { plain } from './plain'

type Read = Extract<ReturnType<typeof readCosts>, { outcome: 'read' }>
type Plan = Extract<PlanRead, { outcome: 'read' }>['plan']
type Rested = Pick<CostedArm, 'arm' | 'dosed' | 'volume'>

/**
 * Costs worked out again from what they rest on, and what each arm doses by the plan. Former costs do not rest on that.
 * @param plan null where it is not there
 * @returns where they first differ; null when they are the same
 */
export function costsAgain({ format, value }: Read, plan: Plan | null): Unlike | null {
  const { day, currency, arms, rests } = value
  const worked = firstUnlike({ currency, arms }, plain(costsShown(day, rests)))
  if (worked || format === 1 || !plan) return worked
  return firstUnlike(dosedKept(rests.arms), dosedBy(plan), 'dosed')
}

/** How the loaves of each arm stand in volume to the control's, worked out again from the readings, in the same way. */
export function volumesAgain({ format, value }: Read, closing: Closing | null): Unlike | null {
  return format === 1 || !closing ? null : firstUnlike(volumesKept(value.rests.arms), volumesBy(closing), 'volume')
}

function dosedKept(arms: readonly Rested[]): unknown {
  return Object.fromEntries(arms.map(({ arm, dosed }) => [arm, dosed]))
}

function dosedBy({ arms }: Plan): unknown {
  return Object.fromEntries(arms.map(({ position, doses }) => [position, dosedIn(doses)]))
}

function volumesKept(arms: readonly Rested[]): unknown {
  return Object.fromEntries(arms.flatMap(({ arm, volume }) => (volume ? [[arm, volume]] : [])))
}

function volumesBy(closing: Closing): unknown {
  const { declared, judged } = judgedAgain(closing)
  const asked = declared.measure.code === volumeCode ? { declared, ...judged } : asOfVolume(declared, judged.batches)
  const comparison = asked && analyseTrial(asked.declared, asked.batches).comparison
  return plain(Object.fromEntries(comparison ? ratiosOf(comparison) : []))
}
