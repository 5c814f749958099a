import 'server-only'
import { hashOfFacts } from '../heavy/hash-of-facts'
import { inPool } from '../heavy/in-pool'
import { keepLast } from '../heavy/keep-last'
import type { TrialAnalysis } from './analyse-trial'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'

/** Results of so many trials are kept by this process, those that were looked at last. */
const kept = keepLast<TrialAnalysis>(100)

/** Judged readings are kept and never changed, so the same ones are hashed once. */
const hashes = new WeakMap<readonly MeasuredBatch[], string>()

/**
 * What a trial showed, worked out by a worker and once for the same facts: a result is looked at far more often than
 * it changes.
 * @throws Refusal 'took-too-long' | 'not-worked-out'
 */
export function analyseOnce(declared: DeclaredTrial, batches: readonly MeasuredBatch[]): Promise<TrialAnalysis> {
  const hash = hashes.get(batches) ?? hashOfFacts(batches)
  hashes.set(batches, hash)
  return kept(hashOfFacts([declared, hash]), () => inPool('analyse-trial', { declared, batches }))
}
