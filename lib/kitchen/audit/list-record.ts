import 'server-only'
import { z } from 'zod'
import { readAuditEntry } from '../../documents/audit-entry/read-audit-entry'
import { after } from '../after.input'
import { query } from '../query'
import { readPage } from '../read-page'
import { beforeFirst, faultAtEnd, followChain, type ChainEntry, type ChainFault, type ChainPlace } from './follow-chain'

/**
 * The bakery's record, newest first, a page at a time, and the first entry of the page that does not follow from
 * the one before it. The whole record is verify-record's.
 */
export const listRecord = query({
  name: 'audit.list-record',
  input: z.strictObject({ after }),
  right: 'read-record',
  async run({ db, actor: { bakeryId }, input }) {
    const head = await db.auditHead.findUniqueOrThrow({ where: { bakeryId }, select: { number: true, hash: true } })
    const columns = { number: true, at: true, entryText: true, previousHash: true, hash: true } as const
    const read = (from: { lte: bigint } | { lt: number | bigint }, take: number) =>
      db.auditEntry.findMany({
        where: { bakeryId, number: { lte: head.number, ...from } },
        select: columns,
        orderBy: { number: 'desc' },
        take,
      })
    const page = await readPage({
      bakeryId,
      list: 'record',
      after: input.after,
      count: async () => Number(head.number),
      key: z.tuple([z.int().min(1).max(Number.MAX_SAFE_INTEGER)]),
      read: (beyond, take) => read(beyond ? { lt: beyond[0] } : { lte: head.number }, take),
      keyOf: ({ number }) => [Number(number)],
    })
    const oldest = page.rows.at(-1)
    const [before] = oldest ? await read({ lt: oldest.number }, 1) : []
    const fault = faultOf(page.rows.toReversed(), before ?? beforeFirst, page.isFirst ? head : null)
    return {
      entries: {
        ...page,
        rows: page.rows.map(({ number, at, entryText }) => ({ number: Number(number), at, said: saidBy(entryText) })),
      },
      fault: fault && { number: Number(fault.number), why: fault.why },
    }
  },
})

/** What an entry says, where it can be read. */
function saidBy(entryText: string) {
  const read = readAuditEntry(entryText)
  if (read.outcome !== 'read') return read
  const { who, action, before, after, reason } = read.entry
  return { outcome: 'read' as const, who, action, before, after, reason }
}

function faultOf(entries: readonly ChainEntry[], from: ChainPlace, head: ChainPlace | null): ChainFault | null {
  const reached = followChain(entries, from)
  if ('fault' in reached) return reached.fault
  return head && faultAtEnd(reached, head)
}
