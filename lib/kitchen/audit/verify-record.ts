import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { findChainFault } from './find-chain-fault'

/** Whether the bakery's record is whole: the first entry that does not fit, or nothing. */
export const verifyRecord = query({
  name: 'audit.verify-record',
  input: z.strictObject({}),
  right: 'read-record',
  async run({ db, actor }) {
    const head = await db.auditHead.findUniqueOrThrow({ where: { bakeryId: actor.bakeryId }, select: { number: true, hash: true } })
    const entries = await db.auditEntry.findMany({
      where: { bakeryId: actor.bakeryId, number: { lte: head.number } },
      select: { number: true, entryText: true, previousHash: true, hash: true },
      orderBy: { number: 'asc' },
    })
    const fault = findChainFault(entries, head)
    return { entries: Number(head.number), fault: fault ? { number: Number(fault.number), why: fault.why } : null }
  },
})
