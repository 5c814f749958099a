import 'server-only'
import type { Db, Tx } from '../../db/client'
import { amendingActions, notedOfAmendments } from './noted-of-amendments'
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

/** Who signed, over these amendments, that the first result rested on a slip; held against the record. */
export async function slipOf(from: Db | Tx, bakeryId: string, trialId: string, amendedHash: string): Promise<Slip> {
  const [rows, entries] = await Promise.all([
    from.slipSignature.findMany({
      where: { bakeryId, trialId, amendedHash },
      select: {
        signsAs: true,
        isLast: true,
        reason: true,
        at: true,
        signedBy: { select: { id: true, name: true } },
      },
      orderBy: [{ at: 'asc' }, { isLast: 'asc' }],
    }),
    from.auditEntry.findMany({
      where: { bakeryId, targetId: trialId, action: amendingActions.slip },
      select: { entryText: true, hash: true },
    }),
  ])
  const noted = entries
    .flatMap(({ entryText, hash }) => notedOfAmendments(entryText, hash, trialId))
    .flatMap((note) =>
      note.kind === 'slip' && note.amended === amendedHash ? [`${note.by} ${note.as} ${note.isLast}`] : [],
    )
  const kept = rows.map(({ signedBy, signsAs, isLast }) => `${signedBy.id} ${signsAs} ${isLast}`)
  return {
    amendedHash,
    signatures: rows.map(({ signsAs, signedBy, ...row }) => ({ ...row, as: slipSignsOf(signsAs), by: signedBy })),
    isSigned: rows.some(({ isLast }) => isLast),
    fault: JSON.stringify([...kept].sort()) !== JSON.stringify([...noted].sort()),
  }
}

function slipSignsOf(as: string): SlipSigns {
  return as === 'owner' || as === 'head_baker' || as === 'alone' ? as : 'witness'
}
