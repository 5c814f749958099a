import 'server-only'
import { z } from 'zod'
import type { Db, Tx } from '../../db/client'
import { readAuditEntry } from '../../documents/audit-entry/read-audit-entry'
import { hashOfText } from '../../documents/hash-of-text'
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
      where: { bakeryId, targetId: trialId, action: 'amendments.sign-slip' },
      select: { entryText: true, hash: true, personId: true },
    }),
  ])
  const noted = entries.flatMap(({ entryText, hash, personId }) => {
    const read = hashOfText(entryText) === hash ? readAuditEntry(entryText) : null
    const after = read?.outcome === 'read' ? note.safeParse(read.entry.after).data : undefined
    return after?.amended === amendedHash ? [`${personId} ${after.as} ${after.isLast}`] : []
  })
  const kept = rows.map(({ signedBy, signsAs, isLast }) => `${signedBy.id} ${signsAs} ${isLast}`)
  return {
    amendedHash,
    signatures: rows.map(({ signsAs, signedBy, ...row }) => ({ ...row, as: slipSignsOf(signsAs), by: signedBy })),
    isSigned: rows.some(({ isLast }) => isLast),
    fault: JSON.stringify([...kept].sort()) !== JSON.stringify([...noted].sort()),
  }
}

const note = z.looseObject({ amended: z.string(), as: z.string(), isLast: z.boolean() })

function slipSignsOf(as: string): SlipSigns {
  return as === 'owner' || as === 'head_baker' || as === 'alone' ? as : 'witness'
}
