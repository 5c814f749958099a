import { mustBeWithin } from '../checks'

export type Soaker = {
  soakWaterG: number
  /** What is left to weigh once liquid that was poured off goes into the dough. */
  waterToWeighG: number
  doughWaterOnFlourPct: number
  allWaterOnFlourPct: number
  allWaterOnFlourAndSoakedPct: number
}

/**
 * Water for grain, seed or fruit that soaks, and the dough's hydration in each of the three ways that are in use.
 * @param flourMassG flour of the dough, g, > 0; @param waterMassG water of the dough without the soaker's, g, ≥ 0
 * @param soakedMassG grain, seed or fruit, g, ≥ 0; @param soakPct water on it, %, 0 to 1000
 * @param pouredOffG liquid that it did not take up, g, at most the soaking water and the dough's water: it belongs to the
 *   dough's water, so as much less is weighed
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: California raisin growers' baking page (liquid left over belongs to the dough's water); mass balance.
 * @example flour 500, water 350, 100 grain with 100 % water: 70, 90 and 75 %
 */
export function soaker(q: {
  flourMassG: number
  waterMassG: number
  soakedMassG: number
  soakPct: number
  pouredOffG: number
}): Soaker {
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  mustBeWithin('waterMassG', q.waterMassG, { min: 0 })
  mustBeWithin('soakedMassG', q.soakedMassG, { min: 0 })
  mustBeWithin('soakPct', q.soakPct, { min: 0, max: 1000 })
  const soakWaterG = (q.soakedMassG * q.soakPct) / 100
  mustBeWithin('pouredOffG', q.pouredOffG, { min: 0, max: Math.min(soakWaterG, q.waterMassG) })
  const allWaterG = q.waterMassG + soakWaterG - q.pouredOffG
  return {
    soakWaterG,
    waterToWeighG: q.waterMassG - q.pouredOffG,
    doughWaterOnFlourPct: (100 * q.waterMassG) / q.flourMassG,
    allWaterOnFlourPct: (100 * allWaterG) / q.flourMassG,
    allWaterOnFlourAndSoakedPct: (100 * allWaterG) / (q.flourMassG + q.soakedMassG),
  }
}
