import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { beforeFirst, faultAtEnd, followChain, type ChainFault, type ChainPlace } from './follow-chain'

/** Entries held in memory at once. */
const pieceLength = 1000

/** Whether the bakery's whole record fits together: the first entry that does not follow, or nothing. Read in pieces. */
export const verifyRecord = query({
  name: 'audit.verify-record',
  input: z.strictObject({}),
  right: 'read-record',
  async run({ db, actor: { bakeryId } }) {
    const head = await db.auditHead.findUniqueOrThrow({ where: { bakeryId }, select: { number: true, hash: true } })
    const answer = (fault: ChainFault | null) => ({
      entries: Number(head.number),
      fault: fault && { number: Number(fault.number), why: fault.why },
    })
    let end: ChainPlace = beforeFirst
    for (;;) {
      const entries = await db.auditEntry.findMany({
        where: { bakeryId, number: { gt: end.number, lte: head.number } },
        select: { number: true, entryText: true, previousHash: true, hash: true },
        orderBy: { number: 'asc' },
        take: pieceLength,
      })
      const reached = followChain(entries, end)
      if ('fault' in reached) return answer(reached.fault)
      end = reached
      if (entries.length < pieceLength) return answer(faultAtEnd(end, head))
    }
  },
})
