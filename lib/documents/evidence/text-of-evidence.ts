import 'server-only'
import { canonicalText } from '../canonical-text'
import { hashOfText } from '../hash-of-text'
import { evidenceOfFormat1, type EvidenceOfFormat1 } from './evidence-of-format-1'

/** What a trial showed, as it is frozen with a decision, whatever the format of its text. */
export type Evidence = Omit<EvidenceOfFormat1, 'format'>

/**
 * Evidence in its one text, and the hash of that.
 * @throws ZodError for anything that could not be read back
 */
export function textOfEvidence(evidence: Evidence): { text: string; hash: string } {
  const text = canonicalText(evidenceOfFormat1.parse({ format: 1, ...evidence }))
  return { text, hash: hashOfText(text) }
}
