import { mustBeWithin } from '../checks'
import { equalDryFlourMassG } from './equal-dry-flour-mass'

/**
 * Flour and water to weigh so that dry flour and total water are those of a formula written at another moisture.
 * @param flourMassG flour of the formula, g, > 0, at basisPct
 * @param waterMassG added water of the formula, g, ≥ 0
 * @param moisturePct moisture of the flour in the bin, %
 * @param basisPct moisture that the formula is written for, %
 * @returns masses to weigh, g; a damp flour can ask for less water than none, and then `waterMassG` is negative and
 *   `possible` is false
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: mass balance at constant dough composition.
 * @example 100 g at 14 % with 60 g water, bin at 12 %: 97.727 g and 62.273 g, i.e. 63.721 % on flour as it is
 */
export function correctForMoisture(q: {
  flourMassG: number
  waterMassG: number
  moisturePct: number
  basisPct: number
}): {
  flourMassG: number
  waterMassG: number
  waterPctFlour: number
  possible: boolean
} {
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  mustBeWithin('waterMassG', q.waterMassG, { min: 0 })
  const flourMassG = equalDryFlourMassG({
    flourMassG: q.flourMassG,
    fromMoisturePct: q.basisPct,
    toMoisturePct: q.moisturePct,
  })
  const waterMassG = q.flourMassG + q.waterMassG - flourMassG
  return { flourMassG, waterMassG, waterPctFlour: (100 * waterMassG) / flourMassG, possible: waterMassG >= 0 }
}
