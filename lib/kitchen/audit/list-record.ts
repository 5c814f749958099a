import 'server-only'
import { z } from 'zod'
import { readAuditEntry } from '../../documents/audit-entry/read-audit-entry'
import { query } from '../query'
import { beforeFirst, faultAtEnd, followChain, type ChainEntry, type ChainFault, type ChainPlace } from './follow-chain'

const pageLength = 50

/**
 * The bakery's record, newest first, a page at a time from before a number, and the first entry of the page that does
 * not follow from the one before it. The whole record is verify-record's.
 */
export const listRecord = query({
  name: 'audit.list-record',
  input: z.strictObject({ before: z.int().min(1).max(Number.MAX_SAFE_INTEGER).optional() }),
  right: 'read-record',
  async run({ db, actor: { bakeryId }, input }) {
    const head = await db.auditHead.findUniqueOrThrow({ where: { bakeryId }, select: { number: true, hash: true } })
    const rows = await db.auditEntry.findMany({
      where: { bakeryId, number: { lte: head.number, ...(input.before && { lt: input.before }) } },
      select: { number: true, at: true, entryText: true, previousHash: true, hash: true },
      orderBy: { number: 'desc' },
      take: pageLength + 1,
    })
    const shown = rows.slice(0, pageLength)
    const fault = faultOf(shown.toReversed(), rows[pageLength] ?? beforeFirst, input.before ? null : head)
    return {
      count: Number(head.number),
      entries: shown.map(({ number, at, entryText }) => ({ number: Number(number), at, said: saidBy(entryText) })),
      fault: fault && { number: Number(fault.number), why: fault.why },
      olderBefore: rows.length > pageLength ? Number(shown.at(-1)?.number) : null,
    }
  },
})

/** What an entry says, where it can be read. */
function saidBy(entryText: string) {
  const read = readAuditEntry(entryText)
  if (read.outcome !== 'read') return read
  const { who, action, before, after, reason } = read.entry
  return { outcome: 'read' as const, who: who && { name: who.name, role: who.role }, action, before, after, reason }
}

function faultOf(entries: readonly ChainEntry[], from: ChainPlace, head: ChainPlace | null): ChainFault | null {
  const reached = followChain(entries, from)
  if ('fault' in reached) return reached.fault
  return head && faultAtEnd(reached, head)
}
