import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/**
 * Loaf volume from the mass of seed that the loaf keeps out of a box: V = (full box − box with loaf) / bulk density.
 * @param seedMassFullG seed that fills the box, struck off level, g, > 0
 * @param seedMassWithLoafG seed that fills it around the loaf, g, ≥ 0, less than that
 * @param bulkDensityGPerMl of the seed in the same box filled the same way, g/mL, 0.2 to 1.2
 * @returns mL
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'no-volume'
 * Source: AACC 10-05.01, rapeseed displacement (guideline); mass balance.
 * @example 2680 g and 1340 g of seed of 0.67 g/mL: 2000 mL
 */
export function volumeBySeedMassMl(q: {
  seedMassFullG: number
  seedMassWithLoafG: number
  bulkDensityGPerMl: number
}): number {
  mustBeWithin('seedMassFullG', q.seedMassFullG, { over: 0 })
  mustBeWithin('seedMassWithLoafG', q.seedMassWithLoafG, { min: 0 })
  mustBeWithin('bulkDensityGPerMl', q.bulkDensityGPerMl, { min: 0.2, max: 1.2 })
  if (q.seedMassWithLoafG >= q.seedMassFullG) {
    throw new CalcError('not-possible', { field: 'seedMassWithLoafG', value: q.seedMassWithLoafG, reason: 'no-volume' })
  }
  return (q.seedMassFullG - q.seedMassWithLoafG) / q.bulkDensityGPerMl
}
