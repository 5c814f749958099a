import { mustBeWithin, mustHaveAtLeast, mustHaveAtMost } from '../checks'
import { CalcError } from '../error'
import { mustBeHydration } from './must-be-hydration'

export type SourStage = { hoursH: number; stageHydrationPct: number }
export type SourStageMasses = { flourInAllG: number; waterInAllG: number; addedFlourG: number; addedWaterG: number }

/** A stage that stands longer than this counts as longer still: the sour grows slowly at the end. */
const LONG_STANDING_H = 6

/**
 * Flour and water of a sour that is built up in stages. Back from the last: the flour of a stage is that of the next one
 * divided by the hours the next one stands; hours above six are taken 1.5 to 2 times. The starter is found alike from the
 * first stage; it is small and is not taken off.
 * @param souredFlourG flour of the last stage in all, g, > 0
 * @param longStandingFactor 1 to 2; the rule says 1.5 to 2
 * @param stages first to last, one to six; hours 1 to 48, water on all flour so far in %, 0 to 1000
 * @throws CalcError 'empty' | 'wrong-shape' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'stage-too-dry'
 *   when a stage would need water taken out of the one before
 * Source: German bakers' glossary on the web, entry on three-stage sour, 2015.
 * @example 450 g rye, stages of 5, 8 and 3 h, factor 1.5: 12.5, 150 and 450 g, starter 2.5 g
 */
export function sourStages(q: { souredFlourG: number; longStandingFactor: number; stages: readonly SourStage[] }): {
  starterG: number
  stages: SourStageMasses[]
} {
  mustBeWithin('souredFlourG', q.souredFlourG, { over: 0 })
  mustBeWithin('longStandingFactor', q.longStandingFactor, { min: 1, max: 2 })
  mustHaveAtLeast('stages', q.stages, 1)
  mustHaveAtMost('stages', q.stages, 6)
  q.stages.forEach((stage, i) => {
    mustBeWithin(`stages[${i}].hoursH`, stage.hoursH, { min: 1, max: 48 })
    mustBeHydration(`stages[${i}].stageHydrationPct`, stage.stageHydrationPct)
  })
  const flours: number[] = []
  let flourG = q.souredFlourG
  for (const { hoursH } of q.stages.toReversed()) {
    flours.unshift(flourG)
    flourG /= hoursH > LONG_STANDING_H ? hoursH * q.longStandingFactor : hoursH
  }
  let [flourBeforeG, waterBeforeG] = [0, 0]
  const stages = q.stages.map(({ stageHydrationPct }, i) => {
    const flourInAllG = flours[i]!
    const waterInAllG = (flourInAllG * stageHydrationPct) / 100
    const added = { addedFlourG: flourInAllG - flourBeforeG, addedWaterG: waterInAllG - waterBeforeG }
    if (added.addedWaterG < 0) {
      throw new CalcError('not-possible', {
        field: `stages[${i}].stageHydrationPct`,
        value: stageHydrationPct,
        reason: 'stage-too-dry',
      })
    }
    ;[flourBeforeG, waterBeforeG] = [flourInAllG, waterInAllG]
    return { flourInAllG, waterInAllG, ...added }
  })
  return { starterG: flourG, stages }
}
