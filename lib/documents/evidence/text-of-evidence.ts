import 'server-only'
import { canonicalText } from '../canonical-text'
import { amendmentsOfFormat1, type AmendmentsOfFormat1 } from '../evidence-amendments/amendments-of-format-1'
import { knowingOfFormat1, type KnowingOfFormat1 } from '../evidence-knowing/knowing-of-format-1'
import { hashOfText } from '../hash-of-text'
import { openDocument } from '../open-document'
import { cautionsOfFormat1, type CautionsOfFormat1 } from '../evidence-cautions/cautions-of-format-1'
import { costsOfFormat2, type CostsOfFormat2 } from '../evidence-costs/costs-of-format-2'
import { evidenceOfFormat2, type EvidenceOfFormat2 } from './evidence-of-format-2'
import { shownOfFormat3, type ShownOfFormat3 } from '../evidence-shown/shown-of-format-3'

/** A part of evidence with its text. */
export type EvidencePart = { kind: string; version: number; hash: string; text: string }

/** What evidence is made of. */
export type EvidenceToKeep = Pick<EvidenceOfFormat2, 'bakery' | 'trial' | 'frozen'> & {
  shown: Omit<ShownOfFormat3, 'format'>
  costs: Omit<CostsOfFormat2, 'format'>
  cautions: Omit<CautionsOfFormat1, 'format'>
  knowing: Omit<KnowingOfFormat1, 'format'>
  /** Null where nothing came after the closing. */
  amendments: Omit<AmendmentsOfFormat1, 'format'> | null
  /** Texts that were frozen before, as they are; null where there is none. */
  closing: string | null
  plan: string | null
}

/**
 * Evidence in its parts, the text that names them all by their hashes, and the hash of that.
 * @throws ZodError for anything that could not be read back, Error for a frozen text that is no document
 */
export function textOfEvidence({
  shown,
  costs,
  cautions,
  knowing,
  amendments,
  closing,
  plan,
  ...rest
}: EvidenceToKeep): {
  text: string
  hash: string
  parts: EvidencePart[]
} {
  const parts = [
    partOf('shown', canonicalText(shownOfFormat3.parse({ format: 3, ...shown }))),
    partOf('costs', canonicalText(costsOfFormat2.parse({ format: 2, ...costs }))),
    partOf('cautions', canonicalText(cautionsOfFormat1.parse({ format: 1, ...cautions }))),
    partOf('knowing', canonicalText(knowingOfFormat1.parse({ format: 1, ...knowing }))),
    ...(amendments === null
      ? []
      : [partOf('amendments', canonicalText(amendmentsOfFormat1.parse({ format: 1, ...amendments })))]),
    ...(closing === null ? [] : [partOf('closing', closing)]),
    ...(plan === null ? [] : [partOf('plan', plan)]),
  ]
  const manifest = { format: 2, ...rest, parts: parts.map(({ text: _, ...part }) => part) }
  const text = canonicalText(evidenceOfFormat2.parse(manifest))
  return { text, hash: hashOfText(text), parts }
}

function partOf(kind: string, text: string): EvidencePart {
  const opened = openDocument(text)
  if (!opened) throw new Error(`the ${kind} of evidence is no document`)
  return { kind, version: opened.format, hash: hashOfText(text), text }
}
