import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { NotedOfAmendments } from './noted-of-amendments'
import type { SlipSigns } from './second-person'

export type Slip = {
  /** Of the amendments that it is signed over. */
  amendedHash: string
  signatures: { as: SlipSigns; isLast: boolean; reason: string; by: { id: string; name: string }; at: Date }[]
  /** The last one that it takes is there. */
  isSigned: boolean
  /** A signature that is not in the record, or is not what the record says. */
  fault: boolean
}

/** Signatures over slips of a trial, over whichever amendments, as they are kept and as the record notes them. */
export type SlipsKept = {
  rows: readonly {
    amendedHash: string
    signsAs: string
    isLast: boolean
    reason: string
    at: Date
    signedBy: { id: string; name: string }
  }[]
  noted: readonly Extract<NotedOfAmendments, { kind: 'slip' }>[]
}

/** The signatures of a trial in their order. */
export function slipRows(from: Db | Tx, bakeryId: string, trialId: string) {
  return from.slipSignature.findMany({
    where: { bakeryId, trialId },
    select: {
      amendedHash: true,
      signsAs: true,
      isLast: true,
      reason: true,
      at: true,
      signedBy: { select: { id: true, name: true } },
    },
    orderBy: [{ at: 'asc' }, { isLast: 'asc' }],
  })
}

/** Who signed, over these amendments, that the first result rested on a slip; held against the record. */
export function slipOf(kept: SlipsKept, amendedHash: string): Slip {
  const rows = kept.rows.filter((row) => row.amendedHash === amendedHash)
  const noted = kept.noted.filter(({ amended }) => amended === amendedHash)
  const said = (by: string | null, as: string, isLast: boolean) => `${by} ${as} ${isLast}`
  const asKept = rows.map(({ signedBy, signsAs, isLast }) => said(signedBy.id, signsAs, isLast))
  const asNoted = noted.map(({ by, as, isLast }) => said(by, as, isLast))
  return {
    amendedHash,
    signatures: rows.map(({ signsAs, signedBy, isLast, reason, at }) => ({
      isLast,
      reason,
      at,
      as: slipSignsOf(signsAs),
      by: signedBy,
    })),
    isSigned: rows.some(({ isLast }) => isLast),
    fault: JSON.stringify(asKept.sort()) !== JSON.stringify(asNoted.sort()),
  }
}

function slipSignsOf(as: string): SlipSigns {
  return as === 'owner' || as === 'head_baker' || as === 'alone' ? as : 'witness'
}
