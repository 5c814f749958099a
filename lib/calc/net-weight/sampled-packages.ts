import { CalcError } from '../error'
import { samplePackages } from './sample-packages'

/**
 * Packages of the sample, for what is judged by a sample only.
 * @param batchPackages whole, 100 to 10,000; isDestructive as samplePackages
 * @throws CalcError as samplePackages; 'not-possible' with reason 'all-are-weighed' below 100
 * Source: Directive 76/211/EEC, Annex II, 2.1.3 and 2.3.3.
 */
export function sampledPackages(q: { batchPackages: number; isDestructive: boolean }): number {
  const sample = samplePackages(q)
  if (q.batchPackages >= 100) return sample
  throw new CalcError('not-possible', {
    field: 'batchPackages',
    value: q.batchPackages,
    min: 100,
    reason: 'all-are-weighed',
  })
}
