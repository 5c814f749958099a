import 'server-only'
import { createHash } from 'node:crypto'
import { analyseTrial } from './analyse-trial'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'

/** Results of so many trials are kept by this process, those that were looked at last. */
const most = 100

type Analysis = ReturnType<typeof analyseTrial>
const kept = new Map<string, Analysis>()

/**
 * What a trial showed, worked out once for the same facts: a result is looked at far more often than it changes. The
 * hash is of everything that it rests on, so that nothing has to be thrown away when something changes.
 */
export function analyseOnce(declared: DeclaredTrial, batches: readonly MeasuredBatch[]): Analysis {
  const facts = createHash('sha256').update(JSON.stringify([declared, batches]), 'utf8').digest('base64')
  const analysis = kept.get(facts) ?? analyseTrial(declared, batches)
  kept.delete(facts)
  kept.set(facts, analysis)
  const [oldest] = kept.keys()
  if (kept.size > most && oldest !== undefined) kept.delete(oldest)
  return analysis
}
