import 'server-only'
import type { Db, Tx } from '../../db/client'

const ingredient = { select: { id: true, name: true, kind: true, allergens: true, allergensCheckedAt: true } } as const

const select = {
  bakeryId: true,
  id: true,
  formulaId: true,
  number: true,
  fromVersionId: true,
  reason: true,
  scalingMassG: true,
  pieces: true,
  doughLossPct: true,
  doughTempC: true,
  mixTimeS: true,
  bulkTimeS: true,
  proofTimeS: true,
  bakeTempC: true,
  bakeTimeS: true,
  method: true,
  createdAt: true,
  revision: true,
  contentText: true,
  contentHash: true,
  signedAt: true,
  effectiveAt: true,
  discardedAt: true,
  decision: { select: { id: true, number: true, takenBackAt: true, evidence: { select: { hash: true } } } },
  formula: { select: { id: true, name: true } },
  draftedBy: { select: { id: true, name: true } },
  stages: {
    select: { kind: true, name: true, lines: { select: { pctFlour: true, ingredient }, orderBy: { position: 'asc' } } },
    orderBy: { position: 'asc' },
  },
  signatures: {
    select: {
      personId: true,
      personName: true,
      role: true,
      meaning: true,
      byProposer: true,
      at: true,
      contentHash: true,
    },
    orderBy: { at: 'asc' },
  },
} as const

/** A version with everything that belongs to it, or null. */
export function readVersion(from: Db | Tx, bakeryId: string, versionId: string) {
  return from.formulaVersion.findUnique({ where: { bakeryId_id: { bakeryId, id: versionId } }, select })
}

/** Several versions of a bakery as `readVersion` reads one, in no order. */
export function readVersions(from: Db | Tx, bakeryId: string, versionIds: readonly string[]): Promise<VersionRead[]> {
  return from.formulaVersion.findMany({ where: { bakeryId, id: { in: [...versionIds] } }, select })
}

export type VersionRead = NonNullable<Awaited<ReturnType<typeof readVersion>>>
