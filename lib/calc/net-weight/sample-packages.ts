import { mustBeWhole } from '../checks'
import { CalcError } from '../error'

/**
 * Packages to be checked for the mean of a batch, drawn at random.
 * @param batchPackages whole, 1 to 10,000
 * @param isDestructive the package is opened or destroyed by it; not for batches of fewer than 100
 * @returns all of a batch below 100; 30 up to 500; 50 above; 20 when destructive
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'too-few-to-destroy'
 * Source: Directive 76/211/EEC, Annex II, 2.1.3, 2.2.2 and 2.3.
 */
export function samplePackages(q: { batchPackages: number; isDestructive: boolean }): number {
  const batch = mustBeWhole('batchPackages', q.batchPackages, { min: 1, max: 10_000 })
  if (q.isDestructive) {
    if (batch >= 100) return 20
    throw new CalcError('not-possible', {
      field: 'batchPackages',
      value: batch,
      min: 100,
      reason: 'too-few-to-destroy',
    })
  }
  if (batch < 100) return batch
  return batch <= 500 ? 30 : 50
}
