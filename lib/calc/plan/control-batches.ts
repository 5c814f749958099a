import { mustBeWithin } from '../checks'

export type ControlBatches = { suggested: number; extra: number }

/**
 * How many control batches go well with several test arms: √k times as many as each arm has, because every
 * comparison leans on the control. A suggestion, rounded to whole batches, never fewer than an arm has.
 * @param testArmCount k, 1 to 20; @param batchesPerArm 1 to 100
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Dunnett (1955), JASA 50 (allocation n₀/n = √k).
 * @example controlBatches({ testArmCount: 4, batchesPerArm: 3 }) // { suggested: 6, extra: 3 }
 */
export function controlBatches(q: { testArmCount: number; batchesPerArm: number }): ControlBatches {
  const arms = mustBeWithin('testArmCount', q.testArmCount, { min: 1, max: 20 })
  const batches = mustBeWithin('batchesPerArm', q.batchesPerArm, { min: 1, max: 100 })
  const suggested = Math.max(batches, Math.round(Math.sqrt(arms) * batches))
  return { suggested, extra: suggested - batches }
}
