import { mustBeWithin } from '../checks'

/** From moist wholemeal to the lightest white bread. Bakers' pages and a handbook reproduced on the web. */
const USUAL_ML_PER_G = { least: 1.6, most: 4.5 } as const

/**
 * Dough for a tin from its volume: volume / ratio. The ratio belongs to the product: kinds of bread run from 1.66 to
 * 4.39 mL of tin for a g of dough.
 * @param tinVolumeMl best found by filling the tin with water and weighing it, mL, > 0
 * @param tinMlPerG mL of tin for a g of dough, 1 to 20
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Australian bread-baking page, 2024 (tin weighed with water, divided); the figures are common practice.
 * @example 1500 mL at 1.78 (white): 842.7 g
 */
export function doughForTin(q: { tinVolumeMl: number; tinMlPerG: number }): {
  doughMassG: number
  warnings: 'unusual-ratio'[]
} {
  mustBeWithin('tinVolumeMl', q.tinVolumeMl, { over: 0 })
  mustBeWithin('tinMlPerG', q.tinMlPerG, { min: 1, max: 20 })
  const isUsual = q.tinMlPerG >= USUAL_ML_PER_G.least && q.tinMlPerG <= USUAL_ML_PER_G.most
  return { doughMassG: q.tinVolumeMl / q.tinMlPerG, warnings: isUsual ? [] : ['unusual-ratio'] }
}
