import 'server-only'
import { type Costs, readCosts } from '../evidence-costs/read-costs'
import { readShown } from '../evidence-shown/read-shown'
import { openDocument, type Unread } from '../open-document'
import { readerOf } from '../reader-of'
import type { Evidence } from './evidence'
import { evidenceFromFormat1 } from './evidence-from-format-1'
import { evidenceOfFormat1 } from './evidence-of-format-1'
import type { EvidenceOfFormat2 } from './evidence-of-format-2'
import { readManifest } from './read-manifest'
import type { EvidencePart } from './text-of-evidence'

export type EvidenceRead = { outcome: 'read'; format: number; evidence: Evidence } | Unread

const readFormat1 = readerOf(evidenceOfFormat1, 1)

/**
 * Reads evidence that was frozen. Of a damaged one nothing may be shown as frozen.
 * @param parts of format 2, as many as are there: without the costs it is read without them
 */
export function readEvidence(
  text: string,
  hash: string,
  parts: readonly Pick<EvidencePart, 'kind' | 'text'>[] = [],
): EvidenceRead {
  if (openDocument(text)?.format === 1) {
    const read = readFormat1(text, hash)
    return read.outcome === 'read' ? { outcome: 'read', format: 1, evidence: evidenceFromFormat1(read.value) } : read
  }
  const read = readManifest(text, hash)
  return read.outcome === 'read' ? ofManifest(read.value, new Map(parts.map((part) => [part.kind, part.text]))) : read
}

function ofManifest(manifest: EvidenceOfFormat2, texts: ReadonlyMap<string, string>): EvidenceRead {
  const hashes = new Map(manifest.parts.map(({ kind, hash }) => [kind, hash]))
  const shown = readShown(texts.get('shown') ?? '', hashes.get('shown') ?? '')
  if (shown.outcome !== 'read') return shown
  const costsText = texts.get('costs')
  const costs = costsText === undefined ? null : readCosts(costsText, hashes.get('costs') ?? '')
  if (costs && costs.outcome !== 'read') return costs
  const { trial, declared, isIndication, headline, conditions, controlMean, limits, arms, readings } = shown.value
  return {
    outcome: 'read',
    format: 2,
    evidence: {
      bakery: manifest.bakery,
      trial,
      declared,
      isIndication,
      headline,
      conditions,
      controlMean,
      limits,
      arms,
      costs: costs && costsSeen(costs.value),
      readings: { ...readings, over: 'rows' },
      frozen: manifest.frozen,
    },
  }
}

function costsSeen({ day, currency, latestPriceFrom, arms }: Costs): Evidence['costs'] {
  return { day, currency, latestPriceFrom, arms, loaf: 'any' }
}
