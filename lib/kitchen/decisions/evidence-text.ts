import 'server-only'
import { createHash } from 'node:crypto'
import { canonicalText } from '../../db/append-audit'
import type { TrialState } from '../../db/generated/enums'
import type { ArmResult, Comparison } from '../evidence/analyse-trial'
import type { Limit, UncountedCode } from '../evidence/codes'
import type { CostsOfTrial } from '../evidence/costs-of-trial'
import type { DeclaredTrial } from '../evidence/trial-facts'

/** Number of the form in which evidence is written; a change of form gets a new one. */
export const evidenceFormat = 1

/** What a trial showed, as it is frozen with a decision. Numbers in full, amounts as decimal text, times in UTC. */
export type Evidence = {
  format: typeof evidenceFormat
  bakery: string
  trial: {
    id: string
    number: number
    question: string
    state: TrialState
    closedAt: string | null
    closedWhy: string | null
    /** Hash of the plan that was approved. */
    planHash: string | null
    formula: { id: string; name: string }
    controlVersion: { id: string; number: number; contentHash: string | null }
  }
  /** The rule, declared before baking. */
  declared: Pick<DeclaredTrial, 'kind' | 'measure' | 'margin' | 'marginUnit' | 'confidencePct' | 'mixingDays' | 'batchesPerArm'> & {
    piecesPerBatch: number
    factor: { name: string; levels: string[] } | null
  }
  /** Stopped before it was whole: an indication, and no verdict. */
  isIndication: boolean
  arms: (ArmResult & { id: string; name: string; good: { pieces: number; batches: number } | null })[]
  controlMean: number | null
  worthwhile: number | null
  method: Comparison['method']
  loafVariation: Comparison['loafVariation']
  limits: { code: Limit['code']; arm: number | null; facts: Record<string, number> }[]
  conditions: Comparison['conditions']
  flags: Comparison['flags']
  uncounted: { batch: string; code: string; arm: number; why: UncountedCode }[]
  /** For those who see costs. */
  costs: CostsOfTrial
  readings: { count: number; hash: string }
  frozen: { at: string; by: { id: string; name: string } }
}

/** Evidence in its one canonical text, and SHA-256 of that in hexadecimal. */
export function textOfEvidence(evidence: Evidence): { text: string; hash: string } {
  const text = canonicalText(evidence)
  return { text, hash: hashOfEvidenceText(text) }
}

export function hashOfEvidenceText(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex')
}

/**
 * Reads evidence that was frozen.
 * @returns null when it is not the text that was hashed: a damaged row, of which nothing may be shown as frozen
 * @throws Error when it is in a form that is not known
 */
export function readEvidenceText(text: string, hash: string): Evidence | null {
  if (hashOfEvidenceText(text) !== hash) return null
  const evidence = JSON.parse(text) as { format?: unknown }
  if (evidence.format !== evidenceFormat) throw new Error(`unknown form of evidence: ${String(evidence.format)}`)
  // The hash was just checked, so this is what textOfEvidence wrote.
  return evidence as Evidence
}
