import 'server-only'
import type { Db } from '../../db/client'
import { query } from '../query'
import { verifyRecordInput } from './verify-record.input'
import { beforeFirst, faultAtEnd, followChain, type ChainFault, type ChainPlace } from './follow-chain'

/** Entries held in memory at once. */
const pieceLength = 1000

/**
 * Whether the bakery's whole record fits together: the first entry that does not follow, or nothing. Read in pieces. With
 * an anchor from paper also whether the record is still the one of then: a chain alone cannot show that it was written
 * anew as a whole.
 */
export const verifyRecord = query({
  name: 'audit.verify-record',
  input: verifyRecordInput,
  right: 'read-record',
  async run({ db, actor: { bakeryId }, input }) {
    const head = await db.auditHead.findUniqueOrThrow({ where: { bakeryId }, select: { number: true, hash: true } })
    const anchored = input.anchor && (await agrees(db, bakeryId, input.anchor))
    const answer = (fault: ChainFault | null) => ({
      entries: Number(head.number),
      fault: fault && { number: Number(fault.number), why: fault.why },
      /** Whether the record has the entry of the print, with that hash; null where none was given. */
      anchor: anchored === undefined ? null : anchored,
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

async function agrees(
  db: Db,
  bakeryId: string,
  anchor: { number: number; hash: string },
): Promise<'agrees' | 'differs' | 'not-there'> {
  const entry = await db.auditEntry.findUnique({
    where: { bakeryId_number: { bakeryId, number: BigInt(anchor.number) } },
    select: { hash: true },
  })
  if (!entry) return 'not-there'
  return entry.hash.startsWith(anchor.hash) ? 'agrees' : 'differs'
}
