import { mustBeWithin } from '../checks'

/**
 * Dough for another tin from one that works: the ratio of tin to dough stays, unrounded, with the product.
 * @param tinVolumeMl, doughMassG of the tin that works, > 0; @param newTinVolumeMl > 0
 * @returns ratio to keep with the product, mL/g; new tin over old one; dough for the new tin, g
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Wholegrain teaching page, 2015.
 * @example 450 g in 84 in³ (1376.5 mL): 771.4 g in 144 in³
 */
export function fromTinThatWorks(q: { tinVolumeMl: number; doughMassG: number; newTinVolumeMl: number }): {
  tinMlPerG: number
  factor: number
  newDoughMassG: number
} {
  mustBeWithin('tinVolumeMl', q.tinVolumeMl, { over: 0 })
  mustBeWithin('doughMassG', q.doughMassG, { over: 0 })
  mustBeWithin('newTinVolumeMl', q.newTinVolumeMl, { over: 0 })
  const factor = q.newTinVolumeMl / q.tinVolumeMl
  return { tinMlPerG: q.tinVolumeMl / q.doughMassG, factor, newDoughMassG: q.doughMassG * factor }
}
